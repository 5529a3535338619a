import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Gauge } from '../core/reading/gauge.js';
import type { Practice } from '../core/record/practice.js';
import { DEFAULT_PRACTICE } from '../core/record/practice.js';
import { sheetRows } from '../session/rows.js';
import type { SheetEvent } from '../session/sheet.js';
import { openSheet, sheetReducer } from '../session/sheet.js';
import { DEFAULT_SHEET_SETTINGS, EMPTY_TYPED_SHEET } from '../core/record/typed-sheet.js';
import { HandNote } from './hand-notes.js';
import type { SheetInHand } from './use-sheet.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const AT = '2026-03-04T12:00:00Z';

const CALIPERS: Gauge = {
  id: 'calipers',
  name: 'Calipers',
  serves: ['headWidth'],
  resolution: 0.5,
  zeroOffset: 10,
  bias: 0,
  checkedOn: null,
};

function practiceWith(gauge: Gauge): Practice {
  return { ...DEFAULT_PRACTICE, gauges: [gauge], gaugeInUse: { headWidth: gauge.id } };
}

/** What stands beside a field, without tags, after `events`. */
function noteOf(field: ReadingName, events: readonly SheetEvent[], practice: Practice = DEFAULT_PRACTICE): string {
  const state = events.reduce(
    sheetReducer,
    openSheet({ ...EMPTY_TYPED_SHEET, settings: { ...DEFAULT_SHEET_SETTINGS, practice } }),
  );
  const fields = sheetRows(state, null, catalogue).flatMap((row) => row.fields);
  const row = fields.find((one) => one.field === field)!;
  return renderToStaticMarkup(<HandNote field={row} sheet={{ state } as SheetInHand} />)
    .replaceAll('</span><', '</span> <')
    .replaceAll(/<(?!\/?s>)[^>]*>/g, '')
    .trim();
}

function entered(field: ReadingName, ...texts: readonly string[]): readonly SheetEvent[] {
  return texts.flatMap((text): readonly SheetEvent[] => [
    { kind: 'reading-typed', field, text },
    { kind: 'reading-entered', field, at: AT },
  ]);
}

describe('what stands beside a hand reading', () => {
  it('is nothing for a number read from a plain rule', () => {
    expect(noteOf('headWidth', entered('headWidth', '150'))).toBe('');
  });

  it('is the sum where the gauge needs one', () => {
    expect(noteOf('headWidth', entered('headWidth', '140'), practiceWith(CALIPERS))).toBe('140 + 10 = 150');
    const biased = practiceWith({ ...CALIPERS, bias: 0.5 });
    expect(noteOf('headWidth', entered('headWidth', '140'), biased)).toBe('140 + 10 − 0.5 = 149.5');
  });

  it('is mean, range and standard deviation of repeats, and the one far from the others', () => {
    // mean 251/4; the squares of the deviations add up to 2.75, and sqrt(2.75 / 3) is 0.957
    expect(noteOf('pdFar', entered('pdFar', '62 62 63 64'))).toContain('62, 62, 63, 64: mean 62.75, range 2, sd 0.96');
    expect(noteOf('pdFar', entered('pdFar', '63 63.5 69 63'))).toContain('69 stands far from the others: read again');
    expect(noteOf('headWidth', entered('headWidth', '140 141'), practiceWith(CALIPERS))).toContain(
      '140, 141, each + 10',
    );
  });

  it('is what a series of trials ends at, with its interval', () => {
    // half way to the sizes that were loose and tight
    expect(noteOf('apicalRadius', entered('apicalRadius', '10 loose 9 fits 8 tight'))).toBe('9, between 8.5 and 9.5');
  });

  it('is that nothing fits, and what was not tried', () => {
    expect(noteOf('apicalRadius', entered('apicalRadius', '7 tight 9 loose'))).toBe(
      'between 7 and 9 mm, 8 was not tried',
    );
    // in half millimetres: midway
    expect(noteOf('apicalRadius', entered('apicalRadius', '7 tight 8 loose'))).toContain('7.5 was not tried');
  });

  it('folds up what stood before the last two, and tells no return to the same number', () => {
    const note = noteOf('headWidth', entered('headWidth', '150', '', '150,0', '15', '', '151', '152', '153'));
    expect([...note.matchAll(/entry ([\d,]+)<\/s>/g)].map(([, text]) => text)).toEqual(['152', '151', '15', '150,0']);
    expect(note).toMatch(/entry 151<\/s>.*and 2 earlier.*entry 15<\/s>/);
    expect(noteOf('headWidth', entered('headWidth', '150', '', '150'))).toBe('');
  });

  it('is the earlier entry, struck through, with who replaced it and when', () => {
    const note = noteOf('headWidth', [
      { kind: 'reader-named', reader: 'first', name: 'A. Hale' },
      ...entered('headWidth', '15', '150'),
    ]);
    expect(note).toMatch(/^<s>earlier entry 15<\/s> A\. Hale, 4 Mar, \d\d:\d\d$/);
  });

  it('is the second reader’s number only once one’s own is in, and by how much they differ', () => {
    const second: readonly SheetEvent[] = [
      { kind: 'reader-named', reader: 'second', name: 'B. Low' },
      { kind: 'reader-chosen', reader: 'second' },
      ...entered('headWidth', '158'),
      { kind: 'reader-chosen', reader: 'first' },
    ];
    expect(noteOf('headWidth', second)).toBe('');
    const note = noteOf('headWidth', [...second, ...entered('headWidth', '150')]);
    expect(note).toContain('B. Low: 158');
    expect(note).toContain('readers differ by 8');
  });

  it('is nothing of a second reader’s entry that is no reading', () => {
    const events: readonly SheetEvent[] = [
      { kind: 'reader-chosen', reader: 'second' },
      ...entered('crestHeightR', 'five'),
      { kind: 'reader-chosen', reader: 'first' },
      ...entered('crestHeightR', '5'),
    ];
    expect(noteOf('crestHeightR', events)).toBe('');
  });
});
