import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { Estimate, AlwaysEstimated, FaceEstimates } from '../core/estimate/estimate.js';
import { sheetMisfits } from './misfits.js';
import type { SheetRow } from './rows.js';
import { hasReadings, sheetRows } from './rows.js';
import type { SheetState } from './sheet.js';
import { openSheet } from './sheet.js';
import type { ReadingField } from './typed-sheet.js';
import { DEFAULT_SHEET_SETTINGS, NO_READINGS, READING_FIELDS } from './typed-sheet.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function estimate(value: number, standardUncertainty: number): Estimate {
  return {
    value,
    standardUncertainty,
    low: value - 2 * standardUncertainty,
    high: value + 2 * standardUncertainty,
    unit: 'mm',
    budget: [{ source: 'contact-depth', standardUncertainty }],
  };
}

// The wearer's true measures, each known to a quarter of a millimetre: sharper than any picture, so that findings are clear.
const TRUE_MM: Readonly<Record<AlwaysEstimated, number>> = {
  pdFar: 71,
  pdShown: 69.6,
  pdNear: 67,
  monoPdR: 36,
  monoPdL: 35,
  apertureR: 10,
  apertureL: 10.5,
  headWidth: 164,
  templeWidth: 120,
  irisDiameter: 11.8,
  distance: 530,
  headYaw: 1,
  headPitch: 1,
  headRoll: 1,
};
const estimates = Object.fromEntries(
  Object.entries(TRUE_MM).map(([name, value]) => [name, estimate(value, 0.25)]),
) as unknown as FaceEstimates;

function sheetWith(readings: Partial<Record<ReadingField, string>>, covered = true): SheetState {
  return openSheet({
    readings: { ...NO_READINGS, ...readings },
    settings: { ...DEFAULT_SHEET_SETTINGS, covered },
  });
}

function rowOf(rows: readonly SheetRow[], field: ReadingField): SheetRow {
  const row = rows.find(({ fields }) => fields.some((one) => one.field === field));
  if (row === undefined) throw new Error(`no row for ${field}`);
  return row;
}

const findings = (row: SheetRow): readonly (string | undefined)[] => row.fields.map(({ finding }) => finding?.kind);

describe('rows', () => {
  it('hold every field once, R before L, in the order in which Enter goes', () => {
    const fields = sheetRows(sheetWith({}), null, catalogue).flatMap((row) => row.fields.map(({ field }) => field));
    expect(fields).toEqual(READING_FIELDS);
  });

  it('are covered until all hand readings of the row are in', () => {
    const none = sheetRows(sheetWith({}), estimates, catalogue);
    expect(none.every(({ covered }) => covered)).toBe(true);
    const rows = sheetRows(sheetWith({ pdFar: '71', monoPdR: '36' }), estimates, catalogue);
    expect(rowOf(rows, 'pdFar')).toMatchObject({ covered: false });
    expect(findings(rowOf(rows, 'pdFar'))).toEqual(['agrees']);
    expect(rowOf(rows, 'monoPdR')).toMatchObject({ covered: true });
    expect(findings(rowOf(rows, 'monoPdR'))).toEqual([undefined, undefined]);
  });

  it('stay covered while a number is being typed, and where what was entered is none', () => {
    const typing: SheetState = { ...sheetWith({}), readings: { ...NO_READINGS, pdFar: '71' } };
    expect(rowOf(sheetRows(typing, estimates, catalogue), 'pdFar').covered).toBe(true);
    const bad = sheetRows(sheetWith({ pdFar: '7l' }), estimates, catalogue);
    expect(rowOf(bad, 'pdFar')).toMatchObject({ covered: true, fields: [{ typed: '7l', reading: { ok: false } }] });
  });

  it('are open where the setting or the reader says so', () => {
    const open = sheetRows(sheetWith({}, false), estimates, catalogue);
    expect(open.some(({ covered }) => covered)).toBe(false);
    const alone = sheetRows({ ...sheetWith({}), alone: true }, estimates, catalogue);
    expect(alone.some(({ covered }) => covered)).toBe(false);
    expect(alone.flatMap(findings).every((kind) => kind === undefined)).toBe(true);
  });

  it('know whether anything was typed', () => {
    expect(hasReadings(sheetWith({}))).toBe(false);
    expect(hasReadings(sheetWith({ headWidth: ' ' }))).toBe(false);
    expect(hasReadings(sheetWith({ headWidth: '?' }))).toBe(true);
  });
});

describe('misfits', () => {
  const misfitsOf = (state: SheetState, known: FaceEstimates | null) =>
    sheetMisfits(sheetRows(state, known, catalogue), catalogue, 400);
  const right = {
    monoPdR: '36',
    monoPdL: '35',
    apertureR: '10',
    apertureL: '10.5',
    headWidth: '164',
    templeWidth: '120',
  };

  it('are none where all agrees', () => {
    expect(misfitsOf(sheetWith({ ...right, pdFar: '71' }), estimates)).toEqual([]);
  });

  it('tell of the contradiction with the slip that explains it, once', () => {
    const misfits = misfitsOf(sheetWith({ ...right, pdFar: '61' }), estimates);
    expect(misfits).toHaveLength(1);
    expect(misfits[0]).toMatchObject({
      kind: 'inconsistent',
      inconsistency: { kind: 'eyes-do-not-add-up' },
      slips: [{ restorations: [{ name: 'pdFar', written: 61, restored: 71 }] }],
    });
  });

  it('tell of a number that cannot be, and what was likely meant', () => {
    const [misfit] = misfitsOf(sheetWith({ ...right, pdFar: '710' }), null);
    expect(misfit).toMatchObject({
      kind: 'refused',
      names: ['pdFar'],
      slips: [{ kind: 'point-moved', restorations: [{ restored: 71 }] }],
    });
  });

  it('tell of a reading that the camera contradicts', () => {
    const misfits = misfitsOf(sheetWith({ ...right, pdFar: '71', headWidth: '146' }), estimates);
    expect(misfits).toMatchObject([
      { kind: 'disagrees', names: ['headWidth'], slips: [{ restorations: [{ restored: 164 }] }] },
    ]);
  });

  it('give nothing away of what is still covered', () => {
    // Only R is in, so the row is covered: whatever the camera saw there, the misfits are the same.
    const state = sheetWith({ apertureR: '12.5' });
    const other = { ...estimates, apertureR: estimate(7, 0.1), apertureL: estimate(7, 0.1) };
    expect(misfitsOf(state, other)).toEqual(misfitsOf(state, null));
  });
});
