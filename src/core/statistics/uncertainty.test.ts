import { describe, expect, it } from 'vitest';
import { coverageFactor } from './student-t.js';
import {
  combineUncertainties,
  effectiveDegreesOfFreedom,
  rectangularUncertainty,
  resolutionUncertainty,
} from './uncertainty.js';

describe('GUM H.1, calibration of an end gauge', () => {
  // JCGM 100:2008, Annex H.1; inputs from a script that encodes them, results 32 nm, 16, 2.92 and 93 nm from memory and recomputed
  const standardNm = 50_000_623;
  const fromStandard = { standardUncertainty: 25, degreesOfFreedom: 18 };
  const comparison = [
    { standardUncertainty: 5.8, degreesOfFreedom: 24 },
    { standardUncertainty: 3.9, degreesOfFreedom: 5 },
    { standardUncertainty: 6.7, degreesOfFreedom: 8 },
  ];
  const difference = {
    standardUncertainty: combineUncertainties(comparison.map((part) => part.standardUncertainty)),
    degreesOfFreedom: effectiveDegreesOfFreedom(comparison),
  };
  const expansion = { standardUncertainty: standardNm * 0.1 * rectangularUncertainty(1e-6), degreesOfFreedom: 50 };
  const temperature = { standardUncertainty: standardNm * 11.5e-6 * rectangularUncertainty(0.05), degreesOfFreedom: 2 };
  const parts = [fromStandard, difference, expansion, temperature];

  it('has the published components', () => {
    expect(Math.abs(difference.standardUncertainty - 9.682)).toBeLessThan(0.005);
    expect(Math.abs(difference.degreesOfFreedom - 25.45)).toBeLessThan(0.005);
    expect(Math.abs(expansion.standardUncertainty - 2.887)).toBeLessThan(0.001);
    expect(Math.abs(temperature.standardUncertainty - 16.599)).toBeLessThan(0.001);
  });

  it('has the published combined and expanded uncertainty', () => {
    const combinedNm = combineUncertainties(parts.map((part) => part.standardUncertainty));
    const freedom = effectiveDegreesOfFreedom(parts);
    expect(Math.abs(combinedNm - 31.664)).toBeLessThan(0.002);
    expect(Math.abs(freedom - 16.752)).toBeLessThan(0.002);
    const k99 = coverageFactor(0.99, Math.floor(freedom));
    expect(Math.abs(k99 - 2.92)).toBeLessThan(0.005);
    expect(Math.abs(Math.round(combinedNm) * k99 - 93.4)).toBeLessThan(0.1);
    expect(standardNm + 215).toBe(50_000_838);
  });
});

describe('combining', () => {
  it('adds squares and counts degrees of freedom', () => {
    // JCGM 100:2008, 5.1.2 and G.4.1, with the rounded components of H.1
    const us = [25, 9.7, 2.9, 16.6];
    const nus = [18, 25.6, 50, 2];
    expect(Math.abs(combineUncertainties(us) - 31.671)).toBeLessThan(0.001);
    const parts = us.map((standardUncertainty, i) => ({ standardUncertainty, degreesOfFreedom: nus[i]! }));
    expect(Math.abs(effectiveDegreesOfFreedom(parts) - 16.765)).toBeLessThan(0.001);
  });

  it('adds up an example budget of a card-scaled PD at 500 mm', () => {
    // own arithmetic, no source: card size, edges, pupil centres, depth of 5 mm, yaw
    const combined = combineUncertainties([0.0531, 0.1301, 0.1768, 0.3637, 0.15]);
    expect(Math.abs(combined - 0.4537)).toBeLessThan(0.0005);
    expect(Math.abs(2 * combined - 0.9073)).toBeLessThan(0.0005);
  });

  it('knows scale steps and limits', () => {
    // JCGM 100:2008, 4.3.7 and F.2.2.1 (from memory)
    expect(Math.abs(resolutionUncertainty(1) - 0.2887)).toBeLessThan(0.0001);
    expect(Math.abs(resolutionUncertainty(0.5) - 0.1443)).toBeLessThan(0.0001);
    // width of an unused ID-1 card, limits from memory: 0.0531 mm on a PD of 63
    expect(Math.abs((rectangularUncertainty(0.125) / 85.6) * 63 - 0.0531)).toBeLessThan(0.0001);
  });

  it('treats parts that are known exactly as such', () => {
    const known = { standardUncertainty: 1, degreesOfFreedom: Number.POSITIVE_INFINITY };
    expect(effectiveDegreesOfFreedom([known])).toBe(Number.POSITIVE_INFINITY);
    // one of two equal parts counted with n: (2u²)² / (u⁴ / n) = 4 n
    expect(effectiveDegreesOfFreedom([known, { standardUncertainty: 1, degreesOfFreedom: 5 }])).toBeCloseTo(20, 10);
    expect(() => effectiveDegreesOfFreedom([{ standardUncertainty: 0, degreesOfFreedom: 3 }])).toThrow('above zero');
  });
});
