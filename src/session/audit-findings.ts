import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { Explanation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { SlipKind } from '../core/crosscheck/slip.js';
import type { AuditTotals } from './audit.js';
import type { Misfit } from './misfits.js';
import { explanationsOf } from './explanations.js';
import { columnOfReading } from './record-columns.js';

// What does not fit in a record, in the words of its table; DEVELOPERS.md describes the keys, as files are written with them.

/** One thing that does not fit. */
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
}

/** One or two slips that together explain a finding. */
export interface FoundExplanation {
  readonly probability: number;
  readonly slips: readonly {
    readonly kind: SlipKind;
    readonly restorations: readonly { readonly column: string; readonly written: number; readonly restored: number }[];
  }[];
}

export function recordFinding(misfit: Misfit, catalogue: Catalogue): RecordFinding {
  const suspicion = misfit.kind === 'suspected' ? misfit.suspicion : null;
  return {
    kind: misfit.kind,
    columns: misfit.names.map((name) => columnOfReading(name, catalogue)),
    probability: suspicion?.probability ?? null,
    expected: suspicion?.expected ?? null,
    conflictsWith: suspicion?.conflict?.with ?? null,
    explanations: explanationsOf(misfit).map((explanation) => foundExplanation(explanation, catalogue)),
  };
}

function foundExplanation({ slips, probability }: Explanation, catalogue: Catalogue): FoundExplanation {
  return {
    probability,
    slips: slips.map(({ kind, restorations }) => ({
      kind,
      restorations: restorations.map(({ name, written, restored }) => ({
        column: columnOfReading(name, catalogue),
        written,
        restored,
      })),
    })),
  };
}

/** Counts one record after the other. */
export interface AuditTally {
  /** @param misfits what does not fit in the record; none where all does */
  readonly add: (readingCount: number, misfits: readonly Misfit[]) => void;
  readonly totals: () => AuditTotals;
}

const NONE_OF_A_KIND: AuditTotals['byKind'] = {
  refused: 0,
  suspected: 0,
  'does-not-add-up': 0,
  disagrees: 0,
  'readers-differ': 0,
  'far-off-repeat': 0,
  unusual: 0,
};

export function createAuditTally(): AuditTally {
  let [recordCount, readings, withFindings] = [0, 0, 0];
  const byKind = { ...NONE_OF_A_KIND };
  const slips = new Map<SlipKind, number>();
  return {
    add: (readingCount, misfits) => {
      recordCount += 1;
      readings += readingCount;
      if (misfits.length === 0) return;
      withFindings += 1;
      for (const kind of new Set(misfits.map((misfit) => misfit.kind))) byKind[kind] += 1;
      const probable = misfits.flatMap((misfit) => explanationsOf(misfit)[0]?.slips ?? []);
      for (const { kind } of probable) slips.set(kind, (slips.get(kind) ?? 0) + 1);
    },
    totals: () => ({
      recordCount,
      readingCount: readings,
      withFindings,
      byKind: { ...byKind },
      probableSlips: [...slips].map(([kind, count]) => ({ kind, count })).sort((a, b) => b.count - a.count),
    }),
  };
}

/** Several parts of one audit as one. */
export function joinTotals(parts: readonly AuditTotals[]): AuditTotals {
  const sum = (countOf: (part: AuditTotals) => number): number => parts.reduce((total, one) => total + countOf(one), 0);
  const slips = new Map<SlipKind, number>();
  for (const { kind, count } of parts.flatMap(({ probableSlips }) => probableSlips)) {
    slips.set(kind, (slips.get(kind) ?? 0) + count);
  }
  const kinds = Object.keys(NONE_OF_A_KIND) as Misfit['kind'][];
  return {
    recordCount: sum(({ recordCount }) => recordCount),
    readingCount: sum(({ readingCount }) => readingCount),
    withFindings: sum(({ withFindings }) => withFindings),
    byKind: Object.fromEntries(kinds.map((kind) => [kind, sum(({ byKind }) => byKind[kind])])) as AuditTotals['byKind'],
    probableSlips: [...slips].map(([kind, count]) => ({ kind, count })).sort((a, b) => b.count - a.count),
  };
}
