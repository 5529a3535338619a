import { expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { exampleSession } from '../../tests/support/memory-session-store.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { EMPTY_READER_SHEET } from '../core/record/reader-sheet.js';
import type { SessionRecord } from '../core/record/session-record.js';
import { EMPTY_TYPED_SHEET } from '../core/record/typed-sheet.js';
import { dicomOfSession, sessionWriters } from './session-writers.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

type Typed = { readonly [Name in ReadingName]?: string };

function session(first: Typed, second: Typed = {}): SessionRecord {
  const sheetOf = (typed: Typed) => ({
    ...EMPTY_READER_SHEET,
    readings: { ...EMPTY_READER_SHEET.readings, ...typed },
  });
  return exampleSession('11111111-1111-4111-8111-111111111111', {
    sheet: { ...EMPTY_TYPED_SHEET, readers: { first: sheetOf(first), second: sheetOf(second) } },
  });
}

// Tags by the DICOM data dictionary (PS3.6): (0046,0060) Distance Pupillary Distance, (0046,0062) Near Pupillary Distance.
it('names pupil distances as DICOM does', () => {
  expect(dicomOfSession(session({ pdFar: '62,5', pdNear: '59' }), catalogue)).toEqual({
    '00460060': { vr: 'FD', Value: [62.5] },
    '00460062': { vr: 'FD', Value: [59] },
  });
});

it('takes the second reader where the first read nothing, and leaves out what is no reading', () => {
  expect(dicomOfSession(session({ pdNear: 'x' }, { pdFar: '63' }), catalogue)).toEqual({
    '00460060': { vr: 'FD', Value: [63] },
  });
  expect(dicomOfSession(session({ headWidth: '150' }), catalogue)).toBeNull();
});

it('writes both kinds of text', () => {
  const writers = sessionWriters(catalogue, () => '2026-11-25T12:00:00.000Z');
  const file = JSON.parse(writers.sessionFile([session({ pdFar: '62' })])) as { readonly sessions: readonly unknown[] };
  expect(file).toMatchObject({ writtenAt: '2026-11-25T12:00:00.000Z', sessions: [{ dicom: { '00460060': {} } }] });
  // the first column of the header, parted as the decimal sign asks
  expect(writers.table([], 'comma')).toMatch(/^session;/);
  expect(writers.table([], 'point')).toMatch(/^session,/);
});
