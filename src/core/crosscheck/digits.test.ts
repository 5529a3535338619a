import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withDigitsSwapped, withOneDigitChanged } from './digits.js';

describe('digits', () => {
  it.each([
    [36, [63]],
    [57, [75]],
    [65.1, [56.1, 61.5]],
    [36.5, [63.5, 35.6]],
    [66, []],
    [7, []],
  ])('of %d swapped', (value, swapped) => {
    expect([...withDigitsSwapped(value)].sort()).toEqual([...swapped].sort());
  });

  it('swapped differ by a multiple of nine of the last place', () => {
    // (10a + b) - (10b + a) = 9 (a - b): elementary number theory
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), (tenths) => {
        for (const swapped of withDigitsSwapped(tenths / 10)) {
          // a whole number of millimetres has no tenths on paper, but ten times a multiple of nine is one too
          expect(Math.round(Math.abs(swapped - tenths / 10) * 10) % 9).toBe(0);
        }
      }),
    );
  });

  it('swapped twice can be what they were', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 11, max: 99 }).filter((value) => value % 10 !== 0),
        (value) => {
          for (const swapped of withDigitsSwapped(value)) expect(withDigitsSwapped(swapped)).toContain(value);
        },
      ),
    );
  });

  it('changed one at a time', () => {
    const changed = withOneDigitChanged(57);
    // first digit 1 to 9 less its own, second 0 to 9 less its own
    expect(changed).toHaveLength(8 + 9);
    expect(changed).toContain(54);
    expect(changed).toContain(67);
    expect(changed).not.toContain(57);
    expect(changed).not.toContain(64);
  });

  it('has nothing to say of numbers that nobody writes', () => {
    expect(withDigitsSwapped(-63)).toEqual([]);
    expect(withOneDigitChanged(1e-7)).toEqual([]);
  });
});
