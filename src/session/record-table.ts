import Papa from 'papaparse';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES, type ReadingName } from '../core/catalogue/measurement.js';
import { parseDecimal, partsOfSeries } from '../core/reading/parse-reading.js';
import type { Result } from '../core/result.js';
import { fail, succeed, unreachable } from '../core/result.js';
import type { ColumnRole } from './record-columns.js';
import {
  columnOfReading,
  nearestName,
  RECORD_COLUMN,
  recordColumns,
  SUFFIXES,
  WORKING_DISTANCE_COLUMN,
} from './record-columns.js';

// Tables of fittings as CSV (RFC 4180), one fitting in a row. Read tolerantly in what cannot be mistaken (line ends, delimiter,
// decimal comma), strictly in all else: a column or a number that is not understood would be a measurement that is silently lost.

/** What was written of one measurement; in its unit. */
export interface RecordedReading {
  /** as the scale showed it, at least one */
  readonly scale: readonly number[];
  /** what has to be added to each; null where no gauge with an offset is named */
  readonly zeroOffset: number | null;
}

/** The camera's estimate of one measurement; in its unit. */
export interface RecordedEstimate {
  readonly value: number;
  /** one standard deviation, positive */
  readonly standardUncertainty: number;
}

/** One fitting. */
export interface FittingRecord {
  /** what the practice calls it; null where the table does not say */
  readonly id: string | null;
  /** spectacle plane to the near object, mm; null where the table does not say */
  readonly workingDistanceMm: number | null;
  /** whatever was written, possible or not: the cross-check judges it */
  readonly readings: { readonly [Name in ReadingName]?: RecordedReading };
  readonly estimates: { readonly [Name in ReadingName]?: RecordedEstimate };
}

/** A fitting and where it stands. */
export interface RecordInTable extends FittingRecord {
  /** the line of the file on which its row begins, from 1 */
  readonly line: number;
}

export interface RecordTable {
  readonly recordCount: number;
  /** what the gauges of each column need added, every amount once: one of them may have been forgotten where none is named */
  readonly zeroOffsets: ReadonlyMap<ReadingName, readonly number[]>;
  /**
   * Reads the rows once more, one after the other, so that a long table never stands in memory as records at once.
   *
   * @param isWanted which of them, counted from 0; the others are passed over quickly
   */
  records(isWanted?: (index: number) => boolean): Generator<RecordInTable, void, undefined>;
}

/** A cell of the table: line of the file and place in the row, both from 1, and the name of its column. */
export interface CellPlace {
  readonly line: number;
  readonly column: number;
  readonly columnName: string;
}

/** Why a table is not read. */
export type RecordProblem =
  /** more bytes than this program takes at once: split the file */
  | { readonly kind: 'too-large'; readonly bytes: number; readonly limitBytes: number }
  /** saved as UTF-16, which begins with its own mark: save as UTF-8 */
  | { readonly kind: 'utf-16' }
  /** bytes that are no UTF-8 text: save as UTF-8 */
  | { readonly kind: 'not-utf-8'; readonly line: number }
  /** a NUL: no text file, or UTF-16 without its mark */
  | { readonly kind: 'nul'; readonly line: number }
  /** nothing but blank lines */
  | { readonly kind: 'empty' }
  /** the first row has numbers where the names of the columns should be */
  | { readonly kind: 'no-header'; readonly line: number; readonly text: string }
  /** a name that no column has; `nearest` is what was probably meant */
  | { readonly kind: 'unknown-column'; readonly place: CellPlace; readonly nearest: string | null }
  | { readonly kind: 'unnamed-column'; readonly place: CellPlace }
  | { readonly kind: 'duplicate-column'; readonly place: CellPlace; readonly firstColumn: number }
  /** a column that says nothing without another */
  | { readonly kind: 'partner-missing'; readonly place: CellPlace; readonly partner: string }
  /** no column holds a reading */
  | { readonly kind: 'no-readings' }
  /** a header and no record below it */
  | { readonly kind: 'no-records' }
  /** a quotation mark that is not closed, or does not end its field: nothing behind it can be read */
  | { readonly kind: 'quotation'; readonly line: number }
  /** too many or too few fields; often a decimal comma where commas part the fields */
  | { readonly kind: 'field-count'; readonly line: number; readonly found: number; readonly expected: number }
  | { readonly kind: 'bad-number'; readonly place: CellPlace; readonly text: string }
  /** repeats where only one number can stand */
  | { readonly kind: 'several-numbers'; readonly place: CellPlace; readonly text: string }
  /** a distance or an uncertainty that is not above zero */
  | { readonly kind: 'not-positive'; readonly place: CellPlace; readonly text: string }
  /** an estimate without its uncertainty or the other way round: `place` is the empty cell */
  | { readonly kind: 'half-estimate'; readonly place: CellPlace };

export interface RecordTableFailure {
  /** in the order of the file, the first `SHOWN_PROBLEMS` */
  readonly problems: readonly RecordProblem[];
  readonly problemCount: number;
}

export const SHOWN_PROBLEMS = 20;

/** Chosen: some 150,000 full rows; a whole text of that size still goes through memory easily. */
export const LARGEST_TABLE_BYTES = 64 * 2 ** 20;

/** Why a file of so many bytes is not read. */
export function tooLarge(bytes: number): { readonly ok: false; readonly failure: RecordTableFailure } {
  return failWith({ kind: 'too-large', bytes, limitBytes: LARGEST_TABLE_BYTES });
}

/** The text of a file that should be UTF-8, without its byte-order mark. */
export function decodeRecordFile(bytes: Uint8Array): Result<string, RecordTableFailure> {
  if (bytes.length > LARGEST_TABLE_BYTES) return tooLarge(bytes.length);
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return failWith({ kind: 'utf-16' });
  try {
    return succeed(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return failWith({ kind: 'not-utf-8', line: firstUndecodableLine(bytes) });
  }
}

/** No byte within a character of UTF-8 is a line feed, so lines can be tried one by one. */
function firstUndecodableLine(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let start = 0;
  for (let line = 1; ; line += 1) {
    const end = bytes.indexOf(0x0a, start);
    try {
      decoder.decode(bytes.subarray(start, end === -1 ? bytes.length : end));
    } catch {
      return line;
    }
    if (end === -1) return line;
    start = end + 1;
  }
}

/**
 * Reads a table of records. The whole text is checked before anything is given back: either every row is understood, or all
 * problems are listed. Delimiter: comma, semicolon or tab, whichever the header has most of. A number may have a decimal comma;
 * where commas part the fields it stands in quotation marks. Repeats stand in one cell, parted by spaces or semicolons.
 *
 * @param onProgress called now and then with the share of the text that was read, 0 to 1
 */
export function readRecordTable(
  text: string,
  catalogue: Catalogue,
  onProgress: (share: number) => void = () => undefined,
): Result<RecordTable, RecordTableFailure> {
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const nul = plain.indexOf('\0');
  if (nul !== -1) return failWith({ kind: 'nul', line: linesBefore(plain, nul) + 1 });
  const delimiter = delimiterOf(plain);
  const rows = rowsOf(plain, delimiter, onProgress);
  const first = rows.next();
  if (first.done === true) return failWith({ kind: 'empty' });
  if (first.value.kind === 'quotation') return failWith(first.value);
  const problems = problemList();
  const header = readHeader(first.value, catalogue, problems);
  if (header === null) return fail(plainFailure(problems));
  let recordCount = 0;
  const zeroOffsets = new Map<ReadingName, readonly number[]>();
  for (const row of rows) {
    if (row.kind === 'quotation') {
      problems.add(row);
      continue;
    }
    // Nearly every row can be seen to be in order without being made a record.
    const isPlain = isPlainRow(row, header);
    if (!isPlain && readRow(row, header, problems) === null) continue;
    recordCount += 1;
    noteOffsets(row, header, zeroOffsets);
  }
  if (problems.problemCount === 0 && recordCount === 0) problems.add({ kind: 'no-records' });
  if (problems.problemCount > 0) return fail(plainFailure(problems));
  return succeed({
    recordCount,
    zeroOffsets,
    *records(isWanted = () => true) {
      const again = rowsOf(plain, delimiter, () => undefined);
      again.next();
      let index = 0;
      for (const row of again) {
        const record = row.kind === 'row' && isWanted(index) ? readRow(row, header, problems) : null;
        index += 1;
        if (record !== null) yield record;
      }
    },
  });
}

/** Chosen: more gauges of one kind than a practice has; each is one more thing that may have happened to every record. */
const MOST_OFFSETS = 4;

function noteOffsets({ cells }: DataRow, header: Header, zeroOffsets: Map<ReadingName, readonly number[]>): void {
  for (const { name, reading, offset } of header.readings) {
    if (reading === null || offset === null || cells[offset] === '' || cells[reading]?.trim() === '') continue;
    const zeroOffset = parseDecimal(cells[offset] ?? '');
    const known = zeroOffsets.get(name) ?? [];
    if (zeroOffset.ok && known.length < MOST_OFFSETS && !known.includes(zeroOffset.value))
      zeroOffsets.set(name, [...known, zeroOffset.value]);
  }
}

function failWith(problem: RecordProblem): { readonly ok: false; readonly failure: RecordTableFailure } {
  return fail({ problems: [problem], problemCount: 1 });
}

interface ProblemList extends RecordTableFailure {
  problemCount: number;
  readonly add: (problem: RecordProblem) => void;
}

/** The list as data: it crosses to other threads. */
function plainFailure({ problems, problemCount }: ProblemList): RecordTableFailure {
  return { problems, problemCount };
}

function problemList(): ProblemList {
  const problems: RecordProblem[] = [];
  const list: ProblemList = {
    problems,
    problemCount: 0,
    add: (problem) => {
      list.problemCount += 1;
      if (problems.length < SHOWN_PROBLEMS) problems.push(problem);
    },
  };
  return list;
}

interface DataRow {
  readonly kind: 'row';
  readonly line: number;
  readonly cells: readonly string[];
}

type Row = DataRow | { readonly kind: 'quotation'; readonly line: number };

/** Chosen: characters, and where quotation marks stand rows, that are parted at once. */
const BLOCK_LENGTH = 2 ** 18;
const BLOCK_ROWS = 1000;

/** The rows that are not blank, until the end or the first quotation mark that spoils the rest. */
function* rowsOf(
  text: string,
  delimiter: string,
  onProgress: (share: number) => void,
): Generator<Row, void, undefined> {
  let cursor = 0;
  let line = 1;
  while (cursor < text.length) {
    // Without quotation marks a line is a row, and nothing but the delimiter parts its cells.
    const end = endOfLine(text, cursor + BLOCK_LENGTH);
    const plain = text.slice(cursor, end);
    if (!plain.includes('"')) {
      for (const row of plain.replace(/\n$/, '').split('\n')) {
        if (row.trim() !== '') {
          const cells = row.split(delimiter);
          if (cells.some((cell) => cell.trim() !== '')) yield { kind: 'row', line, cells };
        }
        line += 1;
      }
      cursor = end;
      onProgress(cursor / text.length);
      continue;
    }
    const block = text.slice(cursor);
    const firstLine = line;
    const { data, errors, meta } = Papa.parse<string[]>(block, {
      delimiter,
      newline: '\n',
      preview: BLOCK_ROWS,
      // the fast way looks at the whole rest of the text each time
      fastMode: false,
    });
    const fault = errors[0];
    for (const [index, cells] of data.entries()) {
      if (index === fault?.row) break;
      if (cells.some((cell) => cell.trim() !== '')) yield { kind: 'row', line, cells };
      line += 1;
      for (const cell of cells) if (cell.includes('\n')) line += linesBefore(cell, cell.length);
    }
    if (fault !== undefined) {
      yield { kind: 'quotation', line: firstLine + linesBefore(block, fault.index ?? 0) };
      return;
    }
    if (!meta.truncated) return;
    cursor += meta.cursor;
    onProgress(cursor / text.length);
  }
}

/** Behind the first line feed from `index` on, or the end. */
function endOfLine(text: string, index: number): number {
  const feed = text.indexOf('\n', index);
  return feed === -1 ? text.length : feed + 1;
}

function linesBefore(text: string, index: number): number {
  let lines = 0;
  for (let at = text.indexOf('\n'); at !== -1 && at < index; at = text.indexOf('\n', at + 1)) lines += 1;
  return lines;
}

const DELIMITERS = [',', ';', '\t'] as const;

/** The delimiter that the header has most of; names of columns hold none of them. */
function delimiterOf(text: string): string {
  const header = (/^.*\S.*$/m.exec(text)?.[0] ?? '').replace(/"[^"]*"/g, '');
  const counts = DELIMITERS.map((delimiter) => header.split(delimiter).length);
  return DELIMITERS[counts.indexOf(Math.max(...counts))] ?? ',';
}

type SomeReadings = { -readonly [Name in ReadingName]?: RecordedReading };

/** Where each column of this table stands, counted from 0. */
interface Header {
  readonly columnCount: number;
  /** the names as the table has them */
  readonly names: readonly string[];
  readonly record: number | null;
  readonly workingDistance: number | null;
  readonly readings: readonly ReadingColumns[];
  /** a row without any, which has the names of all nevertheless */
  readonly noReadings: SomeReadings;
}

interface ReadingColumns {
  readonly name: ReadingName;
  readonly reading: number | null;
  readonly offset: number | null;
  readonly camera: number | null;
  readonly uncertainty: number | null;
}

/** Null where no row of names is there; else what is understood of it, the rest among the problems. */
function readHeader(row: DataRow, catalogue: Catalogue, problems: ProblemList): Header | null {
  const known = recordColumns(catalogue);
  const names = row.cells.map((cell) => cell.trim().toLowerCase());
  if (!names.some((name) => known.has(name)) && names.some((name) => parseDecimal(name).ok)) {
    problems.add({ kind: 'no-header', line: row.line, text: row.cells.join(' ').trim() });
    return null;
  }
  const places = new Map<string, number>();
  for (const [index, name] of names.entries()) {
    const place = { line: row.line, column: index + 1, columnName: row.cells[index]?.trim() ?? '' };
    const earlier = places.get(name);
    if (name === '') problems.add({ kind: 'unnamed-column', place });
    else if (!known.has(name))
      problems.add({ kind: 'unknown-column', place, nearest: nearestName(name, known.keys()) });
    else if (earlier !== undefined) problems.add({ kind: 'duplicate-column', place, firstColumn: earlier + 1 });
    else places.set(name, index);
  }
  for (const [name, index] of places) {
    const role = known.get(name);
    const partner = role === undefined ? null : partnerOf(role, catalogue);
    if (partner !== null && !places.has(partner))
      problems.add({
        kind: 'partner-missing',
        place: { line: row.line, column: index + 1, columnName: name },
        partner,
      });
  }
  const at = (column: string): number | null => places.get(column) ?? null;
  const readings = READING_NAMES.map((name) => {
    const column = columnOfReading(name, catalogue);
    return {
      name,
      reading: at(column),
      offset: at(column + SUFFIXES.offset),
      camera: at(column + SUFFIXES.camera),
      uncertainty: at(column + SUFFIXES['camera-uncertainty']),
    };
  }).filter(({ reading, camera }) => reading !== null || camera !== null);
  if (problems.problemCount === 0 && readings.every(({ reading }) => reading === null))
    problems.add({ kind: 'no-readings' });
  return {
    columnCount: names.length,
    names,
    record: at(RECORD_COLUMN),
    workingDistance: at(WORKING_DISTANCE_COLUMN),
    readings,
    noReadings: Object.fromEntries(
      readings.flatMap(({ name, reading }) => (reading === null ? [] : [[name, undefined]])),
    ),
  };
}

/** The column without which this one says nothing. */
function partnerOf(role: ColumnRole, catalogue: Catalogue): string | null {
  switch (role.kind) {
    case 'record':
    case 'working-distance':
    case 'reading':
      return null;
    case 'offset':
      return columnOfReading(role.name, catalogue);
    case 'camera':
      return columnOfReading(role.name, catalogue) + SUFFIXES['camera-uncertainty'];
    case 'camera-uncertainty':
      return columnOfReading(role.name, catalogue) + SUFFIXES.camera;
    default:
      return unreachable(role);
  }
}

/** As `trim`, which would look through all of the text: nearly no cell begins or ends with a space. */
function trimmed(text: string): string {
  return text.length === 0 || (isVisible(text.charCodeAt(0)) && isVisible(text.charCodeAt(text.length - 1)))
    ? text
    : text.trim();
}

/** Of ASCII, without the space. */
function isVisible(code: number): boolean {
  return code > 0x20 && code < 0x7f;
}

/**
 * The number of a cell that is digits with at most one point among them, as nearly every cell is, and a table has millions of them:
 * whole numbers below 10^15 and powers of ten are exact, so that their quotient is the nearest number to the decimal. Null for what
 * is written otherwise: see `parseDecimal`.
 */
function shortDecimal(text: string): number | null {
  if (text.length === 0 || text.length > 15) return null;
  let whole = 0;
  let divisor = 1;
  let digits = 0;
  let isBehindPoint = false;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code >= ZERO && code <= NINE) {
      whole = 10 * whole + (code - ZERO);
      digits += 1;
      if (isBehindPoint) divisor *= 10;
    } else if (code === POINT && !isBehindPoint) isBehindPoint = true;
    else return null;
  }
  return digits === 0 ? null : whole / divisor;
}

const ZERO = 48;
const NINE = 57;
const POINT = 46;

const NO_NUMBERS: readonly number[] = [];

/** Whether all numbers of a row are there as they should be, each by itself and written short; any other row may be in order as well. */
function isPlainRow({ cells }: DataRow, { columnCount, workingDistance, readings }: Header): boolean {
  if (cells.length !== columnCount) return false;
  const isEmptyOr = (index: number | null, isNumber: (text: string) => boolean): boolean => {
    const text = index === null ? '' : (cells[index] ?? '');
    return text === '' || isNumber(text);
  };
  if (!isEmptyOr(workingDistance, isShortPositive)) return false;
  for (const { reading, offset, camera, uncertainty } of readings) {
    if (!isEmptyOr(reading, isShort) || !isEmptyOr(offset, isShort)) return false;
    if (camera === null || uncertainty === null) continue;
    if (!isEmptyOr(camera, isShort) || !isEmptyOr(uncertainty, isShortPositive)) return false;
    if ((cells[camera] === '') !== (cells[uncertainty] === '')) return false;
  }
  return true;
}

function isShort(text: string): boolean {
  return shortDecimal(text) !== null;
}

function isShortPositive(text: string): boolean {
  return (shortDecimal(text) ?? 0) > 0;
}

/** The record of a row, or null with the reasons among the problems. */
function readRow({ line, cells }: DataRow, header: Header, problems: ProblemList): RecordInTable | null {
  const problemsBefore = problems.problemCount;
  if (cells.length !== header.columnCount) {
    problems.add({ kind: 'field-count', line, found: cells.length, expected: header.columnCount });
    return null;
  }
  const textAt = (index: number | null): string => (index === null ? '' : trimmed(cells[index] ?? ''));
  const placeOf = (index: number): CellPlace => ({ line, column: index + 1, columnName: header.names[index] ?? '' });
  const numbersAt = (index: number | null): readonly number[] => {
    const text = textAt(index);
    if (index === null || text === '') return NO_NUMBERS;
    const short = shortDecimal(text);
    if (short !== null) return [short];
    const single = parseDecimal(text);
    if (single.ok) return [single.value];
    const numbers: number[] = [];
    for (const part of partsOfSeries(text)) {
      const number = parseDecimal(part);
      if (number.ok) numbers.push(number.value);
      else {
        problems.add({ kind: 'bad-number', place: placeOf(index), text });
        return NO_NUMBERS;
      }
    }
    return numbers;
  };
  const numberAt = (index: number | null, isPositive: boolean): number | null => {
    if (index === null) return null;
    const numbers = numbersAt(index);
    const value = numbers[0];
    if (value === undefined) return null;
    if (numbers.length > 1) problems.add({ kind: 'several-numbers', place: placeOf(index), text: textAt(index) });
    else if (isPositive && value <= 0)
      problems.add({ kind: 'not-positive', place: placeOf(index), text: textAt(index) });
    return value;
  };

  const workingDistanceMm = numberAt(header.workingDistance, true);
  // As a copy it has room for all from the start; otherwise it would be moved with every few readings.
  const readings: SomeReadings = { ...header.noReadings };
  const estimates: { -readonly [Name in ReadingName]?: RecordedEstimate } = {};
  for (const { name, reading, offset, camera, uncertainty } of header.readings) {
    const scale = numbersAt(reading);
    const zeroOffset = numberAt(offset, false);
    if (scale.length > 0) readings[name] = { scale, zeroOffset };
    if (camera === null || uncertainty === null) continue;
    const value = numberAt(camera, false);
    const standardUncertainty = numberAt(uncertainty, true);
    if (value !== null && standardUncertainty !== null) estimates[name] = { value, standardUncertainty };
    else if (textAt(camera) === '' && textAt(uncertainty) !== '')
      problems.add({ kind: 'half-estimate', place: placeOf(camera) });
    else if (textAt(camera) !== '' && textAt(uncertainty) === '')
      problems.add({ kind: 'half-estimate', place: placeOf(uncertainty) });
  }
  if (problems.problemCount > problemsBefore) return null;
  return { line, id: textAt(header.record) || null, workingDistanceMm, readings, estimates };
}

/**
 * The records as CSV (RFC 4180: commas, CRLF, decimal points), one in a row; only columns that a record needs are written.
 * `readRecordTable` gives the same records back.
 */
export function writeRecordTable(records: readonly FittingRecord[], catalogue: Catalogue): string {
  const written = [...recordColumns(catalogue)].filter(
    ([, role]) => role.kind === 'record' || records.some((record) => cellOf(record, role) !== ''),
  );
  const rows = records.map((record) => written.map(([, role]) => cellOf(record, role)));
  return `${Papa.unparse([written.map(([column]) => column), ...rows], { newline: '\r\n' })}\r\n`;
}

function cellOf(record: FittingRecord, role: ColumnRole): string {
  switch (role.kind) {
    case 'record':
      return record.id ?? '';
    case 'working-distance':
      return cellOfNumber(record.workingDistanceMm);
    case 'reading':
      return (record.readings[role.name]?.scale ?? []).map(plainDecimal).join(' ');
    case 'offset':
      return cellOfNumber(record.readings[role.name]?.zeroOffset);
    case 'camera':
      return cellOfNumber(record.estimates[role.name]?.value);
    case 'camera-uncertainty':
      return cellOfNumber(record.estimates[role.name]?.standardUncertainty);
    default:
      return unreachable(role);
  }
}

function cellOfNumber(value: number | null | undefined): string {
  return value === null || value === undefined ? '' : plainDecimal(value);
}

/** All digits of the number without an exponent, since the tables have none. */
export function plainDecimal(value: number): string {
  const [digits = '', exponent] = String(value).split('e');
  if (exponent === undefined) return digits;
  const sign = digits.startsWith('-') ? '-' : '';
  const [whole = '', part = ''] = digits.replace('-', '').split('.');
  const shift = Number(exponent);
  if (shift < 0) return `${sign}0.${'0'.repeat(-shift - whole.length)}${whole}${part}`;
  return `${sign}${whole}${part.padEnd(shift, '0')}`;
}
