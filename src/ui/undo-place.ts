import type { ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import { definitionOfReading } from '../core/catalogue/definitions.js';
import { READER_IDS } from '../core/record/reader-sheet.js';
import { unreachable } from '../core/result.js';
import type { SheetAct } from '../session/undo.js';
import { goToReading } from './hand-place.js';
import { handleId } from './handle-name.js';
import {
  ALONE_ID,
  EFFECTIVE_DIAMETER_ID,
  gazeId,
  LENS_KIND_ID,
  noteId,
  PICTURE_HEADING_ID,
  readerId,
  readerNameId,
  USE_FRAME_ID,
} from './place-ids.js';
import { placeId } from './prescription-place.js';

/** Puts the focus where an act shows on the screen; where that is not on the screen, it stays. */
export function goToAct(act: SheetAct): void {
  const reading = readingOfAct(act);
  if (reading !== null) {
    goToReading(reading);
    return;
  }
  const element = idsOfAct(act)
    .map((id) => document.getElementById(id))
    .find((found) => found !== null && !isUnchosen(found));
  if (element == null) return;
  element.scrollIntoView({ block: 'nearest' });
  element.focus({ preventScroll: true });
  if (element instanceof HTMLInputElement && element.type === 'text') element.select();
}

/** Of several choices the one that was made is the place. */
function isUnchosen(element: HTMLElement): boolean {
  return element instanceof HTMLInputElement && element.type === 'radio' && !element.checked;
}

function readingOfAct(act: SheetAct): ReadingName | null {
  if (act.kind === 'reading') return act.name;
  if (act.kind === 'gauge')
    return READING_NAMES.find((name) => definitionOfReading(name).id === act.measurement) ?? null;
  return 'names' in act ? (act.names[0] ?? null) : null;
}

/** The nearest first. */
function idsOfAct(act: SheetAct): readonly string[] {
  switch (act.kind) {
    case 'reading':
    case 'restoration':
    case 'confirmed':
    case 'confirmation-withdrawn':
    case 'gauge':
      return [];
    case 'reader-chosen':
      return READER_IDS.map(readerId);
    case 'reader-named':
      return [readerNameId(act.reader)];
    case 'note':
      return [noteId(act.field)];
    case 'prescription':
      if (act.field === 'lensKind') return [LENS_KIND_ID];
      if (act.field === 'effectiveDiameter') return [EFFECTIVE_DIAMETER_ID];
      return [
        placeId(
          act.field === 'vertexDistance'
            ? { side: null, field: act.field }
            : { side: act.side ?? 'R', field: act.field },
        ),
      ];
    case 'gaze':
      return [gazeId('camera'), gazeId('far'), PICTURE_HEADING_ID];
    case 'shown-alone':
    case 'covered':
      return [ALONE_ID];
    case 'handle':
      return [handleId(act.handle), PICTURE_HEADING_ID];
    case 'frame':
      return [USE_FRAME_ID, PICTURE_HEADING_ID];
    case 'picture':
    case 'sweep':
    case 'picture-put-away':
    case 'corners-begun':
    case 'corners-placed':
    case 'reset-to-found':
      return [PICTURE_HEADING_ID];
    default:
      return unreachable(act);
  }
}
