import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { normalCdf } from '../statistics/normal.js';
import { assembleCatalogue, measurementById, measurementOfReading } from './catalogue.js';
import type { Measurement } from './measurement.js';
import { MEASUREMENT_GROUPS, READING_NAMES } from './measurement.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

const idsWhere = (holds: (measurement: Measurement) => boolean): readonly string[] =>
  catalogue.filter(holds).map(({ id }) => id);

describe('catalogue', () => {
  it('has a place for every reading, once, in the order of the sheet', () => {
    expect(catalogue.flatMap(({ fields }) => fields.map(({ name }) => name))).toEqual(READING_NAMES);
  });

  it('keeps the blocks of the sheet together and in order', () => {
    const groups = catalogue.map(({ group }) => group);
    expect(groups.filter((group, index) => group !== groups[index - 1])).toEqual(MEASUREMENT_GROUPS);
  });

  it('finds measurements by id and by reading', () => {
    expect(measurementById(catalogue, 'irisDiameter').fields).toEqual([{ name: 'irisDiameter', side: null }]);
    expect(measurementOfReading(catalogue, 'monoPdL').id).toBe('monocularPd');
    expect(measurementOfReading(catalogue, 'monoPdR')).toBe(measurementOfReading(catalogue, 'monoPdL'));
    expect(() => measurementById([], 'headWidth')).toThrow('headWidth');
    expect(() => measurementOfReading([], 'pdFar')).toThrow('pdFar');
  });

  it('finds in each catalogue what that catalogue says', () => {
    // a practice's own tolerance is another catalogue: the first one that was asked must not answer for it
    const own = catalogue.map((measurement) => ({ ...measurement, tolerance: { ...measurement.tolerance, value: 9 } }));
    expect(measurementOfReading(catalogue, 'headWidth').tolerance.value).not.toBe(9);
    expect(measurementOfReading(own, 'headWidth').tolerance.value).toBe(9);
    const fewer = catalogue.filter(({ id }) => id !== 'headWidth');
    expect(() => measurementOfReading(fewer, 'headWidth')).toThrow('headWidth');
  });

  it('knows what may be negative, what is found by trying, and what a squint changes', () => {
    expect(idsWhere(({ isSigned }) => isSigned)).toEqual([
      'crestHeight',
      'bridgeProjection',
      'angleOfSide',
      'inwardAngleOfDrop',
      'earPointDifference',
      'pantoscopicAngle',
      'faceFormAngle',
    ]);
    expect(idsWhere(({ takenBy }) => takenBy === 'trial')).toEqual(['apicalRadius']);
    expect(idsWhere(({ changesWithSquint }) => changesWithSquint)).toEqual([
      'binocularPd',
      'monocularPd',
      'nearPd',
      'monocularNearPd',
      'fittingHeight',
    ]);
  });

  it('measures angles in degrees and everything else in millimetres', () => {
    expect(idsWhere(({ unit }) => unit === 'deg')).toEqual(idsWhere(({ id }) => /angle/i.test(id)));
  });

  it.each(catalogue.map((measurement) => [measurement.id, measurement] as const))(
    '%s has sound numbers',
    (_, measurement) => {
      const { plausible, population, isSigned, tolerance, resolution } = measurement;
      const { soft, hard } = plausible;
      expect(hard.low).toBeLessThan(soft.low);
      expect(soft.low).toBeLessThan(population.mean);
      expect(population.mean).toBeLessThan(soft.high);
      expect(soft.high).toBeLessThan(hard.high);
      // nobody of ten thousand is refused, and at most one in twenty is asked to look again
      const zOf = (value: number) => (value - population.mean) / population.standardDeviation;
      expect(zOf(hard.low)).toBeLessThan(-3.9);
      expect(zOf(hard.high)).toBeGreaterThan(3.9);
      expect(normalCdf(zOf(soft.low)) + 1 - normalCdf(zOf(soft.high))).toBeLessThan(0.05);
      expect(isSigned).toBe(hard.low <= 0);
      expect([0.5, 1]).toContain(resolution);
      expect(tolerance.value).toBeGreaterThanOrEqual(resolution);
    },
  );

  it.each(catalogue.map((measurement) => [measurement.id, measurement] as const))(
    '%s has its sides, R before L',
    (_, { fields, sideDifference }) => {
      const sides = fields.map(({ side }) => side);
      expect(sides).toEqual(sideDifference === null ? [null] : ['R', 'L']);
      const stems = fields.map(({ name, side }) => (side === null ? name : name.replace(new RegExp(`${side}$`), '')));
      expect(new Set(stems).size).toBe(1);
      if (sideDifference !== null) expect(fields.map(({ name }) => name.slice(-1))).toEqual(['R', 'L']);
    },
  );

  it('lets a trained reading decide within every tolerance', () => {
    // otherwise no finding could ever be `agrees`; 1.96 sigma of repeatability and scale step
    for (const { tolerance, repeatability, resolution } of catalogue) {
      const expanded = 1.96 * Math.hypot(repeatability.standardDeviation, resolution / Math.sqrt(12));
      expect(expanded).toBeLessThan(tolerance.value);
    }
  });

  it('lets right and left of one person differ less than people do', () => {
    for (const { id, population, sideDifference } of catalogue) {
      if (sideDifference === null) continue;
      // two strangers differ by root 2 of the spread
      expect(sideDifference.standardDeviation, id).toBeLessThan(Math.SQRT2 * population.standardDeviation);
    }
  });
});
