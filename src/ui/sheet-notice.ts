import type { SheetNotice } from '../session/sheet.js';
import { words } from './language.js';

/** What was let go, in a sentence; null where nothing was. */
export function noticeSentence(notice: SheetNotice | null): string | null {
  return notice === null ? null : words.sweep.dropped(notice.frames);
}
