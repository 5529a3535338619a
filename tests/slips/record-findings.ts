import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import type { MeasurementId } from '../../src/core/catalogue/measurement.js';
import type { AuditTotals } from '../../src/session/audit.js';
import type { RecordFinding } from '../../src/session/audit-findings.js';
import { recordFinding } from '../../src/session/audit-findings.js';
import type { AuditedRecord } from '../../src/session/audit-records.js';
import type { Misfit } from '../../src/session/misfits.js';
import type { RecordInTable } from '../../src/session/record-table.js';
import { completeEnglish, words } from '../../src/ui/language.js';
import { misfitExplanations, misfitSentence } from '../../src/ui/misfit-sentences.js';
import type { WrittenSheet } from '../../src/ui/slip-sentences.js';
import { probabilityWords } from '../../src/ui/slip-sentences.js';

// The screen loads most words later; here they are wanted from the start.
await completeEnglish();

/** All that does not fit in one record; see the JSON report in DEVELOPERS.md. */
export interface RecordFindings {
  /** null where the table gives no name */
  readonly record: string | null;
  /** line of the file on which it begins */
  readonly line: number;
  readonly readingCount: number;
  /** the gravest first */
  readonly findings: readonly (RecordFinding & {
    /** the same in words */
    readonly sentences: readonly string[];
  })[];
}

/** The findings of a record: the same that the sheet would show of it. */
export function findingsOfRecord(
  record: RecordInTable,
  { readingCount, found }: AuditedRecord,
  catalogue: Catalogue,
): RecordFindings {
  const { misfits, written } = found ?? { misfits: [], written: null };
  return {
    record: record.id,
    line: record.line,
    readingCount,
    findings: misfits.map((misfit) => ({
      ...recordFinding(misfit, catalogue),
      sentences: written === null ? [] : sentencesOf(misfit, { ...written, catalogue }),
    })),
  };
}

function sentencesOf(misfit: Misfit, sheet: WrittenSheet): readonly string[] {
  return [misfitSentence(misfit, sheet), ...misfitExplanations(misfit, sheet)];
}

/** What a table's gauge is called in sentences. */
export function nameGauge(id: MeasurementId): string {
  return `the gauge for ${words.measurements[id].shortName}`;
}

/** The lines of one record; none where all fits. */
export function findingLines({ record, line, findings }: RecordFindings): readonly string[] {
  if (findings.length === 0) return [];
  return [
    `${record ?? 'Record'} (line ${line})`,
    ...findings.flatMap(({ probability, sentences: [first = '', ...others] }) => [
      `  ${first}${probability === null ? '' : ` Something is wrong here: ${probabilityWords(probability)}.`}`,
      ...others.map((sentence) => `    ${sentence}`),
    ]),
  ];
}

const KINDS: Readonly<Record<Misfit['kind'], string>> = {
  refused: 'with a number that cannot be',
  suspected: 'with a reading that is probably wrong',
  'does-not-add-up': 'where R and L do not make the whole',
  disagrees: 'where hand and camera disagree',
  'readers-differ': 'where two readers differ',
  'far-off-repeat': 'with a repeat far from the others',
  unusual: 'with a reading that is seldom found',
};

/** How many records have something that does not fit, and what was probably done most often. */
export function summaryLines({ recordCount, withFindings, byKind, probableSlips }: AuditTotals): readonly string[] {
  const counted = (count: number, what: string): string => `  ${String(count).padStart(6)}  ${what}`;
  const found = Object.entries(KINDS).filter(([kind]) => byKind[kind as Misfit['kind']] > 0);
  return [
    `${recordCount} ${recordCount === 1 ? 'record' : 'records'} read, ${withFindings} with something that does not fit${found.length === 0 ? '.' : ':'}`,
    ...found.map(([kind, what]) => counted(byKind[kind as Misfit['kind']], what)),
    ...(probableSlips.length === 0 ? [] : ['What most probably happened:']),
    ...probableSlips.map(({ kind, count }) => counted(count, words.slipsInShort[kind])),
  ];
}
