import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { parseReading } from '../core/reading/parse-reading.js';
import type { DicomDistances } from '../core/record/dicom-distances.js';
import { dicomDistances } from '../core/record/dicom-distances.js';
import { gaugeOfReading } from '../core/record/practice.js';
import { writeSessionFile } from '../core/record/session-file.js';
import type { SessionRecord } from '../core/record/session-record.js';
import type { SessionWriters } from './hand-on.js';
import { writeSessionTable } from './session-table.js';

/**
 * What writes sessions as files.
 *
 * @param now the time of writing, ISO 8601
 */
export function sessionWriters(catalogue: Catalogue, now: () => string): SessionWriters {
  return {
    sessionFile: (records) =>
      writeSessionFile(records, { writtenAt: now(), dicomOf: (record) => dicomOfSession(record, catalogue) }),
    table: (records, decimalSign) => writeSessionTable(records, catalogue, decimalSign),
  };
}

/** The pupil distances that were read by hand, in DICOM's attributes; null where neither was. */
export function dicomOfSession(record: SessionRecord, catalogue: Catalogue): DicomDistances | null {
  const distanceMm = readByHand(record, 'pdFar', catalogue);
  const nearMm = readByHand(record, 'pdNear', catalogue);
  return distanceMm === null && nearMm === null ? null : dicomDistances({ distanceMm, nearMm });
}

/** What the first reader read, or else the second, with the gauge's sum done; null where it is no reading. */
function readByHand({ sheet }: SessionRecord, name: ReadingName, catalogue: Catalogue): number | null {
  const gauge = gaugeOfReading(sheet.settings.practice, name);
  for (const reader of ['first', 'second'] as const) {
    const reading = parseReading(sheet.readers[reader].readings[name], name, catalogue, gauge);
    if (reading.ok) return reading.value.value;
  }
  return null;
}
