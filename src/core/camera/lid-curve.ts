import { CELL, STRIP_REACH } from './eye-strip.js';

/**
 * What each column says of where the margin lies: a cost for every boundary between cells, in units of log likelihood times the height in
 * radii of the iris. Column by column, `cells + 1` numbers each.
 */
export interface MarginCosts {
  readonly cells: number;
  readonly costs: Float64Array;
  /** the columns' places along the line of the eyes, radii, from the column that is asked for */
  readonly along: readonly number[];
  /** how much each column counts */
  readonly weights: readonly number[];
}

/** What is known of the margin beforehand: how far below the drawn margin it lies, and how surely; radii of the iris. */
export interface MarginPrior {
  readonly mean: number;
  readonly deviation: number;
}

/** The margin as a parabola added to the drawn one: below it by offset + slope s + bend s² at a distance s along the lid; all in radii. */
export interface MarginCurve {
  readonly offset: number;
  readonly slope: number;
  readonly bend: number;
}

export interface MarginPosterior extends MarginCurve {
  /** standard deviation of the offset, radii */
  readonly deviation: number;
}

/** Standard deviations of slope and bend of a drawn margin. Tuned on rendered heads. */
const SLOPE_DEVIATION = 0.17;
const BEND_DEVIATION = 0.15;
/** Landmarks stray now and then by far: the prior of the offset has the tails of Student's t with 1 / TAIL - 1 degrees of freedom. */
const TAIL = 0.25;

const OFFSET_STEP = 0.03;
const OFFSET_REACH = 0.6;
const SLOPE_STEP = 0.1;
const BEND_STEP = 0.11;
const STEPS_ASIDE = [-3, -2, -1, 0, 1, 2, 3];
/** Slopes and bends that are tried, and what each costs by the prior. */
const SHAPES = STEPS_ASIDE.flatMap((i) =>
  STEPS_ASIDE.map((k) => {
    const slope = i * SLOPE_STEP;
    const bend = k * BEND_STEP;
    return { slope, bend, energy: (slope / SLOPE_DEVIATION) ** 2 / 2 + (bend / BEND_DEVIATION) ** 2 / 2 };
  }),
);

/**
 * Mean and scatter of the margin over all parabolas of a grid, each weighed by its likelihood and by what is known beforehand. A margin that
 * the picture shows plainly comes out sharp, one that it does not show stays with the prior.
 *
 * @param evidence what a unit of cost counts: independent cells in a square radius
 */
export function marginPosterior(
  { cells, costs, along, weights }: MarginCosts,
  prior: MarginPrior,
  evidence: number,
): MarginPosterior {
  const offsets = 2 * Math.round(OFFSET_REACH / OFFSET_STEP) + 1;
  const energies = new Float64Array(offsets * SHAPES.length);
  let least = Infinity;
  for (let i = 0; i < offsets; i++) {
    const offset = i * OFFSET_STEP - OFFSET_REACH;
    const z = (offset - prior.mean) / prior.deviation;
    const known = Math.log(1 + TAIL * z * z) / (2 * TAIL);
    SHAPES.forEach(({ slope, bend, energy }, k) => {
      let cost = 0;
      for (let j = 0; j < along.length; j++) {
        const s = along[j]!;
        const place = (offset + slope * s + bend * s * s + STRIP_REACH) / CELL;
        const within = place < 0 ? 0 : place > cells - 1e-6 ? cells - 1e-6 : place;
        const boundary = Math.floor(within);
        const at = j * (cells + 1) + boundary;
        cost += weights[j]! * (costs[at]! + (within - boundary) * (costs[at + 1]! - costs[at]!));
      }
      const whole = evidence * cost + known + energy;
      energies[i * SHAPES.length + k] = whole;
      least = Math.min(least, whole);
    });
  }
  let total = 0;
  let offsetSum = 0;
  let slopeSum = 0;
  let bendSum = 0;
  let squares = 0;
  for (let i = 0; i < offsets; i++) {
    const offset = i * OFFSET_STEP - OFFSET_REACH;
    SHAPES.forEach(({ slope, bend }, k) => {
      const weight = Math.exp(least - energies[i * SHAPES.length + k]!);
      total += weight;
      offsetSum += weight * offset;
      slopeSum += weight * slope;
      bendSum += weight * bend;
      squares += weight * offset * offset;
    });
  }
  const offset = offsetSum / total;
  return {
    offset,
    slope: slopeSum / total,
    bend: bendSum / total,
    deviation: Math.sqrt(Math.max(0, squares / total - offset * offset)),
  };
}

/** A curve's place below the drawn margin at a distance along the lid, radii. */
export function offsetAt({ offset, slope, bend }: MarginCurve, along: number): number {
  return offset + slope * along + bend * along * along;
}
