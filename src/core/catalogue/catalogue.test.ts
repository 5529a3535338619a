import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue, measurementById, measurementOfReading, readingNames } from './catalogue.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

describe('catalogue', () => {
  it('has a place for every reading, R before L, once', () => {
    expect(readingNames(catalogue)).toEqual([
      'pdFar',
      'monoPdR',
      'monoPdL',
      'pdNear',
      'apertureR',
      'apertureL',
      'headWidth',
      'templeWidth',
    ]);
  });

  it('finds measurements by id and by reading', () => {
    expect(measurementById(catalogue, 'irisDiameter').fields).toEqual([]);
    expect(measurementOfReading(catalogue, 'monoPdL').id).toBe('monocularPd');
    expect(() => measurementById([], 'headWidth')).toThrow('headWidth');
    expect(() => measurementOfReading([], 'pdFar')).toThrow('pdFar');
  });

  it('refuses a hand reading without repeatability', () => {
    const repeatability = { ...OUTSIDE_TABLES.repeatability, headWidth: null };
    expect(() => assembleCatalogue({ ...OUTSIDE_TABLES, repeatability })).toThrow('headWidth');
  });

  it.each(catalogue.map((measurement) => [measurement.id, measurement] as const))('%s is sound', (_, measurement) => {
    const { soft, hard } = measurement.plausible;
    expect(hard.low).toBeLessThan(soft.low);
    expect(soft.low).toBeLessThan(measurement.population.mean);
    expect(measurement.population.mean).toBeLessThan(soft.high);
    expect(soft.high).toBeLessThan(hard.high);
    expect(measurement.tolerance.value).toBeGreaterThanOrEqual(measurement.resolution);
    // one sentence each
    expect(measurement.definition).toMatch(/^[A-Z][^.]*\.$/);
    const sides = measurement.fields.map((field) => field.side);
    expect(measurement.sideDifference === null ? [] : ['R', 'L']).toEqual(sides.filter((side) => side !== null));
  });

  it('lets a trained reading decide within every tolerance', () => {
    // otherwise no finding could ever be `agrees`; 1.96 sigma of repeatability and scale step
    for (const { tolerance, repeatability, resolution } of catalogue) {
      if (repeatability === null) continue;
      const expanded = 1.96 * Math.hypot(repeatability.standardDeviation, resolution / Math.sqrt(12));
      expect(expanded).toBeLessThan(tolerance.value);
    }
  });
});
