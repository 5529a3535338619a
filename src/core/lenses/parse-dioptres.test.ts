import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DioptreRules } from './parse-dioptres.js';
import { parseDioptres } from './parse-dioptres.js';

const POWER: DioptreRules = { sign: 'required', lowest: -30, highest: 30, isInSteps: true };
const ADDITION: DioptreRules = { sign: 'positive', lowest: 0.5, highest: 4, isInSteps: true };

function valueOf(typed: string, rules = POWER): number | string {
  const parsed = parseDioptres(typed, rules);
  return parsed.ok ? parsed.value.value : parsed.failure.kind;
}

describe('parseDioptres', () => {
  it('reads powers as the trade writes them', () => {
    expect(valueOf('-1.25')).toBe(-1.25);
    expect(valueOf(' +0,50 ')).toBe(0.5);
    expect(valueOf('\u22122')).toBe(-2);
    expect(valueOf('\u20132')).toBe(-2);
    expect(valueOf('- 2.00')).toBe(-2);
    expect(valueOf('+.25')).toBe(0.25);
    for (const nothing of ['0', '0.00', 'plano', 'Pl', 'PL.', '\u221e', '-0']) expect(valueOf(nothing)).toBe(0);
    expect(Object.is(valueOf('-0'), 0)).toBe(true);
  });

  it('reads every quarter of the range back as it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: -120, max: 120 }), fc.boolean(), (quarters, comma) => {
        const value = quarters / 4;
        const text = `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(2)}`;
        expect(valueOf(comma ? text.replace('.', ',') : text)).toBe(value);
      }),
      { seed: 46 },
    );
  });

  it('takes both ways of cutting an eighth, and says that it is one', () => {
    for (const [typed, value] of [
      ['+0.12', 0.125],
      ['-0.13', -0.125],
      ['-0.125', -0.125],
      ['+1.37', 1.375],
      ['+1.38', 1.375],
      ['-2.62', -2.625],
      ['-2.88', -2.875],
    ] as const) {
      expect(parseDioptres(typed, POWER)).toEqual({ ok: true, value: { value, isEighth: true } });
    }
    expect(parseDioptres('+0.25', POWER)).toEqual({ ok: true, value: { value: 0.25, isEighth: false } });
  });

  it('refuses what is no step, whatever is near', () => {
    for (const typed of ['-1.26', '+0.10', '-1.2', '+3.3', '-0.11', '-0.14', '+0.255']) {
      expect(valueOf(typed), typed).toBe('no-step');
    }
  });

  it('refuses what may be of either sign, and what is no number or too much', () => {
    expect(valueOf('4.25')).toBe('sign-missing');
    expect(valueOf('')).toBe('empty');
    expect(valueOf('-')).toBe('not-a-number');
    expect(valueOf('-1.25D')).toBe('not-a-number');
    expect(valueOf('-1.2.5')).toBe('not-a-number');
    expect(valueOf('1e1')).toBe('not-a-number');
    expect(parseDioptres('-125', POWER)).toEqual({
      ok: false,
      failure: { kind: 'beyond-limits', value: -125, lowest: -30, highest: 30 },
    });
  });

  it('of an addition needs no sign and refuses minus', () => {
    expect(valueOf('2.25', ADDITION)).toBe(2.25);
    expect(valueOf('+2.25', ADDITION)).toBe(2.25);
    expect(valueOf('-2.25', ADDITION)).toBe('negative');
    expect(valueOf('0.25', ADDITION)).toBe('beyond-limits');
    expect(valueOf('4.25', ADDITION)).toBe('beyond-limits');
  });
});
