import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { drawSweep, framesOfSweep, type SyntheticSweep } from '../../../tests/support/synthetic-sweep.js';
import type { AlwaysEstimated } from './estimate.js';
import { DEFAULT_MEASURING_SETTINGS } from './face-estimates.js';
import { createMeasureSweep } from './measure-sweep.js';
import type { SweepMeasurement } from './sweep.js';

const SWEEPS = 120;
const FRAMES = 12;

const measure = createMeasureSweep({ canonicalFace, contactDepth });

type Checked = Extract<AlwaysEstimated, 'pdFar' | 'monoPdR' | 'monoPdL' | 'apertureR' | 'apertureL' | 'irisDiameter'>;

/** What is true of a sweep, by the name of the estimate. */
const TRUTH: Record<Checked, (sweep: SyntheticSweep) => number> = {
  pdFar: ({ head }) => head.pdFarMm,
  monoPdR: ({ head }) => head.pdFarMm / 2 + head.bridgeLeftMm,
  monoPdL: ({ head }) => head.pdFarMm / 2 - head.bridgeLeftMm,
  apertureR: ({ head }) => head.lidsMm.R.upper + head.lidsMm.R.lower,
  apertureL: ({ head }) => head.lidsMm.L.upper + head.lidsMm.L.lower,
  irisDiameter: ({ head }) => head.irisMm,
};
const NAMES = Object.keys(TRUTH) as Checked[];

describe('the uncertainty of measureSweep', () => {
  const random = seededRandom(20_262);
  const outcomes = Array.from({ length: SWEEPS }, (): { sweep: SyntheticSweep; found: SweepMeasurement } => {
    const sweep = drawSweep(random, FRAMES);
    const outcome = measure(framesOfSweep(sweep), DEFAULT_MEASURING_SETTINGS, () => undefined);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
    return { sweep, found: outcome.value };
  });
  const deviations = (name: Checked) =>
    outcomes.map(({ sweep, found }) => {
      const { value, standardUncertainty, low, high } = found.estimates[name];
      const truth = TRUTH[name](sweep);
      return { deviation: value - truth, standardUncertainty, held: low <= truth && truth <= high };
    });

  it.each(NAMES)('of %s is the spread of deviations when all that is known varies as it is said to', (name) => {
    const all = deviations(name);
    const spread = Math.sqrt(all.reduce((sum, { deviation }) => sum + deviation ** 2, 0) / SWEEPS);
    const stated = Math.sqrt(all.reduce((sum, { standardUncertainty: u }) => sum + u * u, 0) / SWEEPS);
    // 120 draws know a spread to 6.5 % themselves.
    expect(Math.abs(spread / stated - 1)).toBeLessThan(0.15);
  });

  it.each<Checked>(['pdFar', 'monoPdR', 'monoPdL', 'apertureR', 'apertureL'])(
    'makes intervals that hold the true %s about 95 times in 100',
    (name) => {
      const held = deviations(name).filter((each) => each.held).length;
      expect(held / SWEEPS).toBeGreaterThanOrEqual(0.9);
      expect(held / SWEEPS).toBeLessThanOrEqual(0.99);
    },
  );

  it.each(NAMES)('leaves %s without bias', (name) => {
    const all = deviations(name);
    const mean = all.reduce((sum, { deviation }) => sum + deviation, 0) / SWEEPS;
    const stated = all.reduce((sum, { standardUncertainty: u }) => sum + u, 0) / SWEEPS;
    // Three standard errors of the mean.
    expect(Math.abs(mean)).toBeLessThan((3 * stated) / Math.sqrt(SWEEPS));
  });

  it('takes noise neither for a slip of the card nor for a frame that does not fit', () => {
    expect(outcomes.filter(({ found }) => found.slippedFromFrame !== null).length).toBeLessThanOrEqual(2);
    expect(outcomes.filter(({ found }) => found.framesUsed < FRAMES).length).toBeLessThanOrEqual(3);
  });
});
