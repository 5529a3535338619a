import Papa from 'papaparse';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES, type ReadingName } from '../core/catalogue/measurement.js';
import type { DecimalSign } from '../core/reading/parse-reading.js';
import { parseReading } from '../core/reading/parse-reading.js';
import { gaugeOfReading } from '../core/record/practice.js';
import type { ReaderId } from '../core/record/reader-sheet.js';
import { READER_IDS } from '../core/record/reader-sheet.js';
import type { FindingCounts, SessionRecord } from '../core/record/session-record.js';
import { workingDistanceOf } from './measuring-settings.js';
import { columnOfReading, SUFFIXES, WORKING_DISTANCE_COLUMN } from './record-columns.js';
import { plainDecimal } from './record-table.js';
import { harmlessText } from './spreadsheet-text.js';

/** A cell: numbers are written with the decimal sign of the table, texts are kept from being taken for formulas. */
type Cell = { readonly text: string } | { readonly number: number | null };

const FINDING_COLUMNS = {
  written: 'places_written',
  confirmed: 'places_confirmed',
  agrees: 'camera_agrees',
  disagrees: 'camera_disagrees',
  cannotTell: 'camera_cannot_tell',
  misfits: 'misfits',
} as const satisfies Record<keyof FindingCounts, string>;

/**
 * Sessions as CSV for spreadsheets (RFC 4180, CRLF), one in a row. Readings are numbers with the gauge's sum done; what is no
 * reading stands as it was typed in the column `not_numbers`. With a decimal comma the fields are parted by semicolons, as
 * spreadsheets of those countries have it. Columns do not depend on what is in the sessions.
 */
export function writeSessionTable(
  records: readonly SessionRecord[],
  catalogue: Catalogue,
  decimalSign: DecimalSign,
): string {
  const columns = sessionTableColumns(catalogue);
  const rows = records.map((record) => {
    const cells = cellsOf(record, catalogue);
    return columns.map((column) => written(cells.get(column) ?? { text: '' }, decimalSign));
  });
  const delimiter = decimalSign === ',' ? ';' : ',';
  return `${Papa.unparse([columns, ...rows], { delimiter, newline: '\r\n' })}\r\n`;
}

/** The columns of the table, in its order. */
export function sessionTableColumns(catalogue: Catalogue): readonly string[] {
  return [
    'session',
    'begun',
    'changed',
    'origin',
    'wearer',
    'remark',
    'squint',
    'light',
    'reader_first',
    'reader_second',
    WORKING_DISTANCE_COLUMN,
    'camera',
    'camera_taken',
    'camera_supervised',
    ...READING_NAMES.flatMap((name) => {
      const column = columnOfReading(name, catalogue);
      return [
        ...READER_IDS.map((reader) => columnOfReader(name, reader, catalogue)),
        `${column}${SUFFIXES.camera}`,
        `${column}${SUFFIXES['camera-uncertainty']}`,
      ];
    }),
    'not_numbers',
    ...Object.values(FINDING_COLUMNS),
  ];
}

function columnOfReader(name: ReadingName, reader: ReaderId, catalogue: Catalogue): string {
  return `${columnOfReading(name, catalogue)}_${reader}`;
}

function cellsOf(record: SessionRecord, catalogue: Catalogue): ReadonlyMap<string, Cell> {
  const { sheet, camera, findings } = record;
  const { readers, notes, settings } = sheet;
  const cells = new Map<string, Cell>([
    ['session', { text: record.id }],
    ['begun', { text: record.begunAt }],
    ['changed', { text: record.changedAt }],
    ['origin', { text: record.origin.kind }],
    ['wearer', { text: notes.wearer }],
    ['remark', { text: notes.remark }],
    ['squint', { text: notes.squint ? 'yes' : 'no' }],
    ['light', { text: notes.light ?? '' }],
    ['reader_first', { text: readers.first.reader }],
    ['reader_second', { text: readers.second.reader }],
    [WORKING_DISTANCE_COLUMN, { number: workingDistanceOf(settings) }],
    ['camera', { text: camera?.kind ?? '' }],
    ['camera_taken', { text: camera?.takenAt ?? '' }],
    ['camera_supervised', { text: camera === null ? '' : camera.supervision === 'reader' ? 'yes' : 'no' }],
  ]);
  const refused: string[] = [];
  for (const name of READING_NAMES) {
    for (const reader of READER_IDS) {
      const typed = readers[reader].readings[name];
      const column = columnOfReader(name, reader, catalogue);
      const reading = parseReading(typed, name, catalogue, gaugeOfReading(settings.practice, name));
      if (reading.ok) cells.set(column, { number: reading.value.value });
      else if (reading.failure.kind !== 'empty') refused.push(`${column}: ${typed}`);
    }
    const estimate = (camera?.estimates as SomeEstimates | undefined)?.[name];
    const column = columnOfReading(name, catalogue);
    if (estimate !== undefined) {
      cells.set(`${column}${SUFFIXES.camera}`, { number: estimate.value });
      cells.set(`${column}${SUFFIXES['camera-uncertainty']}`, { number: estimate.standardUncertainty });
    }
  }
  cells.set('not_numbers', { text: refused.join('\n') });
  for (const [count, column] of Object.entries(FINDING_COLUMNS) as [keyof FindingCounts, string][]) {
    cells.set(column, { number: findings[count] });
  }
  return cells;
}

/** What the camera says of the places of the sheet; of most of them it says nothing. */
type SomeEstimates = {
  readonly [Name in ReadingName]?: { readonly value: number; readonly standardUncertainty: number };
};

function written(cell: Cell, decimalSign: DecimalSign): string {
  if ('text' in cell) return harmlessText(cell.text);
  if (cell.number === null) return '';
  return plainDecimal(cell.number).replace('.', decimalSign);
}
