import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import type { Reading, Readings } from '../reading/reading.js';
import { takeReading } from '../reading/reading.js';
import { checkReadings } from './check-readings.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function readingsOf(values: Partial<Record<ReadingName, number>>): Readings {
  const readings: Partial<Record<ReadingName, Reading>> = {};
  for (const [name, value] of Object.entries(values) as [ReadingName, number][]) {
    readings[name] = takeReading(name, value, catalogue);
  }
  return readings;
}

const check = (values: Partial<Record<ReadingName, number>>, workingDistanceMm = 400) =>
  checkReadings(readingsOf(values), catalogue, workingDistanceMm);

describe('checking hand readings among themselves', () => {
  it('finds nothing in a sheet that fits', () => {
    expect(
      check({
        pdFar: 63.5,
        monoPdR: 31.5,
        monoPdL: 32,
        pdNear: 59.5,
        apertureR: 10,
        apertureL: 10.5,
        headWidth: 150,
        templeWidth: 140,
      }),
    ).toEqual([]);
    expect(check({})).toEqual([]);
  });

  it('adds up both eyes', () => {
    // common practice: the sum equals the whole but for rounding; 31 + 32.5 fits 63.5 and misses 65 by 1.5
    expect(check({ pdFar: 63.5, monoPdR: 31, monoPdL: 32.5 })).toEqual([]);
    expect(check({ pdFar: 65, monoPdR: 31, monoPdL: 32.5 })).toMatchObject([
      {
        kind: 'eyes-do-not-add-up',
        gravity: 'contradiction',
        sumMm: 63.5,
        wholeMm: 65,
        differenceMm: 1.5,
        roundingMm: 0.75,
      },
    ]);
    // one millimetre is more than rounding, but three readings by rule may do it
    expect(check({ pdFar: 64.5, monoPdR: 31, monoPdL: 32.5 })).toMatchObject([
      { kind: 'eyes-do-not-add-up', gravity: 'look-again', differenceMm: 1 },
    ]);
    expect(check({ pdFar: 64, monoPdR: 31, monoPdL: 32.5 })).toEqual([]);
  });

  it('wants near below distance, as far as the formula says', () => {
    expect(check({ pdFar: 60, pdNear: 63 })).toMatchObject([
      { kind: 'near-not-below-distance', gravity: 'contradiction' },
    ]);
    // NCD of 63 at 400 mm is 59.016 (textbooks); Gantz et al. 2021 read about 3 mm less by rule, which must pass
    expect(check({ pdFar: 63, pdNear: 59 })).toEqual([]);
    expect(check({ pdFar: 63, pdNear: 60 })).toEqual([]);
    const [found] = check({ pdFar: 63, pdNear: 62 });
    expect(found).toMatchObject({ kind: 'near-unlike-distance', gravity: 'look-again', nearMm: 62 });
    expect(found?.kind === 'near-unlike-distance' && Math.abs(found.expectedNearMm - 59.0164) < 0.001).toBe(true);
    // for a farther working distance the same reading is right: 63 * 2000 / 2027 = 62.16
    expect(check({ pdFar: 63, pdNear: 62 }, 2000)).toEqual([]);
  });

  it('wants the temples narrower than the head', () => {
    expect(check({ headWidth: 140, templeWidth: 150 })).toMatchObject([
      { kind: 'temples-not-below-head', gravity: 'contradiction', templeMm: 150, headMm: 140 },
    ]);
    expect(check({ headWidth: 145, templeWidth: 145 })).toMatchObject([
      { kind: 'temples-not-below-head', gravity: 'look-again' },
    ]);
  });

  it('asks where the sides differ', () => {
    // 2 mm between the lids: a review of ptosis; more than 4 mm between the eyes: own suggestion from 32 people
    expect(check({ apertureR: 8, apertureL: 10 })).toMatchObject([
      { kind: 'sides-differ', differenceMm: -2, limitMm: 2 },
    ]);
    expect(check({ apertureR: 8.5, apertureL: 10 })).toEqual([]);
    expect(check({ monoPdR: 34, monoPdL: 29.5 })).toMatchObject([{ kind: 'sides-differ', differenceMm: 4.5 }]);
    expect(check({ monoPdR: 33.5, monoPdL: 29.5 })).toEqual([]);
  });

  it('asks where a value is unusual, and never more than asks', () => {
    // 54 to 74 mm hold all but 0.8 % of adults (ANSUR II)
    expect(check({ pdFar: 53.5 })).toMatchObject([{ kind: 'unusual', gravity: 'look-again', value: 53.5 }]);
    expect(check({ pdFar: 54 })).toEqual([]);
    expect(check({ pdFar: 74 })).toEqual([]);
    expect(check({ pdFar: 74.5 })).toMatchObject([{ kind: 'unusual' }]);
  });

  it('puts contradictions first', () => {
    const found = check({ pdFar: 76, monoPdR: 31, monoPdL: 32.5, apertureR: 8, apertureL: 10 });
    expect(found.map((one) => one.gravity)).toEqual(['contradiction', 'look-again', 'look-again']);
  });

  it('does not care which side is which', () => {
    const side = (centre: number) =>
      fc.integer({ min: (centre - 5) * 2, max: (centre + 5) * 2 }).map((halves) => halves / 2);
    fc.assert(
      fc.property(side(63), side(31), side(32), side(9), side(10), (pdFar, r, l, up, down) => {
        const kinds = (values: Partial<Record<ReadingName, number>>) =>
          check(values)
            .map(({ kind, gravity }) => `${kind} ${gravity}`)
            .sort();
        expect(kinds({ pdFar, monoPdR: l, monoPdL: r, apertureR: down, apertureL: up })).toEqual(
          kinds({ pdFar, monoPdR: r, monoPdL: l, apertureR: up, apertureL: down }),
        );
      }),
    );
  });
});
