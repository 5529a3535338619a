import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { assembleCatalogue } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import { invertSymmetric, logDeterminant } from '../fitting/linear-system.js';
import type { Reading } from '../reading/reading.js';
import { faceModel, type FaceModel } from './face-model.js';
import { gainOfChanges, leftOut, observeSheet, placeOf, predictFromOthers, withChanges } from './observed-sheet.js';
import { reconciledValues } from './reconciled-values.js';
import type { Evidence } from './reconciliation.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const model = faceModel(catalogue, 400);

function evidence(values: Partial<Record<ReadingName, number>>, standardUncertainty = 0.5): Evidence {
  const readings: Partial<Record<ReadingName, Reading>> = {};
  for (const [name, value] of Object.entries(values) as [ReadingName, number][]) {
    readings[name] = { name, value, standardUncertainty, origin: null };
  }
  return { readings, estimates: null, catalogue, workingDistanceMm: 400, gauges: [] };
}

const VALUES = { pdFar: 65, monoPdR: 31, monoPdL: 32.5, pdNear: 60, headWidth: 151, crestHeightR: 4 } as const;
const NAMES = Object.keys(VALUES) as (keyof typeof VALUES)[];

/** Logarithm of the density of a normal vector, written out: -½ (rᵀ S^-1 r + ln |S| + n ln 2 pi). */
function logDensity(names: readonly ReadingName[], values: readonly number[], variance = 0.25): number {
  const s = names.map((a, i) =>
    names.map((b, j) => model.covariance[placeOf(a)]![placeOf(b)]! + (i === j ? variance : 0)),
  );
  const inverse = invertSymmetric(s)!;
  const residual = values.map((value, i) => value - model.means[names[i]!]);
  const distance = residual.reduce(
    (total, one, i) => total + residual.reduce((sum, other, j) => sum + one * inverse[i]![j]! * other, 0),
    0,
  );
  return -0.5 * (distance + logDeterminant(s) + names.length * Math.log(2 * Math.PI));
}

describe('an observed sheet', () => {
  const sheet = observeSheet(evidence(VALUES), model);
  const before = logDensity(
    NAMES,
    NAMES.map((name) => VALUES[name]),
  );

  it('weighs changed values as the density written out does', () => {
    const changed = { ...VALUES, pdFar: 63.5, monoPdL: 31 };
    const after = logDensity(
      NAMES,
      NAMES.map((name) => changed[name]),
    );
    const changes = [
      { place: placeOf('pdFar'), by: -1.5 },
      { place: placeOf('monoPdL'), by: -1.5 },
    ];
    expect(gainOfChanges(sheet, changes)).toBeCloseTo(after - before, 9);
    const renewed = observeSheet(evidence(changed), model);
    expect(withChanges(sheet, changes).weighted[placeOf('pdNear')]).toBeCloseTo(
      renewed.weighted[placeOf('pdNear')]!,
      9,
    );
  });

  it('predicts a value from the others by the density written out', () => {
    const rest = NAMES.filter((name) => name !== 'pdFar');
    const without = logDensity(
      rest,
      rest.map((name) => VALUES[name]),
    );
    expect(predictFromOthers(sheet, [placeOf('pdFar')]).logDensity).toBeCloseTo(before - without, 9);
    const both = NAMES.filter((name) => name !== 'monoPdR' && name !== 'monoPdL');
    const withoutBoth = logDensity(
      both,
      both.map((name) => VALUES[name]),
    );
    const { logDensity: joint } = predictFromOthers(sheet, [placeOf('monoPdR'), placeOf('monoPdL')]);
    expect(joint).toBeCloseTo(before - withoutBoth, 9);
  });

  it('forgets a value that is left out', () => {
    const { pdFar: _, ...rest } = VALUES;
    const alone = observeSheet(evidence(rest), model);
    const left = leftOut(sheet, [placeOf('pdFar')]);
    for (const name of ['monoPdR', 'headWidth'] as const) {
      expect(left.weighted[placeOf(name)]).toBeCloseTo(alone.weighted[placeOf(name)]!, 9);
    }
  });

  it('takes what both eyes share of the camera from the doubt of their sum', () => {
    const eye = (value: number, standardUncertainty: number) => ({
      value,
      standardUncertainty,
      low: value - 2 * standardUncertainty,
      high: value + 2 * standardUncertainty,
      unit: 'mm' as const,
      budget: [],
    });
    // A camera that knows the whole to 0.2 mm, and each eye only to 2 mm because it does not know the midline.
    const estimates = { pdFar: eye(63, 0.2), monoPdR: eye(31, 2), monoPdL: eye(32, 2) };
    const seen = observeSheet({ ...evidence({ pdFar: 66 }), estimates }, model);
    const { off, covariance } = predictFromOthers(seen, [placeOf('pdFar')]);
    expect(off[0]).toBeCloseTo(3, 1);
    // u² of the reading and of the camera's whole, the latter a little less sure for the bound on the correlation
    expect(Math.sqrt(covariance[0]![0]!)).toBeGreaterThan(Math.hypot(0.5, 0.2) * 0.98);
    expect(Math.sqrt(covariance[0]![0]!)).toBeLessThan(Math.hypot(0.5, 0.45));
  });
});

describe('reconciled values', () => {
  it('are those of a textbook example of data reconciliation', () => {
    // A heat exchanger with a bypass, six streams with equal doubts: feed, exchanger in, bypass, exchanger out, bypass out, product.
    // Narasimhan and Jordache, Data Reconciliation and Gross Error Detection (2000), example 1-1 (numbers from memory; they also
    // follow by hand: three pairs of means, and a third of what their sum misses to each).
    const measured = [101.91, 64.45, 34.65, 64.2, 36.44, 98.88];
    const reconciled = [100.22, 64.5, 35.72, 64.5, 35.72, 100.22];
    const streams = READING_NAMES.slice(0, 6);
    // Two flows that nobody knows beforehand, through the exchanger and around it; each stream is one of them, or both.
    const parts = [
      [1, 1],
      [1, 0],
      [0, 1],
      [1, 0],
      [0, 1],
      [1, 1],
    ];
    const wide = 1e4 ** 2;
    const plant: FaceModel = {
      means: Object.fromEntries(
        READING_NAMES.map((name, i) => [name, (parts[i] ?? []).reduce((sum, share) => sum + 50 * share, 0)]),
      ) as FaceModel['means'],
      covariance: READING_NAMES.map((_, i) =>
        READING_NAMES.map(
          (__, j) => wide * (parts[i] ?? [0, 0]).reduce((sum, share, k) => sum + share * (parts[j]?.[k] ?? 0), 0),
        ),
      ),
      blocks: [READING_NAMES.map((_, place) => place)],
      blockAt: READING_NAMES.map(() => 0),
      relations: [],
    };
    const flows = Object.fromEntries(streams.map((name, i) => [name, measured[i]!]));
    const values = reconciledValues(observeSheet(evidence(flows, 1), plant), new Set(), plant);
    streams.forEach((name, i) => {
      expect(values[name]?.value).toBeCloseTo(reconciled[i]!, 2);
    });
  });

  it('are surer than the readings, and as sure as they claim', () => {
    const random = seededRandom(5);
    let squares = 0;
    const rounds = 400;
    for (let i = 0; i < rounds; i += 1) {
      const pd = random.normal(63.26, 3.651);
      const half = random.normal(0, 1.92) / 2;
      const read = (value: number): number => random.normal(value, 0.5);
      const values = { pdFar: read(pd), monoPdR: read(pd / 2 + half), monoPdL: read(pd / 2 - half) };
      const { pdFar } = reconciledValues(observeSheet(evidence(values), model), new Set(), model);
      expect(pdFar!.standardUncertainty).toBeLessThan(0.42);
      squares += ((pdFar!.value - pd) / pdFar!.standardUncertainty) ** 2;
    }
    // chi squared with 400 degrees of freedom: mean 1, standard deviation sqrt(2/400) of the mean square
    expect(Math.abs(squares / rounds - 1)).toBeLessThan(3.5 * Math.sqrt(2 / rounds));
  });
});
