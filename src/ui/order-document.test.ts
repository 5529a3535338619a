import { afterEach, describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import type { SomeReadings } from '../../tests/support/filled-sheet.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { NO_PRESCRIPTION } from '../core/record/typed-prescription.js';
import { NO_NOTES } from '../core/record/wearer-notes.js';
import { orderOf } from '../session/order.js';
import { parsePrescription } from '../session/prescription-entry.js';
import { sheetRows } from '../session/rows.js';
import type { SheetEvent } from '../session/sheet.js';
import { openSheet, sheetReducer } from '../session/sheet.js';
import { ENGLISH_TAG, speak, words } from './language.js';
import type { OrderContent } from './order-document.js';
import { orderDocument } from './order-document.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
/** a place whose clock changes nothing here: times are those of whoever runs the test */
const AT = new Date(2026, 10, 25, 14, 3).toISOString();
const LATER = new Date(2026, 10, 25, 14, 20).toISOString();
const NEXT_DAY = new Date(2026, 10, 26, 9, 0).toISOString();

interface Confirming {
  readonly names: readonly ReadingName[];
  readonly by: string;
  readonly at: string;
}

const ALL_BY_TOBIN = { names: READING_NAMES, by: 'Tobin Quill', at: AT };

function content(
  readings: SomeReadings,
  more: Partial<OrderContent> = {},
  confirmings: readonly Confirming[] = [ALL_BY_TOBIN],
): OrderContent {
  const events = confirmings.flatMap(({ names, by, at }): readonly SheetEvent[] => [
    { kind: 'reader-named', reader: 'first', name: by },
    { kind: 'readings-confirmed', names, at },
  ]);
  const state = events.reduce(sheetReducer, openSheet(filledSheet(readings)));
  return {
    order: orderOf(sheetRows(state, null, catalogue), { suspicions: [], values: {}, doubts: {} }, state),
    doubts: [],
    prescription: parsePrescription(NO_PRESCRIPTION),
    effectiveDiameterMm: null,
    notes: { ...NO_NOTES, wearer: 'Ottilie Marsh' },
    secondReader: null,
    when: new Date(2026, 10, 27),
    isInvented: false,
    isUnsupervised: false,
    ...more,
  };
}

const FRAME = { boxLensWidth: '52', boxLensHeight: '34', distanceBetweenLenses: '18' };

afterEach(() => {
  speak(words, ENGLISH_TAG);
});

describe('the document of an order', () => {
  it('has each value with its unit and its doubt, R above L', () => {
    const { tables } = orderDocument(content({ monoPdL: '32', monoPdR: '31.5', pantoscopicAngle: '8' }));
    expect(tables.map(({ caption }) => caption)).toEqual(['Centration']);
    const [pd, tilt] = tables[0]?.groups ?? [];
    expect(pd?.heading).toBe('PD of each eye');
    expect(pd?.rows.map(({ side, value }) => [side, value])).toEqual([
      ['R', '31.5 mm'],
      ['L', '32.0 mm'],
    ]);
    expect(pd?.rows[0]?.doubt).toMatch(/^± \d\.\d mm$/);
    expect(tilt?.rows).toMatchObject([{ side: null, value: '8°', confirmed: null }]);
    expect(tilt?.rows[0]?.doubt).toMatch(/^± \d\.\d°$/);
    expect(tables[0]?.head.confirmed).toBeNull();
  });

  it('says 95 % of the doubt: twice the standard deviation, nearly', () => {
    const given = content({ headWidth: '150' });
    const uncertainty = given.order.lines[0]?.values[0]?.standardUncertainty ?? NaN;
    const shown = orderDocument(given).tables[0]?.groups[0]?.rows[0]?.doubt;
    // 97.5 % quantile of the standard normal distribution: 1.959964 (JCGM 100:2008, table G.1)
    expect(shown).toBe(`± ${(1.959964 * uncertainty).toFixed(1)} mm`);
  });

  it('says who confirmed it and when, in one line where that was one reader on one day', () => {
    const both = [
      { names: ['headWidth'], by: 'Tobin Quill', at: LATER },
      { names: ['pdFar'], by: 'Tobin Quill', at: AT },
    ] as const;
    const { facts } = orderDocument(content({ pdFar: '63.5', headWidth: '150' }, {}, both));
    expect(facts.find(({ label }) => label === 'Read and confirmed by')?.values).toEqual([
      'Tobin Quill, 25 November 2026, 14:03 to 14:20',
    ]);
    const { facts: once } = orderDocument(content({ pdFar: '63.5' }, { secondReader: '' }));
    expect(once.at(-1)?.values).toEqual(['Tobin Quill, 25 November 2026, 14:03', 'a second reader as well']);
  });

  it('tells several confirmations apart by marks beside the values', () => {
    const confirmings = [
      { names: ['headWidth'], by: '', at: NEXT_DAY },
      { names: ['pdFar'], by: 'Tobin Quill', at: AT },
    ] as const;
    const { facts, tables } = orderDocument(content({ pdFar: '63.5', headWidth: '150' }, {}, confirmings));
    expect(facts.at(-1)?.values).toEqual([
      'a: Tobin Quill, 25 November 2026, 14:03',
      'b: no name given, 26 November 2026, 09:00',
    ]);
    expect(tables.map(({ groups }) => groups[0]?.rows[0]?.confirmed)).toEqual(['a', 'b']);
    expect(tables[0]?.head.confirmed).toBe('by');
  });

  it('tells what follows from the frame as worked out, without a doubt of its own', () => {
    const { tables } = orderDocument(content({ ...FRAME, monoPdR: '31.5', monoPdL: '36', fittingHeightR: '20' }));
    const workedOut = tables.at(-1);
    expect(workedOut?.head.doubt).toBeNull();
    // by hand: 52 + 18; 35 - 31.5 in, 20 - 34 / 2 up; 36 - 35 out
    expect(workedOut?.groups.slice(0, 2).map(({ rows }) => rows.map(({ value }) => value))).toEqual([
      ['70.0 mm'],
      ['3.5 mm in, 3.0 mm up', '1.0 mm out'],
    ]);
  });

  it('says what is missing, open, noted and invented', () => {
    const empty = orderDocument(content({}));
    expect(empty.tables).toEqual([]);
    expect(empty.missing).toEqual(['No measurement is ordered yet.', 'No reading is in.']);
    expect(empty.sections.at(-1)).toEqual({ heading: 'Open', sentences: ['Nothing is open.'], isList: false });
    expect(empty.prescription).toMatchObject({ eyes: [], notes: ['No prescription was entered.'] });
    expect(empty.facts.at(-1)?.values).toEqual(['no name given']);

    const notes = { ...NO_NOTES, squint: true, remark: ' glasses slip ', light: 'dim' } as const;
    const full = orderDocument(
      content({ pdFar: '63.5' }, { notes, isInvented: true, isUnsupervised: true, doubts: ['!'] }),
    );
    expect(full.notice).toMatch(/^Invented wearer/);
    expect(full.sections).toMatchObject([
      {
        sentences: [
          'What the camera says was taken at a distance, without supervision.',
          'Squint: both eyes never fixate together.',
          'glasses slip',
        ],
      },
      { sentences: ['!'], isList: true },
    ]);
    expect(full.facts[0]?.values).toEqual(['–']);
    expect(full.footer(2, 3)).toBe('Order sheet, page 2 of 3');
    expect(full.cautions.sentences.join(' ')).toMatch(/no clinical measurement.*does not replace the measurements/);
  });

  it('writes numbers and days as the language does', () => {
    speak(words, 'de');
    const { tables, facts, language } = orderDocument(
      content({ ...FRAME, pdFar: '63.5', bridgeProjection: '-1.5', monoPdR: '35', monoPdL: '31.5' }),
    );
    expect(language).toBe('de');
    expect(facts[1]?.values).toEqual(['27. November 2026']);
    const values = tables.flatMap(({ groups }) => groups.flatMap(({ rows }) => rows.map(({ value }) => value)));
    expect(values).toContain('63,5 mm');
    expect(values).toContain('\u22121,5 mm');
    // nothing and a comma is still nothing
    expect(values).toContain('none');
    expect(values).toContain('3,5 mm in');
    expect(tables[0]?.groups[0]?.rows[0]?.doubt).toMatch(/^± \d,\d mm$/);
  });
});
