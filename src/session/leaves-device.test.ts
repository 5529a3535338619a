import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { sampleSession } from '../../tests/support/sample-sessions.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { Destination, FieldRule } from '../core/record/leaves-device.js';
import { LEAVES_DEVICE } from '../core/record/leaves-device.js';
import { writeSessionFile } from '../core/record/session-file.js';
import { parseSessionRecord, SESSION_VERSION } from '../core/record/session-schema.js';
import { orderOf } from './order.js';
import { writeOrderFile } from './order-file.js';
import { parsePrescription } from './prescription-entry.js';
import { sheetRows } from './rows.js';
import { writeSessionTable } from './session-table.js';
import { openSheet, sheetReducer } from './sheet.js';

const CATALOGUE = assembleCatalogue(OUTSIDE_TABLES);
const AT = '2026-11-25T10:00:00.000Z';

/** Fields in which any text may stand, by the names that lead there, with a word in each that stands nowhere else. */
const MARKED: readonly (readonly [path: string, mark: string])[] = [
  'sheet.readers.first.reader',
  'sheet.readers.second.reader',
  'sheet.readers.first.history.0.text',
  'sheet.readers.first.history.0.by',
  'sheet.notes.wearer',
  'sheet.notes.remark',
  'sheet.prescription.effectiveDiameter',
  'sheet.settings.checkLengthText',
  'sheet.settings.cameraId',
  'sheet.settings.profileId',
  'sheet.settings.practice.gauges.0.id',
  'sheet.settings.practice.gauges.0.name',
  'origin.invitationId',
  'origin.answerId',
].map((path, place) => [path, `quetzal${String.fromCharCode(97 + place)}`]);

function marked() {
  const base = sampleSession(1, {
    origin: { kind: 'distant', invitationId: '', answerId: '', receivedAt: AT },
  });
  const raw = JSON.parse(JSON.stringify(base)) as Record<string, unknown>;
  const gauge = { id: '', name: '', serves: ['binocularPd'], resolution: 1, zeroOffset: 0, bias: 0, checkedOn: null };
  const { practice } = (raw['sheet'] as { settings: { practice: { gauges: object[] } } }).settings;
  practice.gauges = [gauge];
  for (const [path, mark] of MARKED) {
    const steps = path.split('.');
    let at = raw;
    for (const step of steps.slice(0, -1)) at = at[step] as typeof at;
    at[steps.at(-1) ?? ''] = mark;
  }
  const parsed = parseSessionRecord(SESSION_VERSION, raw);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure));
  return parsed.value;
}

function ruleAt(path: string): FieldRule {
  let rules: unknown = LEAVES_DEVICE;
  // lists have one rule for all that is in them
  for (const step of path.split('.').filter((one) => one !== '0')) rules = (rules as Record<string, unknown>)[step];
  return rules as FieldRule;
}

const record = marked();

/** What each writer makes of the session. */
const WRITTEN: { readonly [To in Destination]?: string } = {
  'session-file': writeSessionFile([record], { writtenAt: AT }),
  spreadsheet: writeSessionTable([record], CATALOGUE, '.'),
  order: orderFile(),
};

function orderFile(): string {
  const state = sheetReducer(openSheet(record.sheet), { kind: 'readings-confirmed', names: READING_NAMES, at: AT });
  const order = orderOf(sheetRows(state, null, CATALOGUE), { suspicions: [], values: {}, doubts: {} }, state);
  const { notes, prescription } = record.sheet;
  const content = { order, prescription: parsePrescription(prescription), effectiveDiameterMm: null, notes };
  return writeOrderFile({ ...content, isInvented: false }, AT);
}

describe('what is written agrees with the table of what leaves this device', () => {
  it.each(MARKED)('at %s', (path, mark) => {
    const rule = ruleAt(path);
    for (const destination of ['session-file', 'spreadsheet'] as const) {
      expect([destination, WRITTEN[destination]?.includes(mark)]).toEqual([destination, rule.includes(destination)]);
    }
    // the file is less than the paper, which has all that an order may have
    if (!rule.includes('order')) expect(WRITTEN.order).not.toContain(mark);
  });

  it('and an order names its wearer', () => {
    const [, mark] = MARKED.find(([path]) => path === 'sheet.notes.wearer')!;
    expect(WRITTEN.order).toContain(mark);
  });
});
