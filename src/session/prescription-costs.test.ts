import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Reconciliation } from '../core/crosscheck/reconciliation.js';
import type { FaceEstimates } from '../core/estimate/estimate.js';
import { CENTRATION_STANDARDS } from '../core/lenses/centration-standards.js';
import type { Prescription } from '../core/lenses/prescription.js';
import { sheetCosts } from './prescription-costs.js';
import { NO_READINGS } from '../core/record/reader-sheet.js';
import type { SheetRow } from './rows.js';
import { sheetRows } from './rows.js';
import { openSheet } from './sheet.js';
import { EMPTY_TYPED_SHEET } from '../core/record/typed-sheet.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const ANSI = CENTRATION_STANDARDS['ansi-z80.1'];
const NOTHING: Reconciliation = { suspicions: [], values: {}, doubts: {} };

type Typed = { readonly [Name in ReadingName]?: string };

function rowsOf(first: Typed, second: Typed = {}, estimates: FaceEstimates | null = null): readonly SheetRow[] {
  const sheet = (readings: Typed, reader: string) => ({
    reader,
    readings: { ...NO_READINGS, ...readings },
    history: [],
  });
  const readers = { first: sheet(first, 'Ann'), second: sheet(second, 'Ben') };
  return sheetRows(openSheet({ ...EMPTY_TYPED_SHEET, readers }), estimates, catalogue);
}

function both(sphereD: number): Prescription {
  const none = { horizontal: { amount: 0, base: 'in' }, vertical: { amount: 0, base: 'up' } } as const;
  const eye = { sphereD, cylinderD: 0, axisDeg: 180, addD: 0, prism: none };
  return { R: eye, L: eye, vertexDistanceMm: 12, lensKind: 'single-vision' };
}

/** A PD of 63.2 ± 1.96 mm at 95 %. */
const SEEN = {
  pdFar: { value: 63.2, standardUncertainty: 1, low: 61.24, high: 65.16, unit: 'mm', budget: [] },
  headWidth: { value: 150, standardUncertainty: 2, low: 146, high: 154, unit: 'mm', budget: [] },
} as unknown as FaceEstimates;

describe('sheetCosts', () => {
  it('are none without a second value', () => {
    expect(sheetCosts(rowsOf({ pdFar: '63.5' }), NOTHING, both(-4), ANSI)).toEqual({ costs: [], without: [] });
  });

  it('take the camera with the doubt of the comparison, and name what is no matter of lenses', () => {
    const rows = rowsOf({ pdFar: '66.2', headWidth: '158' }, {}, SEEN);
    const { costs, without } = sheetCosts(rows, NOTHING, both(-4), ANSI);
    expect(costs).toHaveLength(1);
    const [difference] = costs[0]!.differences;
    expect(costs[0]!.source).toEqual({ kind: 'camera', from: 'picture' });
    expect(difference?.differenceMm).toBeCloseTo(3, 9);
    // the doubt of both together: more than the camera's alone
    expect(difference?.standardUncertaintyMm).toBeGreaterThan(1);
    expect(difference?.standardUncertaintyMm).toBeLessThan(1.3);
    expect(without).toEqual([{ kind: 'none', names: ['headWidth'], reason: 'not-through-lenses' }]);
  });

  it('leave out what is still covered', () => {
    expect(sheetCosts(rowsOf({ monoPdR: '31' }, {}, SEEN), NOTHING, both(-4), ANSI).costs).toEqual([]);
  });

  it('leave out what both readers found alike', () => {
    const { costs, without } = sheetCosts(rowsOf({ pdFar: '63' }, { pdFar: '63' }), NOTHING, both(-8), ANSI);
    expect([costs, without]).toEqual([[], []]);
  });

  it('take right and left of another reader together', () => {
    const rows = rowsOf({ monoPdR: '31', monoPdL: '33' }, { monoPdR: '32', monoPdL: '32' });
    const [only, ...more] = sheetCosts(rows, NOTHING, both(-8), ANSI).costs;
    expect(more).toEqual([]);
    expect(only?.source).toEqual({ kind: 'reader', name: 'Ben' });
    expect(only?.differences.map(({ name, differenceMm }) => [name, differenceMm])).toEqual([
      ['monoPdR', -1],
      ['monoPdL', 1],
    ]);
    // off to the same side through equal lenses: no prism between the eyes
    if (only?.cost.kind !== 'prism') throw new Error('no prism');
    expect(only.cost.horizontal.amount).toBeCloseTo(0, 12);
  });

  it('take what the likeliest cause would restore, the gravest first', () => {
    const reconciliation: Reconciliation = {
      ...NOTHING,
      suspicions: [
        {
          names: ['pdFar', 'pdNear'],
          probability: 0.9,
          explanations: [
            {
              slips: [
                {
                  kind: 'rows-swapped',
                  restorations: [
                    { name: 'pdFar', written: 60, restored: 63.5 },
                    { name: 'pdNear', written: 63.5, restored: 60 },
                  ],
                },
              ],
              probability: 0.8,
            },
          ],
          conflict: null,
          expected: null,
        },
      ],
    };
    const rows = rowsOf({ pdFar: '60', pdNear: '63.5' }, { pdFar: '60.5' });
    const { costs } = sheetCosts(rows, reconciliation, both(-4), ANSI);
    expect(costs.map(({ source }) => source.kind)).toEqual(['suspicion', 'suspicion', 'reader']);
    // 3.5 mm at 4 D are 1.4 of the 1.0 allowed (Prentice; 2.5 mm of ANSI Z80.1)
    for (const { cost } of costs.slice(0, 2)) expect(cost).toMatchObject({ verdict: 'beyond' });
    expect(costs[2]!.cost).not.toMatchObject({ verdict: 'beyond' });
    // both distances say nearly the same: they are not added up to one
    expect(costs[0]!.differences).toHaveLength(1);
    // a number that cannot be read is no lens at all
    expect(sheetCosts(rowsOf({ pdFar: '600' }), reconciliation, both(-4), ANSI).costs).toEqual([]);
  });
});
