import type { SheetNotice } from '../session/sheet.js';
import { words } from './language.js';

/** What was let go, in a sentence; null where nothing was. */
export function noticeSentence(notice: SheetNotice | null): string | null {
  if (notice === null) return null;
  return notice.kind === 'frames-dropped' ? words.sweep.dropped(notice.frames) : words.sweep.readingsBack[notice.gone];
}
