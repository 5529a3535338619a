import { describe, expect, it } from 'vitest';
import type { Filling, SomeReadings } from '../../tests/support/filled-sheet.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { Reconciliation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { FaceEstimates } from '../core/estimate/estimate.js';
import type { Order } from './order.js';
import { orderOf, roundedText } from './order.js';
import { sheetRows } from './rows.js';
import type { SheetEvent } from './sheet.js';
import { openSheet, sheetReducer } from './sheet.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const AT = '2026-11-25T10:00:00.000Z';
const NOTHING_WRONG: Reconciliation = { suspicions: [], values: {}, doubts: {} };

/** Everything on the sheet is confirmed unless other names are given. */
function orderWith(
  readings: SomeReadings,
  {
    names = READING_NAMES,
    events = [],
    filling = {},
    reconciliation = NOTHING_WRONG,
    estimates = null,
  }: {
    readonly names?: readonly ReadingName[];
    readonly events?: readonly SheetEvent[];
    readonly filling?: Filling;
    readonly reconciliation?: Reconciliation;
    readonly estimates?: FaceEstimates | null;
  } = {},
): Order {
  const confirmed: SheetEvent = { kind: 'readings-confirmed', names, at: AT };
  const state = [...events, confirmed].reduce(sheetReducer, openSheet(filledSheet(readings, filling)));
  return orderOf(sheetRows(state, estimates, catalogue), reconciliation, state);
}

const ordered = ({ lines }: Order): readonly string[] =>
  lines.flatMap(({ values }) => values.map(({ name, text }) => `${name} ${text}`));
const kinds = ({ doubts }: Order): readonly string[] => doubts.map(({ kind }) => kind);

describe('an order', () => {
  it('holds what was confirmed, R above L, in the steps of its measurement, and who stands for it', () => {
    const order = orderWith({ monoPdL: '31.5', monoPdR: '32 32.5', bridgeProjection: '-2', headWidth: '150' });
    expect(order.lines.map(({ measurement }) => measurement.id)).toEqual([
      'monocularPd',
      'headWidth',
      'bridgeProjection',
    ]);
    // the mean 32.25 in half millimetres, halves up; the projection in whole ones, with a true minus sign
    expect(ordered(order)).toEqual(['monoPdR 32.5', 'monoPdL 31.5', 'headWidth 150', 'bridgeProjection \u22122']);
    expect(order.lines[0]?.values[0]).toMatchObject({ side: 'R', value: 32.25, by: 'A', at: AT, reconciled: null });
    expect(order.doubts).toEqual([]);
  });

  it('leaves out what nobody confirmed, and says so', () => {
    const order = orderWith({ pdFar: '63', headWidth: '150' }, { names: ['pdFar'] });
    expect(ordered(order)).toEqual(['pdFar 63.0']);
    expect(order.unconfirmed).toEqual(['headWidth']);
    expect(order.doubts).toEqual([{ kind: 'unconfirmed', names: ['headWidth'] }]);
  });

  it('leaves out what is suspected, confirmed or not', () => {
    const suspicion: Suspicion = {
      names: ['pdFar', 'monoPdR'],
      probability: 0.9,
      explanations: [],
      conflict: null,
      expected: null,
    };
    const order = orderWith(
      { pdFar: '63', monoPdR: '36', monoPdL: '31' },
      { reconciliation: { ...NOTHING_WRONG, suspicions: [suspicion] } },
    );
    expect(ordered(order)).toEqual(['monoPdL 31.0']);
    expect(order.doubts).toEqual([{ kind: 'suspected', suspicion }]);
  });

  it('tells what everything together says of a number', () => {
    const reconciled = { value: 63.2, standardUncertainty: 0.3 };
    const order = orderWith({ pdFar: '63' }, { reconciliation: { ...NOTHING_WRONG, values: { pdFar: reconciled } } });
    expect(order.lines[0]?.values[0]).toMatchObject({ value: 63, text: '63.0', reconciled });
  });

  it('names text that is no reading', () => {
    expect(orderWith({ pdFar: '6o', headWidth: '1500' }).doubts).toMatchObject([
      { kind: 'refused', name: 'pdFar', typed: '6o', failure: { kind: 'not-a-number' } },
      { kind: 'refused', name: 'headWidth', typed: '1500', failure: { kind: 'impossible' } },
    ]);
  });

  it('has neither number where readers differ, and one where they agree', () => {
    const differing = orderWith({ pdFar: '63' }, { filling: { second: { pdFar: '68' } } });
    expect(ordered(differing)).toEqual([]);
    expect(differing.doubts).toEqual([{ kind: 'readers-differ', name: 'pdFar' }]);
    expect(ordered(orderWith({ pdFar: '63' }, { filling: { second: { pdFar: '64' } } }))).toEqual(['pdFar 63.5']);
  });

  it('says which places only the other reader read', () => {
    const order = orderWith({ pdFar: '63' }, { filling: { second: { pdFar: '63', headWidth: '150' } } });
    expect(order.doubts).toEqual([{ kind: 'read-by-other-only', names: ['headWidth'] }]);
  });

  it('says where the camera contradicts a confirmed number, or cannot tell', () => {
    const estimate = (value: number, standardUncertainty: number) => ({ value, standardUncertainty });
    // beyond the tolerance of 2 mm and sharp; within it, and coarser than it
    const estimates = { pdFar: estimate(68, 0.2), pdNear: estimate(60, 3) } as unknown as FaceEstimates;
    const readings = { pdFar: '63', pdNear: '60' };
    expect(orderWith(readings, { estimates }).doubts).toMatchObject([
      { kind: 'camera-disagrees', name: 'pdFar' },
      { kind: 'camera-cannot-tell', name: 'pdNear' },
    ]);
    expect(kinds(orderWith(readings, { estimates, names: [] }))).toEqual(['unconfirmed']);
  });

  it('names a gauge that had not been checked for long', () => {
    const withCheck = (checkedOn: string | null) =>
      orderWith(
        { headWidth: '140', pdFar: '63' },
        {
          filling: {
            practice: {
              gauges: EXAMPLE_GAUGES.map((gauge) => ({ ...gauge, checkedOn })),
              gaugeInUse: { headWidth: 'head-calipers', templeWidth: 'head-calipers' },
            },
          },
        },
      ).doubts;
    expect(withCheck('2026-01-01')).toEqual([]);
    // 25 November 2024 to 25 November 2026: two years without a leap day
    expect(withCheck('2024-11-25')).toMatchObject([
      { kind: 'gauge-overdue', gauge: { id: 'head-calipers' }, names: ['headWidth'], daysSinceCheck: 730 },
    ]);
    expect(withCheck(null)).toMatchObject([{ kind: 'gauge-overdue', daysSinceCheck: null }]);
  });

  it('reminds of a squint, and of pupils without light', () => {
    const readings = { pdFar: '63', headWidth: '150', pupilDiameterR: '4' };
    const squint: SheetEvent = { kind: 'notes-changed', change: { squint: true } };
    expect(orderWith(readings, { events: [squint] }).doubts).toEqual([
      { kind: 'squint', measurements: ['binocularPd'] },
      { kind: 'pupil-without-light', names: ['pupilDiameterR'] },
    ]);
    const light: SheetEvent = { kind: 'notes-changed', change: { light: 'room' } };
    expect(orderWith(readings, { events: [light] }).doubts).toEqual([]);
  });

  it('says what a progressive lens still needs', () => {
    const progressive: SheetEvent = { kind: 'prescription-changed', change: { lensKind: 'progressive' } };
    const frame = {
      monoPdR: '32',
      monoPdL: '31',
      boxLensWidth: '52',
      boxLensHeight: '38',
      distanceBetweenLenses: '18',
      fittingHeightR: '21',
    };
    expect(orderWith(frame, { events: [progressive] }).doubts).toEqual([
      { kind: 'frame-incomplete', names: ['fittingHeightL'] },
    ]);
    expect(orderWith({ ...frame, fittingHeightL: '21' }, { events: [progressive] }).doubts).toEqual([]);
    expect(orderWith(frame).doubts).toEqual([]);
  });
});

describe('rounded text', () => {
  it.each([
    [63.25, 0.5, '63.5'],
    [63.2, 0.5, '63.0'],
    [-2.5, 1, '\u22122'],
    [-0.2, 0.5, '0.0'],
    [12.34, 0.1, '12.3'],
    [4.13, 0.25, '4.25'],
  ])('of %f in steps of %f is %s', (value, resolution, text) => {
    expect(roundedText(value, resolution)).toBe(text);
  });
});
