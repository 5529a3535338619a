import type { ReaderId } from '../core/record/reader-sheet.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import type { WearerNotes } from '../core/record/wearer-notes.js';

// Ids of elements that the focus goes to from elsewhere; those of readings and of the prescription stand beside their order.

export const ALONE_ID = 'alone';
export const LENS_KIND_ID = 'lens-kind';
export const EFFECTIVE_DIAMETER_ID = 'effective-diameter';
export const USE_FRAME_ID = 'use-frame';
export const PICTURE_HEADING_ID = 'picture-heading';

export function noteId(field: keyof WearerNotes): string {
  return `note-${field}`;
}

export function readerId(reader: ReaderId): string {
  return `reader-${reader}`;
}

export function readerNameId(reader: ReaderId): string {
  return `reader-name-${reader}`;
}

export function gazeId(gaze: SheetSettings['gaze']): string {
  return `gaze-${gaze}`;
}
