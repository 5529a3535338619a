import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PRINT_CHECK_LENGTH_MM, printScaleFromMeasuredLength } from './print-check.js';

describe('printScaleFromMeasuredLength', () => {
  it.each([
    // by hand: 145.5 / 150, 153 / 150
    [150, 1],
    [145.5, 0.97],
    [153, 1.02],
    [135, 0.9],
    [165, 1.1],
  ])('takes %f mm of 150 mm as the scale %f', (measuredMm, scale) => {
    const result = printScaleFromMeasuredLength(measuredMm, PRINT_CHECK_LENGTH_MM);
    expect(result.ok && result.value).toBeCloseTo(scale, 12);
  });

  it('gives back the scale that a sheet was printed at', () => {
    const scales = fc.double({ min: 0.9001, max: 1.0999, noNaN: true });
    const nominals = fc.double({ min: 10, max: 300, noNaN: true });
    fc.assert(
      fc.property(scales, nominals, (scale, nominalMm) => {
        const result = printScaleFromMeasuredLength(nominalMm * scale, nominalMm);
        return result.ok && Math.abs(result.value - scale) < 1e-12;
      }),
    );
  });

  it.each([134.9, 165.1, 105, 510, 1.5, 1500])(
    'refuses %f mm of 150 mm and says what it would believe',
    (measuredMm) => {
      expect(printScaleFromMeasuredLength(measuredMm, 150)).toEqual({
        ok: false,
        failure: { kind: 'beyond-limits', measuredMm, lowestMm: 135, highestMm: 165 },
      });
    },
  );

  it.each([
    [15, 'cm', 150],
    [14.6, 'cm', 146],
    // 5.9 in = 149.86 mm (1 in = 25.4 mm by definition)
    [5.9, 'inch', 149.86],
  ] as const)('takes %f for a length in %s and converts nothing unasked', (measured, unit, lengthMm) => {
    const result = printScaleFromMeasuredLength(measured, 150);
    expect(result).toMatchObject({ ok: false, failure: { kind: 'other-unit', unit, measured } });
    expect(!result.ok && result.failure.kind === 'other-unit' && result.failure.lengthMm).toBeCloseTo(lengthMm, 9);
  });

  it.each([0, -150, Number.NaN, Number.POSITIVE_INFINITY])('refuses %f, which is no length', (measuredMm) => {
    expect(printScaleFromMeasuredLength(measuredMm, 150)).toEqual({
      ok: false,
      failure: { kind: 'not-a-length', measuredMm },
    });
  });

  it('holds a nominal length of zero for a bug', () => {
    expect(() => printScaleFromMeasuredLength(150, 0)).toThrow('Broken invariant');
  });
});
