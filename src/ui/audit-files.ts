import Papa from 'papaparse';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { SlipKind } from '../core/crosscheck/slip.js';
import type { DecimalSign } from '../core/reading/parse-reading.js';
import type { AuditTotals, FlaggedRecord } from '../session/audit.js';
import { recordFinding } from '../session/audit-findings.js';
import type { AuditedFinding, AuditedRow } from '../session/audit-list.js';
import { explanationsOf } from '../session/explanations.js';
import { columnOfReading } from '../session/record-columns.js';
import { plainDecimal } from '../session/record-table.js';
import { harmlessText } from '../session/spreadsheet-text.js';
import { misfitExplanations, misfitSentence } from './misfit-sentences.js';
import type { WrittenSheet } from './slip-sentences.js';

/** A flagged record as it goes into a file, with those of its findings that were asked for. */
export interface AuditedExport {
  readonly row: AuditedRow;
  readonly findings: readonly AuditedFinding[];
}

/** What files of flagged records are written with. */
export interface AuditFileTools {
  readonly catalogue: Catalogue;
  /** what a record is called; null where it has no name */
  readonly nameOf: (record: FlaggedRecord) => string | null;
}

/** The columns of the table of flagged records. */
export const AUDIT_FILE_COLUMNS = [
  'line',
  'record',
  'measurement',
  'written',
  'restored',
  'probability',
  'kind',
  'sentence',
  'slip',
  'slip_probability',
] as const;

const DELIMITERS: Readonly<Record<DecimalSign, string>> = { '.': ',', ',': ';' };

/**
 * Flagged records as CSV for spreadsheets (RFC 4180, CRLF): a row for each number that a finding is about, so that both of two
 * swapped ones are there. `measurement` is the column of `record-columns.ts`; `probability` that something is wrong there,
 * `slip_probability` that it was just `slip`, both 0 to 1. With a decimal comma the fields are parted by semicolons.
 */
export function auditTableRows(
  { row: { record }, findings }: AuditedExport,
  { catalogue, nameOf }: AuditFileTools,
  decimalSign: DecimalSign,
): string {
  const number = (value: number | null): string =>
    value === null ? '' : plainDecimal(value).replace('.', decimalSign);
  const sheet: WrittenSheet = { ...record.written, catalogue };
  const rows = findings.flatMap((finding) => {
    const { misfit } = finding;
    const sentence = [misfitSentence(misfit, sheet), ...misfitExplanations(misfit, sheet)].join(' ');
    const wrong = misfit.kind === 'suspected' ? misfit.suspicion.probability : null;
    return changesOf(finding, sheet).map(({ name, written, restored, slip }) => [
      record.origin.kind === 'table' ? String(record.origin.line) : '',
      harmlessText(nameOf(record) ?? ''),
      columnOfReading(name, catalogue),
      number(written),
      number(restored),
      number(wrong === null ? null : rounded(wrong)),
      misfit.kind,
      harmlessText(sentence),
      slip ?? '',
      number(slip === null ? null : rounded(explanationsOf(misfit)[0]?.probability ?? 0)),
    ]);
  });
  return csv(rows, decimalSign);
}

/** The first row of that table. */
export function auditTableHeader(decimalSign: DecimalSign): string {
  return csv([[...AUDIT_FILE_COLUMNS]], decimalSign);
}

function csv(rows: readonly (readonly string[])[], decimalSign: DecimalSign): string {
  const delimiter = DELIMITERS[decimalSign];
  return rows.length === 0 ? '' : `${Papa.unparse(rows as string[][], { delimiter, newline: '\r\n' })}\r\n`;
}

/** To a tenth of a per cent; frequencies of slips are not known to more. */
function rounded(probability: number): number {
  return Math.round(1000 * probability) / 1000;
}

interface Change {
  readonly name: ReadingName;
  /** null where nothing stands there that is a number */
  readonly written: number | null;
  readonly restored: number | null;
  readonly slip: SlipKind | null;
}

/** The numbers that a finding is about, and what its most probable explanation would make of them. */
function changesOf({ misfit }: AuditedFinding, sheet: WrittenSheet): readonly Change[] {
  const slips = explanationsOf(misfit)[0]?.slips ?? [];
  if (slips.length > 0) {
    return slips.flatMap(({ kind, restorations }) => restorations.map((one) => ({ ...one, slip: kind })));
  }
  return misfit.names.slice(0, 1).map((name) => {
    const said = misfit.kind === 'refused' ? misfit.failure : misfit;
    const value = 'value' in said ? said.value : (sheet.readings[name]?.value ?? null);
    return { name, written: value, restored: null, slip: null };
  });
}

/**
 * A flagged record as JSON, with the keys of `npm run slips -- --json` (DEVELOPERS.md describes them). A kept session has no
 * line, but its id besides.
 */
export function auditJsonRecord(
  { row: { record }, findings }: AuditedExport,
  { catalogue, nameOf }: AuditFileTools,
): string {
  const { origin, readingCount, written } = record;
  const sheet: WrittenSheet = { ...written, catalogue };
  return JSON.stringify({
    record: nameOf(record),
    line: origin.kind === 'table' ? origin.line : null,
    ...(origin.kind === 'session' && { session: origin.sessionId }),
    readingCount,
    findings: findings.map(({ misfit }) => ({
      ...recordFinding(misfit, catalogue),
      sentences: [misfitSentence(misfit, sheet), ...misfitExplanations(misfit, sheet)],
    })),
  });
}

/** What stands before, between and behind the records of such a file. `totals` are of all records that were looked through. */
export function auditJsonFrame({ recordCount, withFindings, byKind, probableSlips }: AuditTotals) {
  const summary = { recordCount, withFindings, byKind, probableSlips };
  return { before: `{"summary":${JSON.stringify(summary)},\n"records":[\n`, between: ',\n', after: '\n]}\n' };
}

/** Chosen: a task of the page that nobody feels. */
const SLICE_MS = 12;

/**
 * The pieces of a file, written a few at a time so that the page goes on answering.
 *
 * @param onProgress called between the slices
 */
export async function writeInSlices<Item>(
  items: readonly Item[],
  pieceOf: (item: Item) => string,
  onProgress: (done: number) => void,
): Promise<readonly string[]> {
  const pieces: string[] = [];
  let begunMs = performance.now();
  for (const item of items) {
    pieces.push(pieceOf(item));
    if (performance.now() - begunMs < SLICE_MS) continue;
    onProgress(pieces.length);
    await new Promise((resolve) => {
      setTimeout(resolve, 0);
    });
    begunMs = performance.now();
  }
  return pieces;
}
