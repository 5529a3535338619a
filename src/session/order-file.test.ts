import { Ajv2020 } from 'ajv/dist/2020.js';
import formats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import type { SomeReadings } from '../../tests/support/filled-sheet.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { orderFileJsonSchema } from '../../tests/support/order-file-json-schema.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import { NO_PRESCRIPTION } from '../core/record/typed-prescription.js';
import { orderFileSchema, writeOrderFile } from './order-file.js';
import published from './order-file.schema.json' with { type: 'json' };
import { orderOf } from './order.js';
import { parsePrescription } from './prescription-entry.js';
import { sheetRows } from './rows.js';
import { openSheet, sheetReducer } from './sheet.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const AT = '2026-11-25T10:00:00.000Z';
const WRITTEN_AT = '2026-11-25T11:30:00.000Z';

const ajv = new Ajv2020({ strict: true, allErrors: true });
formats(ajv);
const isValid = ajv.compile(published);

const PROGRESSIVE = {
  ...NO_PRESCRIPTION,
  lensKind: 'progressive',
  vertexDistance: '12',
  R: { ...NO_PRESCRIPTION.R, sphere: '-2.25', cylinder: '-0.75', axis: '10', add: '2.00' },
  L: { ...NO_PRESCRIPTION.L, sphere: '-1.50', add: '2.00', prismHorizontal: '1.5', baseHorizontal: 'out' },
} as const;

function written(
  readings: SomeReadings,
  {
    prescription = NO_PRESCRIPTION,
    squint = false,
    suspected = [] as readonly (typeof READING_NAMES)[number][],
  }: {
    readonly prescription?: typeof NO_PRESCRIPTION;
    readonly squint?: boolean;
    readonly suspected?: readonly (typeof READING_NAMES)[number][];
  } = {},
): Record<string, unknown> {
  const kept = filledSheet(readings, { second: { templeWidth: '131' } });
  const notes = { ...kept.notes, wearer: '  Ottilie Marsh ', remark: 'never write this', squint };
  const state = sheetReducer(openSheet({ ...kept, notes, prescription }), {
    kind: 'readings-confirmed',
    names: READING_NAMES,
    at: AT,
  });
  const suspicions = suspected.map((name) => ({
    names: [name],
    probability: 0.9,
    explanations: [],
    conflict: null,
    expected: null,
  }));
  const order = orderOf(sheetRows(state, null, catalogue), { suspicions, values: {}, doubts: {} }, state);
  const content = { order, prescription: parsePrescription(prescription), effectiveDiameterMm: 54, notes };
  const text = writeOrderFile({ ...content, isInvented: false }, WRITTEN_AT);
  expect(text).not.toContain('never write this');
  const file = JSON.parse(text) as Record<string, unknown>;
  expect(isValid(file), JSON.stringify(isValid.errors)).toBe(true);
  expect(orderFileSchema.safeParse(file).success).toBe(true);
  return file;
}

describe('the schema of orders', () => {
  it('is the one that the code has', () => {
    // tsx tests/support/order-file-json-schema.ts writes it anew
    expect(published).toEqual(orderFileJsonSchema());
  });

  it('refuses what is no order', () => {
    const file = written({ pdFar: '63.5' });
    expect(isValid({ ...file, version: 2 })).toBe(false);
    expect(isValid({ ...file, remark: 'more' })).toBe(false);
    expect(isValid({ ...file, writtenAt: 'yesterday' })).toBe(false);
    expect(isValid({ ...file, dicom: { '00460060': { vr: 'DS', Value: ['63.5'] } } })).toBe(false);
  });
});

describe('an order as a file', () => {
  it('has what was confirmed, with its side, unit, rounding and doubt, and who stands for it', () => {
    const file = written({ monoPdR: '31.5', monoPdL: '32 32.5', pantoscopicAngle: '8', boxLensWidth: '54' });
    expect(file).toMatchObject({
      format: 'glabella-order',
      version: 1,
      writtenAt: WRITTEN_AT,
      wearer: 'Ottilie Marsh',
      isInvented: false,
    });
    const values = file['values'] as readonly Record<string, unknown>[];
    expect(values.map(({ name, side, unit, value }) => [name, side, unit, value])).toEqual([
      ['monoPdR', 'R', 'mm', 31.5],
      // the mean 32.25, to tenths, halves up
      ['monoPdL', 'L', 'mm', 32.3],
      ['boxLensWidth', null, 'mm', 54],
      ['pantoscopicAngle', null, 'deg', 8],
    ]);
    expect(values[0]).toMatchObject({
      measurement: 'monocularPd',
      resolution: 0.5,
      decimals: 1,
      confirmedBy: 'A',
      confirmedAt: AT,
    });
    const uncertainty = values[0]?.['standardUncertainty'] as number;
    // one reading: at least the step's, q / √12 (JCGM 100:2008, F.2.2.1)
    expect(uncertainty).toBeGreaterThan(0.5 / Math.sqrt(12));
    expect(uncertainty).toBeLessThan(2);
    // two readings scatter less than one
    expect(values[1]?.['standardUncertainty']).toBeLessThan(uncertainty);
    expect(file['frame']).toEqual({
      boxWidthMm: 54,
      boxHeightMm: null,
      distanceBetweenLensesMm: null,
      overallSideLengthMm: null,
      effectiveDiameterMm: 54,
    });
  });

  it('has both pupil distances as DICOM calls them', () => {
    expect(written({ pdFar: '63.5', pdNear: '60' })['dicom']).toEqual({
      '00460060': { vr: 'FD', Value: [63.5] },
      '00460062': { vr: 'FD', Value: [60] },
    });
    expect(written({ pdNear: '60' })['dicom']).toEqual({ '00460062': { vr: 'FD', Value: [60] } });
  });

  it('has the prescription as it was read, and null where there is none that can be read', () => {
    expect(written({ pdFar: '63.5' }, { prescription: PROGRESSIVE })['prescription']).toEqual({
      lensKind: 'progressive',
      vertexDistanceMm: 12,
      R: {
        sphereD: -2.25,
        cylinderD: -0.75,
        axisDeg: 10,
        prismHorizontal: { amount: 0, base: 'in' },
        prismVertical: { amount: 0, base: 'up' },
        addD: 2,
      },
      L: {
        sphereD: -1.5,
        cylinderD: 0,
        axisDeg: 180,
        prismHorizontal: { amount: 1.5, base: 'out' },
        prismVertical: { amount: 0, base: 'up' },
        addD: 2,
      },
    });
    expect(written({ pdFar: '63.5' })['prescription']).toBeNull();
  });

  it('names what is open, and leaves suspected numbers out', () => {
    const file = written(
      { pdFar: '63.5', headWidth: '152', lengthToBendR: '103' },
      { prescription: PROGRESSIVE, suspected: ['headWidth'] },
    );
    const values = file['values'] as readonly { readonly name: string }[];
    expect(values.map(({ name }) => name)).toEqual(['pdFar', 'lengthToBendR']);
    const open = file['open'] as readonly { readonly kind: string; readonly names: readonly string[] }[];
    expect(open).toContainEqual({ kind: 'suspected', names: ['headWidth'] });
    expect(open).toContainEqual({ kind: 'read-by-other-only', names: ['templeWidth'] });
    expect(open.find(({ kind }) => kind === 'frame-incomplete')?.names).toContain('fittingHeightL');
  });

  it('names the places that a squint concerns', () => {
    const file = written({ monoPdR: '31.5', monoPdL: '32' }, { squint: true });
    expect(file['isSquinting']).toBe(true);
    const open = file['open'] as readonly { readonly kind: string; readonly names: readonly string[] }[];
    expect(open.find(({ kind }) => kind === 'squint')?.names).toEqual(['monoPdR', 'monoPdL']);
  });

  it('is a file also where nothing is ordered', () => {
    expect(written({})).toMatchObject({ values: [], dicom: {} });
  });
});
