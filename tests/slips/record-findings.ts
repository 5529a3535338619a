import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import type { ReadingName } from '../../src/core/catalogue/measurement.js';
import type { Explanation, Reconcile, Suspicion } from '../../src/core/crosscheck/reconciliation.js';
import type { SlipKind } from '../../src/core/crosscheck/slip.js';
import type { Gauge } from '../../src/core/reading/gauge.js';
import type { Misfit } from '../../src/session/misfits.js';
import { explanationsOf, sheetMisfits } from '../../src/session/misfits.js';
import { columnOfReading } from '../../src/session/record-columns.js';
import type { RecordInTable } from '../../src/session/record-table.js';
import { completeEnglish } from '../../src/ui/language.js';
import { misfitExplanations, misfitSentence } from '../../src/ui/misfit-sentences.js';
import { probabilityWords } from '../../src/ui/slip-sentences.js';
import { words } from '../../src/ui/language.js';
import { evidenceOfRecord } from './record-evidence.js';
import { rowsOfEvidence } from './record-rows.js';

// The screen loads most words later; here they are wanted from the start.
await completeEnglish();

// The shapes below are those of the JSON report; DEVELOPERS.md describes their keys.

/** All that does not fit in one record. */
export interface RecordFindings {
  /** null where the table gives no name */
  readonly record: string | null;
  /** line of the file on which it begins */
  readonly line: number;
  readonly readingCount: number;
  /** the gravest first */
  readonly findings: readonly RecordFinding[];
}

export interface RecordFinding {
  readonly kind: Misfit['kind'];
  /** the columns that it concerns, the most doubtful first */
  readonly columns: readonly string[];
  /** that something is wrong there; null where the finding is no matter of probability */
  readonly probability: number | null;
  /** what all else says of the first of `columns`; null where that is not much, or nobody asked */
  readonly expected: Suspicion['expected'];
  /** the rule, or `camera` or `population`, that it conflicts with most; null where nothing alone shows it */
  readonly conflictsWith: string | null;
  /** what probably happened, most probable first */
  readonly explanations: readonly FoundExplanation[];
  /** the same in words */
  readonly sentences: readonly string[];
}

/** One or two slips that together explain a finding. */
export interface FoundExplanation {
  readonly probability: number;
  readonly slips: readonly {
    readonly kind: SlipKind;
    readonly restorations: readonly { readonly column: string; readonly written: number; readonly restored: number }[];
  }[];
}

/** The findings of a record: the same that the sheet would show of it. */
export function findingsOfRecord(
  record: RecordInTable,
  gauges: readonly Gauge[],
  catalogue: Catalogue,
  reconcile: Reconcile,
): RecordFindings {
  const evidence = evidenceOfRecord(record, gauges, catalogue);
  const columnOf = (name: ReadingName): string => columnOfReading(name, catalogue);
  const misfits = sheetMisfits(rowsOfEvidence(evidence), reconcile(evidence), catalogue);
  return {
    record: record.id,
    line: record.line,
    readingCount: Object.keys(evidence.readings).length,
    findings: misfits.map((misfit): RecordFinding => {
      const suspicion = misfit.kind === 'suspected' ? misfit.suspicion : null;
      return {
        kind: misfit.kind,
        columns: misfit.names.map(columnOf),
        probability: suspicion?.probability ?? null,
        expected: suspicion?.expected ?? null,
        conflictsWith: suspicion?.conflict?.with ?? null,
        explanations: explanationsOf(misfit).map((explanation) => foundExplanation(explanation, columnOf)),
        sentences: [misfitSentence(misfit, evidence), ...misfitExplanations(misfit, evidence)],
      };
    }),
  };
}

function foundExplanation(
  { slips, probability }: Explanation,
  columnOf: (name: ReadingName) => string,
): FoundExplanation {
  return {
    probability,
    slips: slips.map(({ kind, restorations }) => ({
      kind,
      restorations: restorations.map(({ name, written, restored }) => ({ column: columnOf(name), written, restored })),
    })),
  };
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

/** How many records have something that does not fit, and what was probably done most often. */
export interface FindingsSummary {
  readonly recordCount: number;
  readonly withFindings: number;
  /** records that have a finding of the kind */
  readonly byKind: Readonly<Record<Misfit['kind'], number>>;
  /** how often each slip is the most probable explanation of a finding, most frequent first */
  readonly probableSlips: readonly { readonly kind: SlipKind; readonly count: number }[];
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

export function summariseFindings(all: readonly RecordFindings[]): FindingsSummary {
  const slips = new Map<SlipKind, number>();
  const named = all.flatMap(({ findings }) => findings).flatMap(({ explanations }) => explanations[0]?.slips ?? []);
  for (const { kind } of named) slips.set(kind, (slips.get(kind) ?? 0) + 1);
  const byKind = Object.fromEntries(
    Object.keys(KINDS).map((kind) => [
      kind,
      all.filter(({ findings }) => findings.some((finding) => finding.kind === kind)).length,
    ]),
  ) as Record<Misfit['kind'], number>;
  return {
    recordCount: all.length,
    withFindings: all.filter(({ findings }) => findings.length > 0).length,
    byKind,
    probableSlips: [...slips].map(([kind, count]) => ({ kind, count })).sort((a, b) => b.count - a.count),
  };
}

export function summaryLines({ recordCount, withFindings, byKind, probableSlips }: FindingsSummary): readonly string[] {
  const counted = (count: number, what: string): string => `  ${String(count).padStart(6)}  ${what}`;
  const found = Object.entries(KINDS).filter(([kind]) => byKind[kind as Misfit['kind']] > 0);
  return [
    `${recordCount} ${recordCount === 1 ? 'record' : 'records'} read, ${withFindings} with something that does not fit${found.length === 0 ? '.' : ':'}`,
    ...found.map(([kind, what]) => counted(byKind[kind as Misfit['kind']], what)),
    ...(probableSlips.length === 0 ? [] : ['What most probably happened:']),
    ...probableSlips.map(({ kind, count }) => counted(count, words.slipsInShort[kind])),
  ];
}
