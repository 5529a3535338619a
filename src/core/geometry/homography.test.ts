import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyHomography, homographyFromFourPoints, type PlanePoint } from './homography.js';

const UNIT_SQUARE: readonly PlanePoint[] = [
  { x: 0, y: 0 },
  { x: 1, y: 0 },
  { x: 1, y: 1 },
  { x: 0, y: 1 },
];

function mapped(from: readonly PlanePoint[], to: readonly PlanePoint[], point: PlanePoint): PlanePoint {
  const found = homographyFromFourPoints(from, to);
  if (!found.ok) throw new Error(found.failure.kind);
  return applyHomography(found.value, point);
}

describe('homographyFromFourPoints', () => {
  it('maps the crossing of the diagonals to the crossing of the diagonals', () => {
    // Projective maps keep lines. Diagonals of (0,0) (6,0) (4,2) (2,2): y = x / 2 and y = (6 - x) / 2 meet at (3, 1.5).
    const trapezium = [
      { x: 0, y: 0 },
      { x: 6, y: 0 },
      { x: 4, y: 2 },
      { x: 2, y: 2 },
    ];
    const centre = mapped(UNIT_SQUARE, trapezium, { x: 0.5, y: 0.5 });
    expect(centre.x).toBeCloseTo(3, 12);
    expect(centre.y).toBeCloseTo(1.5, 12);
  });

  it('is the picture of a tilted square in closed form', () => {
    // A square of side 2 turned by t about y at distance d, focal length 1: (x cos t / w, y / w), w = d - x sin t.
    const t = 0.3;
    const d = 5;
    const seen = ({ x, y }: PlanePoint): PlanePoint => ({
      x: (x * Math.cos(t)) / (d - x * Math.sin(t)),
      y: y / (d - x * Math.sin(t)),
    });
    const square = UNIT_SQUARE.map(({ x, y }) => ({ x: 2 * x - 1, y: 2 * y - 1 }));
    const inside = { x: 0.37, y: -0.81 };
    const found = mapped(square, square.map(seen), inside);
    expect(found.x).toBeCloseTo(seen(inside).x, 12);
    expect(found.y).toBeCloseTo(seen(inside).y, 12);
  });

  it('comes back to the point through the inverse map', () => {
    const nudge = fc.double({ min: -0.2, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(fc.array(nudge, { minLength: 8, maxLength: 8 }), nudge, nudge, (nudges, x, y) => {
        const bent = UNIT_SQUARE.map((point, i) => ({
          x: 300 * (point.x + nudges[2 * i]!),
          y: 300 * (point.y + nudges[2 * i + 1]!),
        }));
        const there = mapped(UNIT_SQUARE, bent, { x: 0.5 + x, y: 0.5 + y });
        const back = mapped(bent, UNIT_SQUARE, there);
        expect(back.x).toBeCloseTo(0.5 + x, 8);
        expect(back.y).toBeCloseTo(0.5 + y, 8);
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('refuses three points in line', () => {
    const inLine = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 2, y: 0 },
      { x: 0, y: 1 },
    ];
    expect(homographyFromFourPoints(inLine, UNIT_SQUARE)).toEqual({
      ok: false,
      failure: { kind: 'degenerate-points' },
    });
  });
});
