import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue, measurementOfReading } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import { invertSymmetric } from '../fitting/linear-system.js';
import { faceModel } from './face-model.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const model = faceModel(catalogue, 400);
const at = (name: ReadingName): number => READING_NAMES.indexOf(name);
const covariance = (a: ReadingName, b: ReadingName): number => model.covariance[at(a)]![at(b)]!;
const spread = (name: ReadingName): number => Math.sqrt(covariance(name, name));
const spreadOfDifference = (a: ReadingName, b: ReadingName): number =>
  Math.sqrt(covariance(a, a) + covariance(b, b) - 2 * covariance(a, b));

/** Their spread follows from others by geometry instead of from a table; the tables agree within this share. */
const DERIVED: readonly ReadingName[] = [
  'monoPdR',
  'monoPdL',
  'pdNear',
  'monoNearR',
  'monoNearL',
  'distanceBetweenRims10',
  'distanceBetweenRims15',
  'lengthToTangentR',
  'lengthToTangentL',
  'overallSideLength',
];

describe('the distribution of faces', () => {
  it.each(READING_NAMES)('%s has the mean and the spread of the tables', (name) => {
    const { mean, standardDeviation } = measurementOfReading(catalogue, name).population;
    const share = DERIVED.includes(name) ? 0.2 : 1e-9;
    expect(Math.abs(model.means[name] - mean)).toBeLessThan(DERIVED.includes(name) ? 0.5 : 1e-9);
    expect(Math.abs(spread(name) / standardDeviation - 1)).toBeLessThan(share);
  });

  it('has both eyes add up to the whole, exactly', () => {
    const sides =
      covariance('monoPdR', 'monoPdR') + covariance('monoPdL', 'monoPdL') + 2 * covariance('monoPdR', 'monoPdL');
    expect(sides).toBeCloseTo(covariance('pdFar', 'pdFar'), 9);
    // 1.92 mm: 32 people, classroom data (Westfield State College 1998)
    expect(spreadOfDifference('monoPdR', 'monoPdL')).toBeCloseTo(1.92, 9);
  });

  it('brings a PD of 63 to about 59 at 40 cm', () => {
    // NCD = P W / (W + 27) = 59.0164 for P 63 (textbooks of dispensing optics); slope of near on far is the same ratio
    const slope = covariance('pdNear', 'pdFar') / covariance('pdFar', 'pdFar');
    expect(slope).toBeCloseTo(59.0164 / 63, 5);
    expect(model.means.pdNear + slope * (63 - model.means.pdFar)).toBeCloseTo(59.0164, 3);
  });

  it('ties head and eyes as loosely as people do', () => {
    // ANSUR II 2012: r = 0.306 (men) and 0.284 (women) between head breadth and interpupillary breadth
    const r = covariance('headWidth', 'pdFar') / (spread('headWidth') * spread('pdFar'));
    expect(r).toBeGreaterThan(0.28);
    expect(r).toBeLessThan(0.31);
  });

  it('lets 2 to 4 of 1000 have temples as wide as the head', () => {
    // bizygomatic exceeds head breadth in 25 of 6068 (ANSUR II 2012); normal tail beyond z: 2.88 for 0.2 %, 2.65 for 0.4 %
    const z = (model.means.headWidth - model.means.templeWidth) / spreadOfDifference('headWidth', 'templeWidth');
    expect(z).toBeGreaterThan(2.65);
    expect(z).toBeLessThan(2.88);
  });

  it('has every rule hold at the mean', () => {
    for (const { id, shares, constant } of model.relations) {
      const sum = (Object.entries(shares) as [ReadingName, number][]).reduce(
        (total, [name, share]) => total + share * model.means[name],
        0,
      );
      expect(sum, id).toBeCloseTo(constant, 9);
    }
  });

  it('is a proper distribution with any doubt of the readings', () => {
    const noisy = model.covariance.map((row, i) => row.map((value, j) => value + (i === j ? 0.01 : 0)));
    expect(invertSymmetric(noisy)).not.toBeNull();
  });
});
