import { fail, succeed, type Result } from '../result.js';

/** A point of a plane, in whatever unit the plane is measured in. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/** Row-major 3x3 matrix with its last entry one: maps one plane to another as a camera would see it. */
export type Homography = readonly [number, number, number, number, number, number, number, number, 1];

/** The four points do not span a plane: three of them are nearly in line. */
export interface DegeneratePoints {
  readonly kind: 'degenerate-points';
}

/**
 * The homography that maps four points to four others exactly (direct linear transformation; Hartley and Zisserman,
 * Multiple View Geometry, 2nd edition, section 4.1), by elimination with pivoting.
 */
export function homographyFromFourPoints(
  from: readonly PlanePoint[],
  to: readonly PlanePoint[],
): Result<Homography, DegeneratePoints> {
  const rows: number[][] = [];
  for (let i = 0; i < 4; i++) {
    const { x, y } = from[i]!;
    const { x: u, y: v } = to[i]!;
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u]);
    rows.push([0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  }
  for (let column = 0; column < 8; column++) {
    let pivot = column;
    for (let r = column + 1; r < 8; r++) {
      if (Math.abs(rows[r]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = r;
    }
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    const lead = rows[column]![column]!;
    if (Math.abs(lead) < 1e-12) return fail({ kind: 'degenerate-points' });
    for (let r = 0; r < 8; r++) {
      if (r === column) continue;
      const factor = rows[r]![column]! / lead;
      if (factor === 0) continue;
      for (let c = column; c < 9; c++) rows[r]![c]! -= factor * rows[column]![c]!;
    }
  }
  const h = rows.map((row, i) => row[8]! / row[i]!);
  return succeed([h[0]!, h[1]!, h[2]!, h[3]!, h[4]!, h[5]!, h[6]!, h[7]!, 1]);
}

export function applyHomography(h: Homography, point: PlanePoint): PlanePoint {
  const w = h[6] * point.x + h[7] * point.y + h[8];
  return { x: (h[0] * point.x + h[1] * point.y + h[2]) / w, y: (h[3] * point.x + h[4] * point.y + h[5]) / w };
}
