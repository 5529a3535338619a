import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { adjust, robustCost } from './adjustment.js';
import {
  adjustBundle,
  type BundleAdjustment,
  type BundleKnowledge,
  type BundleStart,
  type BundleSteps,
} from './bundle-adjustment.js';

function adjusted<Source extends string>(
  knowledge: BundleKnowledge<Source>,
  start: BundleStart,
  steps: BundleSteps,
  iterationLimit?: number,
): BundleAdjustment<Source> {
  const outcome = adjustBundle(knowledge, start, steps, iterationLimit);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

const plain = () => false;

type Part = 'rate' | 'size' | 'scale' | 'reading' | 'place' | 'blank';

/**
 * Frames that decay alike, each from its own height above its own ground: size exp(-rate t) height + ground. Residuals are nonlinear in
 * shared and own parameters; the readings may be outliers, what is known of each ground may not. `scale` is seen by no frame.
 */
function decay(frameCount: number, seenByFrames = 2, count: () => void = () => undefined) {
  const random = seededRandom(17);
  const times = [0, 0.4, 0.9, 1.5, 2.2, 3];
  const read = Array.from({ length: frameCount }, (_, i) =>
    times.map((t, k) => {
      const outlier = i === 1 && k === 3 ? 1.5 : 0;
      return 2 * Math.exp(-0.7 * t) * (1 + 0.1 * i) + 0.3 * (i % 3) + random.normal(0, 0.05) + outlier;
    }),
  );
  const grounds = read.map((_, i) => 0.3 * (i % 3) + random.normal(0, 0.2));
  const heights = read.map((_, i) => 1 + 0.1 * i + random.normal(0, 0.1));
  const knowledge: BundleKnowledge<Part> = {
    shared: {
      sources: ['rate', 'size', 'scale'],
      residuals: ([rate, size, scale]) => [(rate! - 0.6) / 0.2, (size! - 2.1) / 0.1, (scale! - 3 - 0.5 * size!) / 0.4],
    },
    frames: read.map((values, i) => ({
      sources: [...values.map(() => 'reading' as const), 'place', 'blank'],
      robust: (place) => place < values.length,
      residuals: ([rate, size], [height, ground]) => {
        count();
        return [
          ...values.map((value, k) => (size! * Math.exp(-rate! * times[k]!) * height! + ground! - value) / 0.05),
          (height! - heights[i]!) / 0.1,
          (ground! - grounds[i]!) / 0.2,
        ];
      },
    })),
    seenByFrames,
  };
  const start: BundleStart = { shared: [0.5, 2.2, 4], frames: read.map(() => [1, 0]) };
  const steps: BundleSteps = { shared: [1e-4, 1e-4, 1e-4], own: [1e-4, 1e-4] };
  return { knowledge, start, steps };
}

/** The same problem with all parameters in one row, shared ones first. */
function dense<Source extends string>(
  { shared, frames }: BundleKnowledge<Source>,
  start: BundleStart,
  steps: BundleSteps,
) {
  const size = start.shared.length;
  const own = start.frames[0]!.length;
  const robust = [
    ...start.shared.map(() => false),
    ...frames.flatMap(({ sources, robust: at }) => sources.map((_, place) => at(place))),
  ];
  const outcome = adjust<Source>(
    {
      sources: [...shared.sources, ...frames.flatMap(({ sources }) => sources)],
      robust: (index) => robust[index]!,
      residuals: (x) => [
        ...shared.residuals(x.slice(0, size)),
        ...frames.flatMap((frame, i) =>
          frame.residuals(x.slice(0, size), x.slice(size + i * own, size + (i + 1) * own)),
        ),
      ],
    },
    [...start.shared, ...start.frames.flat()],
    [...steps.shared, ...start.frames.flatMap(() => steps.own)],
  );
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

describe('adjustBundle beside the dense adjustment of the same knowledge', () => {
  const { knowledge, start, steps } = decay(5);
  const bundle = adjusted(knowledge, start, steps);
  const whole = dense(knowledge, start, steps);
  const doubt = (i: number): number => Math.sqrt(whole.covariance[i]![i]!);

  it('finds the same parameters', () => {
    const all = [...bundle.shared, ...bundle.frames.flat()];
    expect(all).toHaveLength(13);
    // It stops where a round gains less than a millionth of the cost; what is still to be gained is the square of the rest, in doubts.
    const rest = Math.sqrt(1e-6 * bundle.cost);
    expect(rest).toBeLessThan(0.015);
    all.forEach((value, i) => expect(Math.abs(value - whole.parameters[i]!) / doubt(i)).toBeLessThan(rest));
  });

  it('finds the same covariance of what is shared, with all that the frames leave open', () => {
    bundle.covariance.forEach((row, a) => {
      expect(row).toHaveLength(3);
      row.forEach((value, b) =>
        expect(Math.abs(value - whole.covariance[a]![b]!) / (doubt(a) * doubt(b))).toBeLessThan(1e-4),
      );
    });
  });

  it('splits the uncertainty of an output alike', () => {
    const output = ([rate, size, scale]: readonly number[]): number => Math.exp(-rate! * 2) * size! + 0.1 * scale! ** 2;
    const [mine, other] = [bundle.propagate(output), whole.propagate(output)];
    expect(Math.abs(mine.value - other.value)).toBeLessThan(0.01 * other.standardUncertainty);
    expect(mine.standardUncertainty / other.standardUncertainty).toBeCloseTo(1, 4);
    expect([...mine.bySource.keys()].sort()).toEqual(['blank', 'place', 'rate', 'reading', 'scale', 'size']);
    for (const [source, share] of other.bySource) expect(mine.bySource.get(source)! / share).toBeCloseTo(1, 3);
  });

  it('splits it so that the squares add up to g^T cov g', () => {
    const { covariance } = bundle;
    const { standardUncertainty, bySource } = bundle.propagate(([rate, , scale]) => 2 * rate! - scale!);
    const squares = [...bySource.values()].reduce((sum, share) => sum + share * share, 0);
    expect(squares).toBeCloseTo(standardUncertainty ** 2, 12);
    const expected = 4 * covariance[0]![0]! - 4 * covariance[0]![2]! + covariance[2]![2]!;
    expect(standardUncertainty ** 2 / expected).toBeCloseTo(1, 9);
  });

  it('leaves the same residuals, the outlier among them, and counts their cost by their loss', () => {
    const flat = bundle.frameResiduals.flat();
    flat.forEach((r, i) => expect(r).toBeCloseTo(whole.residuals[3 + i]!, 2));
    // 1.5 over 0.05 less what the other readings yield to it
    expect(bundle.frameResiduals[1]![3]!).toBeLessThan(-20);
    const prior = knowledge.shared.residuals(bundle.shared).reduce((sum, r) => sum + r * r, 0);
    const seen = bundle.frameResiduals.flatMap((rs) => rs.map((r, k) => (k < 6 ? robustCost(r) : r * r)));
    expect(bundle.cost).toBeCloseTo(prior + seen.reduce((sum, r) => sum + r, 0), 9);
  });

  it('is not moved by the order of the frames', () => {
    const reversed = adjusted(
      { ...knowledge, frames: [...knowledge.frames].reverse() },
      { ...start, frames: [...start.frames].reverse() },
      steps,
    );
    reversed.shared.forEach((value, i) => expect(value).toBeCloseTo(bundle.shared[i]!, 9));
    [...reversed.frames].reverse().forEach((own, i) => expect(own[1]).toBeCloseTo(bundle.frames[i]![1]!, 9));
  });
});

describe('adjustBundle in closed form', () => {
  /** Each station reads its own offset several times (blank), and once the common value with the offset in it. */
  const stations = [
    { blanks: [0.31, 0.35, 0.28], blankSd: 0.06, read: 5.42, readSd: 0.1 },
    { blanks: [-0.12, -0.1], blankSd: 0.05, read: 4.83, readSd: 0.04 },
    { blanks: [0.05, 0.09, 0.02, 0.07], blankSd: 0.2, read: 5.2, readSd: 0.15 },
    { blanks: [1.4], blankSd: 0.02, read: 6.37, readSd: 0.3 },
  ];
  const knowledge: BundleKnowledge<'blank' | 'read' | 'prior'> = {
    shared: { sources: ['prior'], residuals: ([value]) => [(value! - 4.7) / 0.2] },
    frames: stations.map(({ blanks, blankSd, read, readSd }) => ({
      sources: [...blanks.map(() => 'blank' as const), 'read'],
      robust: plain,
      residuals: ([value], [offset]) => [
        ...blanks.map((blank) => (offset! - blank) / blankSd),
        (value! + offset! - read) / readSd,
      ],
    })),
    seenByFrames: 1,
  };
  const outcome = adjusted(
    knowledge,
    { shared: [0], frames: stations.map(() => [0]) },
    { shared: [1e-3], own: [1e-3] },
  );
  // A station by itself: the reading less the mean blank, variances added. All of them and the prior: their weighted mean.
  const alone = stations.map(({ blanks, blankSd, read, readSd }) => {
    const blank = blanks.reduce((sum, each) => sum + each, 0) / blanks.length;
    const blankVariance = blankSd ** 2 / blanks.length;
    return {
      blank,
      blankVariance,
      readVariance: readSd ** 2,
      value: read - blank,
      weight: 1 / (blankVariance + readSd ** 2),
    };
  });
  const weight = alone.reduce((sum, each) => sum + each.weight, 1 / 0.04);
  const mean = alone.reduce((sum, each) => sum + each.weight * each.value, 4.7 / 0.04) / weight;

  it('is the weighted mean of what each station says of the common value', () => {
    expect(outcome.shared[0]).toBeCloseTo(mean, 9);
    expect(outcome.covariance[0]![0]! * weight).toBeCloseTo(1, 9);
  });

  it('shares out the rest of each station between its blanks and its reading, by their variances', () => {
    alone.forEach(({ blank, blankVariance, value, weight: own }, i) =>
      expect(outcome.frames[i]![0]).toBeCloseTo(blank + blankVariance * own * (value - mean), 9),
    );
  });

  it('splits the variance by the weights of the mean', () => {
    const { bySource } = outcome.propagate(([value]) => value!);
    const root = (variance: (each: (typeof alone)[number]) => number): number =>
      Math.sqrt(alone.reduce((sum, each) => sum + (each.weight / weight) ** 2 * variance(each), 0));
    expect(bySource.get('blank')).toBeCloseTo(
      root(({ blankVariance }) => blankVariance),
      9,
    );
    expect(bySource.get('read')).toBeCloseTo(
      root(({ readVariance }) => readVariance),
      9,
    );
    expect(bySource.get('prior')).toBeCloseTo(0.2 / 0.04 / weight, 9);
  });
});

describe('adjustBundle of Misra1a', () => {
  /**
   * NIST's Statistical Reference Datasets, nonlinear regression: y = b1 (1 - exp(-b2 x)), data and certified values from memory (as in
   * adjustment.test.ts, where the one follows from the other to nine digits). Here b2 is shared, b1 the frame's own, or the other way.
   */
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const certified = [2.3894212918e2, 5.5015643181e-4] as const;
  const certifiedSd = [2.7070075241, 7.2668688436e-6] as const;
  const certifiedSquares = 1.2455138894e-1;
  const residualSd = Math.sqrt(certifiedSquares / (14 - 2));
  const model = (b1: number, b2: number): number[] =>
    x.map((at, i) => (b1 * (1 - Math.exp(-b2 * at)) - y[i]!) / residualSd);
  const frame = (sharedFirst: boolean) => ({
    sources: x.map(() => 'datum' as const),
    robust: plain,
    residuals: ([a]: readonly number[], [b]: readonly number[]) => (sharedFirst ? model(a!, b!) : model(b!, a!)),
  });
  const nothing = { sources: [], residuals: () => [] };

  it('reaches the certified values and deviations with b2 shared and b1 the frame’s own', () => {
    const outcome = adjusted<'datum'>(
      { shared: nothing, frames: [frame(false)], seenByFrames: 1 },
      { shared: [5e-4], frames: [[250]] },
      { shared: [1e-9], own: [1e-3] },
      200,
    );
    expect(outcome.shared[0]! / certified[1]).toBeCloseTo(1, 6);
    expect(outcome.frames[0]![0]! / certified[0]).toBeCloseTo(1, 6);
    expect(Math.sqrt(outcome.covariance[0]![0]!) / certifiedSd[1]).toBeCloseTo(1, 5);
    expect((outcome.cost * residualSd ** 2) / certifiedSquares).toBeCloseTo(1, 6);
  });

  it('reaches them with b1 shared and b2 the frame’s own', () => {
    const outcome = adjusted<'datum'>(
      { shared: nothing, frames: [frame(true)], seenByFrames: 1 },
      { shared: [250], frames: [[5e-4]] },
      { shared: [1e-3], own: [1e-9] },
      200,
    );
    expect(outcome.shared[0]! / certified[0]).toBeCloseTo(1, 6);
    expect(Math.sqrt(outcome.covariance[0]![0]!) / certifiedSd[0]).toBeCloseTo(1, 5);
  });

  it('knows what is shared by the root of two better from two frames of the same data', () => {
    const outcome = adjusted<'datum'>(
      { shared: nothing, frames: [frame(false), frame(false)], seenByFrames: 1 },
      { shared: [5e-4], frames: [[250], [230]] },
      { shared: [1e-9], own: [1e-3] },
      200,
    );
    expect(outcome.shared[0]! / certified[1]).toBeCloseTo(1, 6);
    expect((Math.sqrt(outcome.covariance[0]![0]!) * Math.SQRT2) / certifiedSd[1]).toBeCloseTo(1, 5);
    outcome.frames.forEach(([b1]) => expect(b1! / certified[0]).toBeCloseTo(1, 6));
  });
});

describe('the work of adjustBundle', () => {
  function evaluations(
    frameCount: number,
    seenByFrames = 2,
  ): { readonly perRound: number; readonly shared: readonly number[] } {
    let calls = 0;
    const { knowledge, start, steps } = decay(frameCount, seenByFrames, () => (calls += 1));
    const { iterations, shared } = adjusted(knowledge, start, steps);
    return { perRound: calls / iterations, shared };
  }

  it('grows with the number of frames', () => {
    const [few, many] = [evaluations(10), evaluations(40)];
    // Four times as many frames; rounds differ by a trial or two.
    expect(many.perRound / few.perRound).toBeGreaterThan(3);
    expect(many.perRound / few.perRound).toBeLessThan(5);
  });

  it('is saved for parameters that the frames do not see, with the same outcome', () => {
    const [told, untold] = [evaluations(6, 2), evaluations(6, 3)];
    expect(told.perRound).toBeLessThan(untold.perRound);
    told.shared.forEach((value, i) => expect(value).toBe(untold.shared[i]!));
  });
});

describe('adjustBundle that says how far it is', () => {
  const { knowledge, start, steps } = decay(3);

  it('counts its rounds', () => {
    const told: number[] = [];
    const outcome = adjustBundle(knowledge, start, steps, 40, (rounds) => told.push(rounds));
    if (!outcome.ok) throw new Error(outcome.failure.kind);
    expect(outcome.value.iterations).toBeGreaterThan(2);
    expect(outcome.value.iterations).toBeLessThan(40);
    expect(told).toEqual(Array.from({ length: outcome.value.iterations }, (_, i) => i + 1));
  });

  it('stops at the limit', () => {
    const told: number[] = [];
    const outcome = adjustBundle(knowledge, start, steps, 2, (rounds) => told.push(rounds));
    expect(outcome).toMatchObject({ ok: true, value: { iterations: 2 } });
    expect(told).toEqual([1, 2]);
  });
});

describe('adjustBundle of knowledge that does not suffice', () => {
  const fails = { ok: false, failure: { kind: 'ill-conditioned' } };
  const steps: BundleSteps = { shared: [1e-3, 1e-3], own: [1e-3] };
  const start: BundleStart = { shared: [0, 0], frames: [[0], [0]] };
  const frame = (residuals: (shared: readonly number[], own: readonly number[]) => number[]) => ({
    sources: residuals([0, 0], [0]).map(() => 'seen' as const),
    robust: plain,
    residuals,
  });
  const shared = (residuals: (s: readonly number[]) => number[]) => ({
    sources: residuals([0, 0]).map(() => 'known' as const),
    residuals,
  });

  it.each<[string, BundleKnowledge<'known' | 'seen'>]>([
    [
      'of a shared parameter that nothing speaks of',
      {
        shared: shared(([a]) => [a! - 1]),
        frames: [frame(([a], [o]) => [a! - o!, o! - 2]), frame(([a], [o]) => [a! + o!])],
        seenByFrames: 2,
      },
    ],
    [
      'of a frame’s own parameter that nothing speaks of',
      {
        shared: shared(([a, b]) => [a! - 1, b! - 2]),
        frames: [frame(([a], [o]) => [a! - o!]), frame(([a]) => [a! - 2])],
        seenByFrames: 2,
      },
    ],
    [
      'of shared and own parameters whose sum alone is seen',
      {
        shared: shared(([a]) => [a! - 1]),
        frames: [frame(([, b], [o]) => [b! + o! - 1]), frame(([, b], [o]) => [b! + o! - 2])],
        seenByFrames: 2,
      },
    ],
    [
      'that is not a number',
      {
        shared: shared(([a, b]) => [a! - 1, b! - 2]),
        frames: [frame((_, [o]) => [o! - 1]), frame((_, [o]) => [o! / 0 - NaN])],
        seenByFrames: 2,
      },
    ],
  ])('fails: %s', (_, knowledge) => {
    expect(adjustBundle(knowledge, start, steps)).toEqual(fails);
  });
});
