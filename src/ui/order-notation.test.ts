import { describe, expect, it } from 'vitest';
import type { EyePrescription } from '../core/lenses/prescription.js';
import { eyeNotation } from './order-notation.js';

const PLAIN: EyePrescription = {
  sphereD: -2.5,
  cylinderD: 0,
  axisDeg: 180,
  prism: { horizontal: { amount: 0, base: 'in' }, vertical: { amount: 0, base: 'up' } },
  addD: 0,
};

/** As it reads, whatever keeps the words of a part together. */
function written(change: Partial<EyePrescription>): string {
  return eyeNotation({ ...PLAIN, ...change }).replaceAll('\u00a0', ' ');
}

// The form of BS 2738-3, from memory: signs always, two decimals, cylinder after a slash, no degree sign behind the axis.
describe('what is prescribed for an eye, in one line', () => {
  it('has a true minus and two decimals', () => {
    expect(written({})).toBe('−2.50');
    expect(written({ sphereD: 3 })).toBe('+3.00');
  });

  it('has no sign for nothing', () => {
    expect(written({ sphereD: 0 })).toBe('0.00');
  });

  it('has the cylinder after a slash and the axis after a cross', () => {
    expect(written({ sphereD: 2.25, cylinderD: -1, axisDeg: 5 })).toBe('+2.25 / −1.00 × 5');
  });

  it('names the base of each prism, and the addition last', () => {
    const prism: EyePrescription['prism'] = {
      horizontal: { amount: 2, base: 'in' },
      vertical: { amount: 0.75, base: 'down' },
    };
    expect(written({ prism, addD: 1.75 })).toBe('−2.50   2 Δ base in   0.75 Δ base down   Add +1.75');
  });
});
