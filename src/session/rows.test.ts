import { describe, expect, it } from 'vitest';
import type { Filling, SomeReadings } from '../../tests/support/filled-sheet.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { AlwaysEstimated, Estimate, FaceEstimates } from '../core/estimate/estimate.js';
import { sheetEvidence } from './evidence.js';
import { DEFAULT_PRACTICE } from '../core/record/practice.js';
import type { FieldRow, SheetRow } from './rows.js';
import { hasReadings, sheetRows } from './rows.js';
import type { SheetState } from './sheet.js';
import { openSheet, sheetReducer } from './sheet.js';

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
  monoNearR: 34,
  monoNearL: 33,
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

function sheetWith(readings: SomeReadings, filling?: Filling): SheetState {
  return openSheet(filledSheet(readings, filling));
}

function rowOf(rows: readonly SheetRow[], name: ReadingName): SheetRow {
  const row = rows.find(({ fields }) => fields.some(({ field }) => field === name));
  if (row === undefined) throw new Error(`no row for ${name}`);
  return row;
}

function fieldOf(rows: readonly SheetRow[], name: ReadingName): FieldRow {
  const found = rowOf(rows, name).fields.find(({ field }) => field === name);
  if (found === undefined) throw new Error(`no field for ${name}`);
  return found;
}

const findings = (row: SheetRow): readonly (string | undefined)[] => row.fields.map(({ finding }) => finding?.kind);

describe('rows', () => {
  it('hold every place once, R before L, in the order of the sheet', () => {
    const names = sheetRows(sheetWith({}), null, catalogue).flatMap(({ fields }) => fields.map(({ field }) => field));
    expect(names).toEqual(READING_NAMES);
  });

  it('stand in the practice’s order, judged its way, without what it hides', () => {
    const practice = {
      hidden: ['splayAngle', 'irisDiameter'],
      tolerances: { headWidth: 1.5 },
      groupOrder: ['head', 'nose', 'sides', 'frame', 'eyes'],
    } as const;
    const rows = sheetRows(sheetWith({}, { practice }), null, catalogue);
    expect(rows).toHaveLength(catalogue.length - 2);
    expect(rows[0]?.measurement).toMatchObject({ id: 'headWidth', tolerance: { value: 1.5 } });
    expect(rows.at(-1)?.measurement.group).toBe('eyes');
  });

  it('read with the gauge in use', () => {
    const practice = { gauges: EXAMPLE_GAUGES, gaugeInUse: { headWidth: 'head-calipers' } };
    const rows = sheetRows(sheetWith({ headWidth: '154', templeWidth: '120' }, { practice }), null, catalogue);
    // 154 on the scale of calipers that start at 10 mm
    expect(fieldOf(rows, 'headWidth').reading).toMatchObject({ value: { value: 164 } });
    expect(rowOf(rows, 'headWidth').gauge?.id).toBe('head-calipers');
    expect(fieldOf(rows, 'templeWidth').reading).toMatchObject({ value: { value: 120 } });
    expect(rowOf(rows, 'templeWidth').gauge).toBeNull();
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
    const typing = sheetReducer(sheetWith({}), { kind: 'reading-typed', field: 'pdFar', text: '71' });
    expect(rowOf(sheetRows(typing, estimates, catalogue), 'pdFar').covered).toBe(true);
    const bad = sheetRows(sheetWith({ pdFar: '7l' }), estimates, catalogue);
    expect(rowOf(bad, 'pdFar')).toMatchObject({ covered: true, fields: [{ typed: '7l', reading: { ok: false } }] });
  });

  it('are open where the setting or the reader says so', () => {
    const open = sheetRows(sheetWith({}, { settings: { covered: false } }), estimates, catalogue);
    expect(open.some(({ covered }) => covered)).toBe(false);
    const alone = sheetRows({ ...sheetWith({}), alone: true }, estimates, catalogue);
    expect(alone.some(({ covered }) => covered)).toBe(false);
    expect(alone.flatMap(findings).every((kind) => kind === undefined)).toBe(true);
  });

  it('have no estimate where the picture told none', () => {
    const rows = sheetRows(sheetWith({}), estimates, catalogue);
    expect(fieldOf(rows, 'irisDiameter').estimate?.value).toBe(11.8);
    expect(fieldOf(rows, 'pupilDiameterR').estimate).toBeNull();
    expect(fieldOf(rows, 'crestHeightR').estimate).toBeNull();
    expect(fieldOf(sheetRows(sheetWith({}), null, catalogue), 'pdFar').estimate).toBeNull();
  });

  it('know whether anything was typed on the open sheet', () => {
    expect(hasReadings(sheetWith({}))).toBe(false);
    expect(hasReadings(sheetWith({ headWidth: ' ' }, { second: { pdFar: '63' } }))).toBe(false);
    expect(hasReadings(sheetWith({ headWidth: '?' }))).toBe(true);
  });
});

describe('with a squint', () => {
  const noted = sheetReducer(sheetWith({ pdFar: '71', apertureR: '10', apertureL: '10.5' }), {
    kind: 'notes-changed',
    change: { squint: true },
  });
  const rows = sheetRows(noted, estimates, catalogue);

  it('rows say which of them are measured another way', () => {
    const changed = rows.filter(({ withSquint }) => withSquint).map(({ measurement }) => measurement);
    expect(changed.length).toBeGreaterThan(0);
    expect(changed.every((measurement) => measurement.changesWithSquint)).toBe(true);
    expect(changed.map(({ id }) => id)).toContain('binocularPd');
    expect(rowOf(rows, 'headWidth').withSquint).toBe(false);
    expect(sheetRows(sheetWith({}), null, catalogue).some(({ withSquint }) => withSquint)).toBe(false);
  });

  it('no distance of the camera is held against a reading that takes both eyes', () => {
    for (const name of ['pdFar', 'pdNear', 'monoPdR', 'monoPdL', 'monoNearR', 'monoNearL'] as const) {
      expect(fieldOf(rows, name)).toMatchObject({ estimate: null, notComparable: 'squint', finding: null });
    }
    expect(fieldOf(rows, 'apertureR')).toMatchObject({ notComparable: null, finding: { kind: 'agrees' } });
  });
});

describe('two readers', () => {
  const fieldWith = (first: string, second: string): FieldRow =>
    fieldOf(sheetRows(sheetWith({ pdFar: first }, { second: { pdFar: second } }), null, catalogue), 'pdFar');

  it('do not see one another’s reading before their own is in', () => {
    expect(fieldWith('', '64')).toMatchObject({ other: { reader: 'B', reading: null }, together: null });
    expect(fieldWith('6x', '64')).toMatchObject({ other: { reading: null } });
    expect(fieldWith('63', '64').other).toMatchObject({ reader: 'B', reading: { ok: true, value: { value: 64 } } });
    expect(fieldWith('63', '').other).toBeNull();
  });

  it('count as one where they agree', () => {
    // equal doubts: the plain mean
    const { together, readersDiffer, reading } = fieldWith('63', '64');
    expect(readersDiffer).toBe(false);
    expect(together?.value).toBeCloseTo(63.5, 9);
    expect(reading).toMatchObject({ value: { value: 63 } });
  });

  it('count by themselves where they do not', () => {
    const { together, readersDiffer } = fieldWith('63', '68');
    expect(readersDiffer).toBe(true);
    expect(together?.value).toBe(63);
  });

  it('change places with the sheet that is open', () => {
    const state = sheetReducer(sheetWith({ pdFar: '63' }, { second: { pdFar: '68' } }), {
      kind: 'reader-chosen',
      reader: 'second',
    });
    const field = fieldOf(sheetRows(state, null, catalogue), 'pdFar');
    expect(field).toMatchObject({ typed: '68', other: { reader: 'A', reading: { value: { value: 63 } } } });
    expect(field.together?.value).toBe(68);
  });
});

describe('what stands beside a field', () => {
  it('are its own corrections and its confirmation', () => {
    const at = '2026-11-25T10:00:00.000Z';
    const state = [
      { kind: 'reading-typed', field: 'pdFar', text: '71' } as const,
      { kind: 'reading-entered', field: 'pdFar', at } as const,
      { kind: 'readings-confirmed', names: ['pdFar'], at } as const,
    ].reduce(sheetReducer, sheetWith({ pdFar: '61', headWidth: '150' }));
    const rows = sheetRows(state, null, catalogue);
    expect(fieldOf(rows, 'pdFar')).toMatchObject({
      corrections: [{ earlier: '61', by: 'A', at }],
      confirmation: { text: '71', by: 'A', at },
    });
    expect(fieldOf(rows, 'headWidth')).toMatchObject({ corrections: [], confirmation: null });
  });
});

describe('evidence', () => {
  const given = { hasPicture: true, workingDistanceMm: 400, practice: DEFAULT_PRACTICE };
  const evidenceOf = (state: SheetState, known: FaceEstimates | null = estimates) =>
    sheetEvidence(sheetRows(state, known, catalogue), catalogue, { ...given, hasPicture: known !== null });

  it('holds what the camera saw only where its row is uncovered', () => {
    // Only R is in, so the row of the apertures is covered.
    const { estimates: seen } = evidenceOf(sheetWith({ pdFar: '71', apertureR: '12.5' }));
    expect(Object.keys(seen ?? {})).toEqual(['pdFar']);
    expect(evidenceOf(sheetWith({ pdFar: '71' }), null).estimates).toBeNull();
  });

  it('holds both readers’ readings as one, refused numbers too, and nothing of hidden rows', () => {
    const filling = { second: { pdFar: '71' }, practice: { hidden: ['headWidth'] } } as const;
    const { readings } = evidenceOf(sheetWith({ pdFar: '70', templeWidth: '1200', headWidth: '164' }, filling));
    expect(Object.keys(readings)).toEqual(['pdFar', 'templeWidth']);
    expect(readings.pdFar?.value).toBeCloseTo(70.5, 9);
    expect(readings.templeWidth?.value).toBe(1200);
  });
});
