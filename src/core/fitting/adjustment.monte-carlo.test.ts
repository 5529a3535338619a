import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { adjust, type Knowledge, type Propagation } from './adjustment.js';

/**
 * First-order propagation against Monte Carlo (JCGM 101:2008) on a small problem of the app's own kind: a distance between two points that
 * lie some depth behind a card, the card's width and the points' gap as seen in the picture, and priors of the focal length, the card's size
 * and the depth. The model is not linear in any of them.
 */
type Source = 'camera' | 'card-size' | 'card-edges' | 'points' | 'contact-depth' | 'iris-size';

interface Datum {
  readonly source: Source;
  readonly known: number;
  readonly uncertainty: number;
  readonly predicted: (x: readonly number[]) => number;
}

/** focal length px, size of the card (1: nominal), card's distance mm, depth of the points behind it mm, gap mm, iris mm */
const TRUE = [1000, 1, 500, 15, 63, 11.7] as const;
const STEPS = [1e-2, 1e-6, 1e-2, 1e-3, 1e-3, 1e-4];
const CARD_MM = 85.6;

const focal = (x: readonly number[]): number => x[0]!;
const cardDistance = (x: readonly number[]): number => x[2]!;
const depth = (x: readonly number[]): number => x[3]!;
const gap = (x: readonly number[]): number => x[4]!;
const pointsDistance = (x: readonly number[]): number => cardDistance(x) + depth(x);

const PREDICTIONS: readonly Omit<Datum, 'known'>[] = [
  { source: 'camera', uncertainty: 60, predicted: focal },
  { source: 'card-size', uncertainty: 0.002, predicted: (x) => x[1]! },
  { source: 'card-edges', uncertainty: 0.3, predicted: (x) => (focal(x) * CARD_MM * x[1]!) / cardDistance(x) },
  // the card's height turned towards the camera by 0.3 rad tells a little of the perspective
  {
    source: 'card-edges',
    uncertainty: 0.3,
    predicted: (x) =>
      (focal(x) * 50 * x[1]!) / (cardDistance(x) - 16) - (focal(x) * 50 * x[1]!) / (cardDistance(x) + 16),
  },
  { source: 'points', uncertainty: 0.25, predicted: (x) => (focal(x) * gap(x)) / pointsDistance(x) },
  { source: 'points', uncertainty: 0.2, predicted: (x) => (focal(x) * x[5]!) / pointsDistance(x) },
  { source: 'contact-depth', uncertainty: 5, predicted: depth },
  { source: 'iris-size', uncertainty: 0.42, predicted: (x) => x[5]! },
];

function adjusted(known: readonly number[]): Propagation<Source> {
  const data: readonly Datum[] = PREDICTIONS.map((prediction, i) => ({ ...prediction, known: known[i]! }));
  const knowledge: Knowledge<Source> = {
    sources: data.map(({ source }) => source),
    robust: () => false,
    residuals: (x) => data.map((datum) => (datum.predicted(x) - datum.known) / datum.uncertainty),
  };
  const outcome = adjust(knowledge, TRUE, STEPS);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value.propagate(gap);
}

const moments = (values: readonly number[]): { readonly mean: number; readonly sd: number } => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return { mean, sd: Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1)) };
};

const DRAWS = 1500;
/** Relative standard error of a standard deviation of so many draws is 1 / sqrt(2 n), 1.8 %; three of them. */
const SD_TOLERANCE = 3 / Math.sqrt(2 * DRAWS);
/** What the second order of the model may add to the first, as a share of the standard uncertainty: (6 % of focal, 1 % of depth)². Chosen. */
const SECOND_ORDER = 0.03;

/** Outcomes of data that scatter about the truth, all of them or those of one source. */
function outcomes(seed: number, only: Source | null): readonly Propagation<Source>[] {
  const random = seededRandom(seed);
  return Array.from({ length: DRAWS }, () =>
    adjusted(
      PREDICTIONS.map(({ source, uncertainty, predicted }) => {
        const deviation = random.normal(0, uncertainty);
        return predicted(TRUE) + (only === null || only === source ? deviation : 0);
      }),
    ),
  );
}

const stated = adjusted(PREDICTIONS.map(({ predicted }) => predicted(TRUE)));

describe('propagation of adjust against Monte Carlo', () => {
  it('states mean and standard deviation of the outcomes', () => {
    const found = outcomes(41, null);
    const { mean, sd } = moments(found.map(({ value }) => value));
    expect(stated.value).toBeCloseTo(63, 6);
    expect(Math.abs(sd / stated.standardUncertainty - 1)).toBeLessThan(SD_TOLERANCE + SECOND_ORDER);
    expect(Math.abs(mean - 63)).toBeLessThan((3 / Math.sqrt(DRAWS) + SECOND_ORDER) * stated.standardUncertainty);
    // The interval that each outcome states for itself holds the truth in 95 % of them, within three standard errors and the second order.
    const held = found.filter(({ value, standardUncertainty }) => Math.abs(value - 63) < 1.96 * standardUncertainty);
    const tolerance = 3 * Math.sqrt((0.95 * 0.05) / DRAWS) + SECOND_ORDER / 4;
    expect(Math.abs(held.length / DRAWS - 0.95)).toBeLessThan(tolerance);
  });

  it('states the same of wearers, cameras and cards that differ as the priors say', () => {
    // Other way round: what is known beforehand stays, and the truth scatters about it. Only the picture's data follow the truth.
    const random = seededRandom(43);
    const priors: readonly number[] = [0, 1, 6, 7];
    const scores = Array.from({ length: DRAWS }, () => {
      const truth = [
        random.normal(TRUE[0], 60),
        random.normal(TRUE[1], 0.002),
        TRUE[2],
        random.normal(TRUE[3], 5),
        TRUE[4],
        random.normal(TRUE[5], 0.42),
      ];
      const known = PREDICTIONS.map(({ uncertainty, predicted }, i) =>
        priors.includes(i) ? predicted(TRUE) : random.normal(predicted(truth), uncertainty),
      );
      const { value, standardUncertainty } = adjusted(known);
      return (value - truth[4]!) / standardUncertainty;
    });
    const { mean, sd } = moments(scores);
    expect(Math.abs(mean)).toBeLessThan(3 / Math.sqrt(DRAWS) + SECOND_ORDER);
    expect(Math.abs(sd - 1)).toBeLessThan(SD_TOLERANCE + SECOND_ORDER);
  });

  it.each(['camera', 'card-size', 'card-edges', 'points', 'contact-depth', 'iris-size'] as const)(
    'states what %s alone contributes',
    (source) => {
      const { sd } = moments(outcomes(47, source).map(({ value }) => value));
      const share = stated.bySource.get(source)!;
      expect(Math.abs(sd / share - 1)).toBeLessThan(SD_TOLERANCE + SECOND_ORDER);
    },
  );
});
