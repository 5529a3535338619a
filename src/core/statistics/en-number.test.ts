import { expect, it } from 'vitest';
import { enNumber } from './en-number.js';

// ISO 13528 and ISO/IEC 17043 Annex B: formula seen in manuals, clause numbers from memory; plain arithmetic
it.each([
  { a: 63, b: 61.5, ua: 1, ub: 1.5, en: 0.8321 },
  { a: 63, b: 60.5, ua: 1, ub: 1.5, en: 1.3868 },
  { a: 64, b: 63, ua: 1.2, ub: 0.8, en: 0.6934 },
])('E_n of $a ± $ua and $b ± $ub', ({ a, b, ua, ub, en }) => {
  const [first, second] = [
    { value: a, expandedUncertainty: ua },
    { value: b, expandedUncertainty: ub },
  ] as const;
  expect(Math.abs(enNumber(first, second) - en)).toBeLessThan(0.0001);
  expect(enNumber(second, first)).toBe(-enNumber(first, second));
});

it('refuses two values without doubt', () => {
  expect(() => enNumber({ value: 1, expandedUncertainty: 0 }, { value: 2, expandedUncertainty: 0 })).toThrow(
    'above zero',
  );
});
