import { describe, expect, it } from 'vitest';
import type { Filling, SomeReadings } from '../../tests/support/filled-sheet.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { reconciledSheet } from '../../tests/support/reconciled-sheet.js';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { Reconciliation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { FaceEstimates } from '../core/estimate/estimate.js';
import { sheetMisfits } from './misfits.js';
import type { Order } from './order.js';
import { orderOf, readyToConfirm, suspectedReadings } from './order.js';
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
  it('holds what was confirmed, R above L, with the decimals of its measurement, and who stands for it', () => {
    const order = orderWith({ monoPdL: '31.5', monoPdR: '32 32.5', bridgeProjection: '-2', headWidth: '150' });
    expect(order.lines.map(({ measurement }) => measurement.id)).toEqual([
      'monocularPd',
      'headWidth',
      'bridgeProjection',
    ]);
    // the mean 32.25 in tenths, halves up; the projection with a true minus sign
    expect(ordered(order)).toEqual(['monoPdR 32.3', 'monoPdL 31.5', 'headWidth 150', 'bridgeProjection \u22122']);
    expect(order.lines[0]?.values[0]).toMatchObject({ side: 'R', value: 32.3, by: 'A', at: AT, reconciled: null });
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

describe('two slips at once', () => {
  const PD_AND_HEAD = { pdFar: '74', monoPdR: '32.5', monoPdL: '31.5' };

  it.each([{ headWidth: '15.2' }, { headWidth: '15.2', templeWidth: '140' }, { headWidth: '152' }])(
    'are both left out, named, and not among what can be confirmed at once: %o',
    (others) => {
      const { rows, state, reconciliation } = reconciled({ ...PD_AND_HEAD, ...others });
      const isRefused = others.headWidth === '15.2';
      expect(suspectedReadings(reconciliation).has('pdFar')).toBe(true);
      expect(readyToConfirm(rows, sheetMisfits(rows, reconciliation, catalogue), reconciliation)).toEqual([
        'monoPdR',
        'monoPdL',
        ...(isRefused ? [] : ['headWidth']),
        ...('templeWidth' in others ? ['templeWidth'] : []),
      ]);
      const confirmed = sheetReducer(state, { kind: 'readings-confirmed', names: READING_NAMES, at: AT });
      const order = orderOf(sheetRows(confirmed, null, catalogue), reconciliation, confirmed);
      const lines = order.lines.flatMap(({ values }) => values.map(({ name }) => name));
      expect(lines).not.toContain('pdFar');
      for (const name of Object.keys(others).concat(Object.keys(PD_AND_HEAD)) as ReadingName[]) {
        expect(lines.includes(name) || namedIn(order).includes(name), name).toBe(true);
      }
    },
  );

  it('are not hidden by a second reader who read something between', () => {
    const sum = { monoPdR: '32.5', monoPdL: '31.5' };
    for (const second of [{ pdFar: '66' }, { pdFar: '66', ...sum }]) {
      // 67 between them, where the eyes' distances make 64
      const { rows, reconciliation } = reconciled({ pdFar: '68', ...sum }, { second });
      expect(rows.flatMap(({ fields }) => fields).find(({ field }) => field === 'pdFar')?.readersDiffer).toBe(false);
      expect(suspectedReadings(reconciliation).has('pdFar')).toBe(true);
    }
  });
});

/** What the engine says of a sheet without a picture. */
function reconciled(readings: SomeReadings, filling: Filling = {}) {
  const state = openSheet(filledSheet(readings, filling));
  return { state, ...reconciledSheet(state, catalogue) };
}

/** All places that the open points name. */
function namedIn({ doubts }: Order): readonly ReadingName[] {
  return doubts.flatMap((doubt) => {
    if (doubt.kind === 'suspected') return doubt.suspicion.names;
    if ('name' in doubt) return [doubt.name];
    return 'names' in doubt ? doubt.names : [];
  });
}

describe('the number that is printed', () => {
  it.each([
    ['crestHeightR', '4.5', '4.5'],
    ['irisDiameter', '11.8', '11.8'],
    ['earPointDifference', '-0.5', '\u22120.5'],
    ['pdFar', '63', '63.0'],
    ['pdFar', '63.25', '63.25'],
    ['headWidth', '150', '150'],
    // 35.8333…, to tenths
    ['monoPdR', '35.5 36 36', '35.8'],
    ['bridgeProjection', '-2 -3', '\u22122.5'],
  ] satisfies readonly [ReadingName, string, string][])('of %s typed as %s is %s', (name, typed, printed) => {
    const order = orderWith({ [name]: typed });
    expect(ordered(order)).toEqual([`${name} ${printed}`]);
    expect(order.lines[0]?.values[0]?.value).toBe(Number(printed.replace('\u2212', '-')));
  });
});
