import { PRINT_CHECK_LENGTH_MM } from '../core/reading/print-check.js';
import { TEXT_SIZES_MM, type LineElement, type SheetElement, type SheetPoint } from './layout.js';

/** Thin enough to find the middle of a mark to a tenth of a millimetre, thick enough for every printer. Chosen. */
const STROKE_MM = 0.2;

const MARK_SPACING_MM = 10;
const MARK_LENGTH_MM = 4;
const END_MARK_LENGTH_MM = 10;

/**
 * A line of `PRINT_CHECK_LENGTH_MM` from `start` across or down the sheet, with marks every 10 mm and long marks at its ends;
 * the length runs between the middles of the end marks. It bears no number on purpose: who reads 150 off the paper instead of
 * the rule would type it.
 */
export function ruledLine(start: SheetPoint, direction: 'across' | 'down'): readonly SheetElement[] {
  const pointAt = (alongMm: number, acrossMm: number): SheetPoint =>
    direction === 'across'
      ? { xMm: start.xMm + alongMm, yMm: start.yMm + acrossMm }
      : { xMm: start.xMm + acrossMm, yMm: start.yMm + alongMm };
  const mark = (alongMm: number, lengthMm: number): LineElement => ({
    kind: 'line',
    from: pointAt(alongMm, -lengthMm / 2),
    to: pointAt(alongMm, lengthMm / 2),
    strokeMm: STROKE_MM,
  });
  const marks = Array.from({ length: PRINT_CHECK_LENGTH_MM / MARK_SPACING_MM + 1 }, (_, index) => {
    const alongMm = index * MARK_SPACING_MM;
    const isEnd = alongMm === 0 || alongMm === PRINT_CHECK_LENGTH_MM;
    return mark(alongMm, isEnd ? END_MARK_LENGTH_MM : MARK_LENGTH_MM);
  });
  return [
    { kind: 'line', from: pointAt(0, 0), to: pointAt(PRINT_CHECK_LENGTH_MM, 0), strokeMm: STROKE_MM },
    ...marks,
    endLabel('from here', pointAt(0, 0), direction === 'across' ? 8.5 : -2),
    endLabel('to here', pointAt(PRINT_CHECK_LENGTH_MM, 0), direction === 'across' ? 8.5 : 4),
  ];
}

function endLabel(text: string, end: SheetPoint, belowMm: number): SheetElement {
  return {
    kind: 'text',
    text,
    at: { xMm: end.xMm, yMm: end.yMm + belowMm },
    anchor: 'middle',
    sizeMm: TEXT_SIZES_MM.small,
    weight: 'regular',
  };
}
