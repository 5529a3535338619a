import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { READING_NAMES, type ReadingName } from '../../src/core/catalogue/measurement.js';
import { takeReading } from '../../src/core/reading/reading.js';
import { constraintOf } from './constraint.js';
import { evidenceOfRecord } from '../../src/session/record-evidence.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

/** How narrowly a slip at `name` is told on a sheet with `others` and, where it is given, a camera of this uncertainty. */
function constraint(name: ReadingName, others: readonly ReadingName[], camera: number | null = null) {
  const names = [name, ...others];
  const evidence = evidenceOfRecord(
    {
      id: null,
      workingDistanceMm: null,
      readings: Object.fromEntries(names.map((one) => [one, { scale: [30], zeroOffset: null }])),
      estimates: camera === null ? {} : { [name]: { value: 30, standardUncertainty: camera } },
    },
    [],
    catalogue,
  );
  return constraintOf({ kind: 'ten-off', restorations: [{ name, written: 30, restored: 20 }] }, evidence);
}

describe('constraintOf', () => {
  it('finds nothing where only the reading itself is written', () => {
    expect(READING_NAMES.map((name) => constraint(name, []))).toEqual(READING_NAMES.map(() => 'none'));
  });

  it('finds what both eyes tell of the whole, and the whole of both eyes', () => {
    // each eye has the doubt of one reading, 0.4 mm and half a step: their sum 0.6 mm, and 3 mm are four times that and more
    expect(constraint('pdFar', ['monoPdR', 'monoPdL'])).toBe('narrow');
    expect(constraint('monoPdR', ['pdFar', 'monoPdL'])).toBe('narrow');
    expect(constraint('pdFar', ['boxLensHeight'])).toBe('none');
  });

  it('asks of swapped sides who tells their difference, not their sum', () => {
    const swapped = (others: readonly ReadingName[]) => {
      const readings = Object.fromEntries(
        ['monoPdR', 'monoPdL', ...others].map((one) => [one, { scale: [30], zeroOffset: null }]),
      );
      const record = { id: null, workingDistanceMm: null, readings, estimates: {} };
      const restorations = [
        { name: 'monoPdR', written: 30, restored: 33 },
        { name: 'monoPdL', written: 33, restored: 30 },
      ] as const;
      return constraintOf({ kind: 'sides-swapped', restorations }, evidenceOfRecord(record, [], catalogue));
    };
    expect(swapped(['pdFar'])).toBe('none');
    // the near distances of each eye tell 0.94 of the same difference, each with the doubt of one reading
    expect(swapped(['pdFar', 'monoNearR', 'monoNearL'])).not.toBe('none');
  });

  it('takes a camera for as good as it is', () => {
    const own = takeReading('pdFar', 63, catalogue).standardUncertainty;
    // four standard deviations of the difference between hand and camera are 3 mm at this uncertainty, by people as wide as they are
    const limit = Math.sqrt(0.75 ** 2 - own ** 2);
    expect(constraint('pdFar', [], limit - 0.02)).toBe('narrow');
    expect(constraint('pdFar', [], limit + 0.1)).toBe('wide');
    expect(constraint('pdFar', [], 20)).toBe('none');
  });
});
