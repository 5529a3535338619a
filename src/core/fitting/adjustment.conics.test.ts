import { describe, expect, it } from 'vitest';
import { adjust, type Adjustment, type Knowledge } from './adjustment.js';

/**
 * Geometric fits (least squares of the distances) of a circle and an ellipse to the points of the worked examples in Gander, Golub and
 * Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994) 558-578. Points and results from memory; that the results follow
 * from the points to all four printed decimals bears the memory out.
 */
const CIRCLE_POINTS = [
  [1, 7],
  [2, 6],
  [5, 8],
  [7, 7],
  [9, 5],
  [3, 7],
] as const;
const CIRCLE = { x: 4.7398, y: 2.9835, radius: 4.7142 };

const ELLIPSE_POINTS = [
  [1, 7],
  [2, 6],
  [5, 8],
  [7, 7],
  [9, 5],
  [3, 7],
  [6, 2],
  [8, 4],
] as const;
const ELLIPSE = { x: 2.6996, y: 3.816, a: 6.5187, b: 3.0319, turnRad: 0.3596, residualNorm: 1.1719 };

/** An ellipse turned by half a turn is the same: the angle from 0 up to pi. */
const halfTurn = (rad: number): number => rad - Math.PI * Math.floor(rad / Math.PI);

/** half of the last printed digit */
const PRINTED = 0.00005;

/**
 * The descent ends where the cost falls by less than a part in 10^9, which leaves some 10^-4 of a parameter's doubt (here up to 1) open;
 * begun anew where it ended, it shows all printed decimals.
 */
function fit(
  count: number,
  residuals: Knowledge<'point'>['residuals'],
  start: readonly number[],
  rounds = 20,
): Adjustment<'point'> {
  const sources = new Array<'point'>(count).fill('point');
  const steps = start.map(() => 1e-5);
  const outcome = adjust({ sources, robust: () => false, residuals }, start, steps, 500);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return rounds === 1 ? outcome.value : fit(count, residuals, outcome.value.parameters, rounds - 1);
}

describe('adjust on the published circle and ellipse', () => {
  it('finds the circle', () => {
    const { parameters } = fit(
      CIRCLE_POINTS.length,
      ([x, y, radius]) => CIRCLE_POINTS.map(([px, py]) => Math.hypot(px - x!, py - y!) - radius!),
      // the centroid and mean distance from it
      [4.5, 6.7, 2.5],
    );
    const [x, y, radius] = parameters;
    expect(Math.abs(x! - CIRCLE.x)).toBeLessThan(PRINTED);
    expect(Math.abs(y! - CIRCLE.y)).toBeLessThan(PRINTED);
    expect(Math.abs(radius! - CIRCLE.radius)).toBeLessThan(PRINTED);
  });

  it('finds the ellipse, with the foot of each point as a parameter of its own', () => {
    const centre = [5.125, 5.75] as const;
    const feet = ELLIPSE_POINTS.map(([px, py]) => Math.atan2(py - centre[1], px - centre[0]));
    const { parameters, residuals } = fit(
      2 * ELLIPSE_POINTS.length,
      ([x, y, a, b, turn, ...angles]) =>
        ELLIPSE_POINTS.flatMap(([px, py], i) => {
          const [along, across] = [a! * Math.cos(angles[i]!), b! * Math.sin(angles[i]!)];
          const [cos, sin] = [Math.cos(turn!), Math.sin(turn!)];
          return [x! + cos * along - sin * across - px, y! + sin * along + cos * across - py];
        }),
      [...centre, 3, 2, 0, ...feet],
    );
    const [x, y, a, b, turn] = parameters;
    expect(Math.abs(x! - ELLIPSE.x)).toBeLessThan(PRINTED);
    expect(Math.abs(y! - ELLIPSE.y)).toBeLessThan(PRINTED);
    expect(Math.abs(a! - ELLIPSE.a)).toBeLessThan(PRINTED);
    expect(Math.abs(b! - ELLIPSE.b)).toBeLessThan(PRINTED);
    expect(Math.abs(halfTurn(turn!) - ELLIPSE.turnRad)).toBeLessThan(PRINTED);
    expect(Math.abs(Math.hypot(...residuals) - ELLIPSE.residualNorm)).toBeLessThan(PRINTED);
  });
});
