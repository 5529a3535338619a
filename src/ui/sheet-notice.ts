import type { SheetNotice } from '../session/sheet.js';
import { sweepWords as words } from './words.js';

/** What was let go, in a sentence; null where nothing was. */
export function noticeSentence(notice: SheetNotice | null): string | null {
  if (notice === null) return null;
  return notice.kind === 'frames-dropped' ? words.dropped(notice.frames) : words.readingsBack[notice.gone];
}
