import { describe, expect, it } from 'vitest';
import type { StandardId } from './centration-standards.js';
import { allowedPrism, CENTRATION_STANDARDS, imbalanceLimitsOf } from './centration-standards.js';

/** By how much a pair of equal lenses may be off, mm. */
function allowedMm(standard: StandardId, direction: 'horizontal' | 'vertical', powerD: number, ordered = 0): number {
  const limits = CENTRATION_STANDARDS[standard].imbalance[direction];
  return (10 * allowedPrism(limits, powerD, ordered).prism) / Math.abs(powerD);
}

describe('the limits for mounted pairs', () => {
  it('of ANSI Z80.1 allow as many millimetres as its summaries say', () => {
    // tol.ansi of the collected facts: ANSI Z80.1-2015 quick reference, seen in three independent summaries
    expect(allowedMm('ansi-z80.1', 'horizontal', -2)).toBeCloseTo(3.35, 9);
    expect(allowedMm('ansi-z80.1', 'horizontal', -6)).toBeCloseTo(2.5, 9);
    expect(allowedMm('ansi-z80.1', 'horizontal', 2.75)).toBeCloseTo(2.436, 3);
    expect(allowedMm('ansi-z80.1', 'vertical', 2)).toBeCloseTo(1.65, 9);
    expect(allowedMm('ansi-z80.1', 'vertical', 4)).toBeCloseTo(1, 9);
  });

  it('of ISO 21987 allow as many millimetres as remembered', () => {
    // tol.iso21987 of the collected facts: ISO 21987:2009 and 2017, from memory
    expect(allowedMm('iso-21987', 'horizontal', -2)).toBeCloseTo(3.35, 9);
    expect(allowedMm('iso-21987', 'horizontal', 3.25)).toBeCloseTo(2.0615, 4);
    expect(allowedMm('iso-21987', 'horizontal', 6)).toBeCloseTo(2, 9);
    expect(allowedMm('iso-21987', 'vertical', 4)).toBeCloseTo(1.25, 9);
  });

  it('of ISO 21987 grow with the ordered prism', () => {
    // the same table, from memory: 1.00 up to 10 and 1.25 above; for stronger lenses 0.33 + 2.0 mm and 0.58 + 2.0 mm
    const { horizontal, vertical } = CENTRATION_STANDARDS['iso-21987'].imbalance;
    expect(allowedPrism(horizontal, 1, 2).prism).toBe(0.67);
    expect(allowedPrism(horizontal, 1, 2.25).prism).toBe(1);
    expect(allowedPrism(horizontal, 1, 12).prism).toBe(1.25);
    expect(allowedPrism(horizontal, -4, 3).prism).toBeCloseTo(0.33 + 0.8, 12);
    expect(allowedPrism(horizontal, -4, 11).prism).toBeCloseTo(0.58 + 0.8, 12);
    expect(allowedPrism(vertical, -6, 3).prism).toBeCloseTo(0.25 + 0.6, 12);
    expect(allowedPrism(vertical, 2, 0)).toEqual({ prism: 0.5, ofShift: null });
  });

  it('of progressive lenses have their own rows', () => {
    // tol.ansi_pal of the collected facts: 1.0 mm at each reference point above the limit, summary of the 1999 edition
    const { horizontal } = imbalanceLimitsOf(CENTRATION_STANDARDS['ansi-z80.1'], 'progressive');
    expect(allowedPrism(horizontal, -3, 0).prism).toBe(0.67);
    expect(allowedPrism(horizontal, -5, 0)).toEqual({ prism: 1, ofShift: { shiftMm: 2, powerD: 5 } });
  });

  it('say so where they are from memory', () => {
    const iso = CENTRATION_STANDARDS['iso-21987'];
    for (const sourced of [iso.imbalance, iso.progressiveImbalance, iso.position]) {
      expect(sourced.status).toBe('from-memory');
    }
  });
});
