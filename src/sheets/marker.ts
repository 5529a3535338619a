import markerTable from '../../calibration/markers-4x4-50.json' with { type: 'json' };
import { invariant } from '../core/result.js';
import type { FillElement, SheetPoint } from './layout.js';

/** The marker with this id of the dictionary 4x4_50, by its top left corner: its black cells, each row's neighbours joined. */
export function marker(place: SheetPoint, sideMm: number, id: number): FillElement {
  const pattern = markerTable.markers.find((entry) => entry.id === id);
  invariant(pattern !== undefined, `a pattern for marker ${id}`);
  const cellMm = sideMm / markerTable.cells;
  const rectangles = pattern.rows.flatMap((cells, row) =>
    [...cells.matchAll(/#+/g)].map((run) => ({
      xMm: place.xMm + run.index * cellMm,
      yMm: place.yMm + row * cellMm,
      widthMm: run[0].length * cellMm,
      heightMm: cellMm,
    })),
  );
  return { kind: 'fill', rectangles };
}
