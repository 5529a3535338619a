import type { ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { Conflict, Explanation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { Restoration, Slip } from '../core/crosscheck/slip.js';
import { SLIP_KINDS } from '../core/crosscheck/slip.js';
import type { Gauge } from '../core/reading/gauge.js';
import type { Reading } from '../core/reading/reading.js';
import type { Check } from '../protocol/checks.js';
import { isCount, isOneOfShapes, isPositive, listOf, oneOf, orNull, shape } from '../protocol/checks.js';
import { isFiniteNumber, isRecord } from '../protocol/message.js';
import type { AuditedOrigin, AuditTotals, FlaggedRecord, WrittenThere } from './audit.js';
import type { Misfit } from './misfits.js';
import type { CellPlace, RecordProblem, RecordTableFailure } from './record-table.js';

// What comes back from the worker that looks records through. Its own types are checked as far as the page reaches into them.

const isText: Check<string> = (value): value is string => typeof value === 'string';
const isFlag: Check<boolean> = (value): value is boolean => typeof value === 'boolean';

const NAMES: ReadonlySet<unknown> = new Set(READING_NAMES);
const isName: Check<ReadingName> = (value): value is ReadingName => NAMES.has(value);

/** What the page only hands on to sentences, which the worker has from the same code. */
function anObject<Value>(value: unknown): value is Value {
  return isRecord(value);
}

const isRange = shape<{ readonly low: number; readonly high: number }>({ low: isFiniteNumber, high: isFiniteNumber });

const isSlip = shape<Slip>({
  kind: oneOf(...SLIP_KINDS),
  restorations: listOf(shape<Restoration>({ name: isName, written: isFiniteNumber, restored: isFiniteNumber })),
});

const areSlips: Check<Explanation['slips']> = (value): value is Explanation['slips'] =>
  listOf(isSlip)(value) && (value.length === 1 || value.length === 2);

const areExplanations = listOf(shape<Explanation>({ slips: areSlips, probability: isFiniteNumber }));

const isValue = shape<NonNullable<Suspicion['expected']>>({
  value: isFiniteNumber,
  standardUncertainty: isFiniteNumber,
});

const isSuspicion = shape<Suspicion>({
  names: listOf(isName),
  probability: isFiniteNumber,
  explanations: areExplanations,
  conflict: orNull(
    shape<Conflict>({
      with: isText as Check<Conflict['with']>,
      names: listOf(isName),
      expected: isFiniteNumber,
      standardUncertainty: isFiniteNumber,
    }),
  ),
  expected: orNull(isValue),
});

const areNames = listOf(isName);

const isMisfit = isOneOfShapes<Misfit>({
  refused: { names: areNames, failure: anObject, explanations: areExplanations },
  suspected: { names: areNames, suspicion: isSuspicion },
  'does-not-add-up': {
    names: areNames,
    isNear: isFlag,
    sum: isFiniteNumber,
    whole: isFiniteNumber,
    limit: isFiniteNumber,
  },
  disagrees: { names: areNames, value: isFiniteNumber, finding: anObject },
  'readers-differ': { names: areNames, value: isFiniteNumber, otherReader: isText, otherValue: isFiniteNumber },
  'far-off-repeat': { names: areNames, farOff: listOf(isFiniteNumber), others: listOf(isFiniteNumber) },
  unusual: { names: areNames, value: isFiniteNumber, usual: isRange },
});

const isReading = shape<Reading>({
  name: isName,
  value: isFiniteNumber,
  standardUncertainty: isPositive,
  origin: orNull(anObject<NonNullable<Reading['origin']>>),
});

const areReadings: Check<WrittenThere['readings']> = (value): value is WrittenThere['readings'] =>
  isRecord(value) && Object.entries(value).every(([name, reading]) => isName(name) && isReading(reading));

const isFlagged = shape<FlaggedRecord>({
  place: isCount,
  origin: isOneOfShapes<AuditedOrigin>({
    table: { record: orNull(isText), line: isCount },
    session: { sessionId: isText },
  }),
  readingCount: isCount,
  misfits: listOf(isMisfit),
  written: shape<WrittenThere>({
    readings: areReadings,
    gauges: listOf(anObject<Gauge>),
    joined: (value): value is ReadonlySet<ReadingName> => value instanceof Set && [...value].every(isName),
  }),
});

/** The flagged records that a worker sent; null where one of them is none. */
export function parseFlagged(values: readonly unknown[]): readonly FlaggedRecord[] | null {
  return listOf(isFlagged)(values) ? values : null;
}

const areTotals = shape<AuditTotals>({
  recordCount: isCount,
  readingCount: isCount,
  withFindings: isCount,
  byKind: shape<AuditTotals['byKind']>({
    refused: isCount,
    suspected: isCount,
    'does-not-add-up': isCount,
    disagrees: isCount,
    'readers-differ': isCount,
    'far-off-repeat': isCount,
    unusual: isCount,
  }),
  probableSlips: listOf(shape<AuditTotals['probableSlips'][number]>({ kind: oneOf(...SLIP_KINDS), count: isCount })),
});

export function parseAuditTotals(value: unknown): AuditTotals | null {
  return areTotals(value) ? value : null;
}

const isPlace = shape<CellPlace>({ line: isCount, column: isCount, columnName: isText });

const isProblem = isOneOfShapes<RecordProblem>({
  'too-large': { bytes: isCount, limitBytes: isCount },
  'utf-16': {},
  'not-utf-8': { line: isCount },
  nul: { line: isCount },
  empty: {},
  'no-header': { line: isCount, text: isText },
  'unknown-column': { place: isPlace, nearest: orNull(isText) },
  'unnamed-column': { place: isPlace },
  'duplicate-column': { place: isPlace, firstColumn: isCount },
  'partner-missing': { place: isPlace, partner: isText },
  'no-readings': {},
  'no-records': {},
  quotation: { line: isCount },
  'field-count': { line: isCount, found: isCount, expected: isCount },
  'bad-number': { place: isPlace, text: isText },
  'several-numbers': { place: isPlace, text: isText },
  'not-positive': { place: isPlace, text: isText },
  'half-estimate': { place: isPlace },
});

const isTableFailure = shape<RecordTableFailure>({ problems: listOf(isProblem), problemCount: isCount });

export function parseTableFailure(value: unknown): RecordTableFailure | null {
  return isTableFailure(value) ? value : null;
}
