import { describe, expect, it } from 'vitest';
import type { Side } from '../core/units/side.js';
import type { EntryFailure } from './prescription-entry.js';
import { parseEffectiveDiameter, parsePrescription } from './prescription-entry.js';
import type { TypedEye, TypedPrescription } from '../core/record/typed-prescription.js';
import { NO_PRESCRIPTION } from '../core/record/typed-prescription.js';

function typed(R: Partial<TypedEye>, L: Partial<TypedEye>, more: Partial<TypedPrescription> = {}): TypedPrescription {
  return { ...NO_PRESCRIPTION, ...more, R: { ...NO_PRESCRIPTION.R, ...R }, L: { ...NO_PRESCRIPTION.L, ...L } };
}

/** The failures as `R axis: missing`. */
function failuresOf(typedPrescription: TypedPrescription): readonly string[] {
  const parsed = parsePrescription(typedPrescription);
  return parsed.ok
    ? []
    : parsed.failure.failures.map(
        ({ place: { side, field }, failure }) => `${side ?? 'both'} ${field}: ${failure.kind}`,
      );
}

describe('parsePrescription', () => {
  it('reads what is written for both eyes', () => {
    const parsed = parsePrescription(
      typed(
        { sphere: '-2,25', cylinder: '-0.75', axis: '10', add: '2.00', prismHorizontal: '1.5', baseHorizontal: 'out' },
        { sphere: 'plano', cylinder: '+1.00', axis: '95', add: '+2', prismVertical: '1', baseVertical: 'down' },
        { lensKind: 'progressive', vertexDistance: '12' },
      ),
    );
    expect(parsed).toEqual({
      ok: true,
      value: {
        eighths: [],
        prescription: {
          R: {
            sphereD: -2.25,
            cylinderD: -0.75,
            axisDeg: 10,
            addD: 2,
            prism: { horizontal: { amount: 1.5, base: 'out' }, vertical: { amount: 0, base: 'up' } },
          },
          L: {
            sphereD: 0,
            cylinderD: 1,
            axisDeg: 95,
            addD: 2,
            prism: { horizontal: { amount: 0, base: 'in' }, vertical: { amount: 1, base: 'down' } },
          },
          vertexDistanceMm: 12,
          lensKind: 'progressive',
        },
      },
    });
  });

  it('knows an empty prescription from one that is not finished', () => {
    expect(parsePrescription(NO_PRESCRIPTION)).toEqual({ ok: false, failure: { isEmpty: true, failures: [] } });
    expect(failuresOf(typed({ sphere: '-1' }, {}))).toEqual(['L sphere: missing']);
    expect(failuresOf(typed({ sphere: '-1' }, { sphere: '-1' }))).toEqual([]);
  });

  it.each<[string, Side, Partial<TypedEye>, readonly string[]]>([
    ['a power without sign', 'R', { sphere: '1.25' }, ['R sphere: sign-missing']],
    ['words', 'L', { sphere: 'minus one' }, ['L sphere: not-a-number']],
    ['too much power', 'R', { sphere: '-30.25' }, ['R sphere: beyond-limits']],
    ['no step', 'R', { cylinder: '-0.3', axis: '90' }, ['R cylinder: no-step']],
    ['a cylinder without axis', 'L', { cylinder: '-1' }, ['L axis: missing']],
    ['an axis without cylinder', 'R', { axis: '90' }, ['R axis: axis-without-cylinder']],
    ['an axis beside no cylinder', 'R', { cylinder: '0', axis: '90' }, ['R axis: axis-without-cylinder']],
    ['an axis of 0', 'R', { cylinder: '-1', axis: '0' }, ['R axis: no-axis']],
    ['an axis of 181', 'R', { cylinder: '-1', axis: '181' }, ['R axis: no-axis']],
    ['half a degree', 'R', { cylinder: '-1', axis: '90.5' }, ['R axis: no-axis']],
    ['an axis in words', 'R', { cylinder: '-1', axis: 'flat' }, ['R axis: not-a-number']],
    ['too little addition', 'L', { add: '0.25' }, ['L add: beyond-limits']],
    ['a negative addition', 'L', { add: '-2' }, ['L add: negative']],
    ['a prism without base', 'R', { prismHorizontal: '2' }, ['R baseHorizontal: missing']],
    ['a base without prism', 'R', { baseVertical: 'up' }, ['R prismVertical: missing']],
  ])('refuses %s', (_, side, change, expected) => {
    const eye: Partial<TypedEye> = { sphere: '-1', ...change };
    const other: Partial<TypedEye> = { sphere: '-1' };
    expect(failuresOf(side === 'R' ? typed(eye, other) : typed(other, eye))).toEqual(expected);
  });

  it('asks for the addition of lenses that have one', () => {
    const eyes = [{ sphere: '-1' }, { sphere: '-1', add: '2' }] as const;
    expect(failuresOf(typed(...eyes, { lensKind: 'multifocal' }))).toEqual(['R add: missing']);
    expect(failuresOf(typed(...eyes))).toEqual([]);
  });

  it('takes a vertex distance that a lens can have', () => {
    const eyes = [{ sphere: '-1' }, { sphere: '-1' }] as const;
    expect(failuresOf(typed(...eyes, { vertexDistance: '120' }))).toEqual(['both vertexDistance: beyond-limits']);
    expect(failuresOf(typed(...eyes, { vertexDistance: 'far' }))).toEqual(['both vertexDistance: not-a-number']);
  });

  it('tells where eighths are written', () => {
    const parsed = parsePrescription(typed({ sphere: '-1.12' }, { sphere: '-1', cylinder: '-0.37', axis: '5' }));
    expect(parsed.ok && parsed.value.eighths).toEqual([
      { side: 'R', field: 'sphere' },
      { side: 'L', field: 'cylinder' },
    ]);
    expect(parsed.ok && parsed.value.prescription.R.sphereD).toBe(-1.125);
  });
});

describe('parseEffectiveDiameter', () => {
  it('reads a length that a lens shape has', () => {
    const kindOf = (text: string): EntryFailure['kind'] | number | null => {
      const parsed = parseEffectiveDiameter(text);
      return parsed === null ? null : parsed.ok ? parsed.value : parsed.failure.kind;
    };
    expect(kindOf('')).toBeNull();
    expect(kindOf('56,5')).toBe(56.5);
    expect(kindOf('5.6')).toBe('beyond-limits');
    expect(kindOf('wide')).toBe('not-a-number');
  });
});
