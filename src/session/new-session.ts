import { EMPTY_READER_SHEET } from '../core/record/reader-sheet.js';
import type { SessionRecord } from '../core/record/session-record.js';
import { NO_FINDINGS } from '../core/record/session-record.js';
import { NO_PRESCRIPTION } from '../core/record/typed-prescription.js';
import type { TypedSheet } from '../core/record/typed-sheet.js';
import { DEFAULT_SHEET_SETTINGS } from '../core/record/typed-sheet.js';
import { NO_NOTES } from '../core/record/wearer-notes.js';
import { hasWritten } from './entries.js';
import type { Desk } from './session-store.js';

/** A desk at which nothing was chosen yet. */
export const NEW_DESK: Desk = {
  settings: DEFAULT_SHEET_SETTINGS,
  readerNames: { first: '', second: '' },
  openSessionId: null,
};

/** The session as the next wearer finds it: what belongs to the desk stays, and they are asked to look into the camera. */
export function newSession(id: string, at: string, { settings, readerNames }: Desk): SessionRecord {
  return {
    id,
    begunAt: at,
    changedAt: at,
    origin: { kind: 'desk' },
    sheet: {
      readers: {
        first: { ...EMPTY_READER_SHEET, reader: readerNames.first },
        second: { ...EMPTY_READER_SHEET, reader: readerNames.second },
      },
      reader: 'first',
      notes: NO_NOTES,
      prescription: NO_PRESCRIPTION,
      confirmations: {},
      settings: { ...settings, gaze: DEFAULT_SHEET_SETTINGS.gaze },
    },
    camera: null,
    findings: NO_FINDINGS,
  };
}

/** What of a sheet the desk remembers for the next one. */
export function deskAfter({ settings, readers }: TypedSheet, openSessionId: string | null): Desk {
  return { settings, readerNames: { first: readers.first.reader, second: readers.second.reader }, openSessionId };
}

/**
 * A session as it is opened at this desk: cameras and what is covered are the desk's, gauges, tolerances and all that a number
 * depends on are those with which it was read.
 */
export function asOpenedAt({ settings: desk }: Desk, record: SessionRecord): SessionRecord {
  const { cameraId, profileId, covered } = desk;
  return {
    ...record,
    sheet: { ...record.sheet, settings: { ...record.sheet.settings, cameraId, profileId, covered } },
  };
}

/** Whether nothing stands in a session that anybody would miss. */
export function isBlank({ sheet, camera }: Pick<SessionRecord, 'sheet' | 'camera'>): boolean {
  const { readers, notes, prescription } = sheet;
  const isWritten = [readers.first, readers.second].some((one) => hasWritten(one) || one.history.length > 0);
  return !isWritten && camera === null && isSame(notes, NO_NOTES) && isSame(prescription, NO_PRESCRIPTION);
}

/** Both are made from the same fields in the same order. */
function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
