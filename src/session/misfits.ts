import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { Range, ReadingName } from '../core/catalogue/measurement.js';
import { FAR_DISTANCES, NEAR_DISTANCES } from '../core/catalogue/pupil-distances.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { Explanation, Reconciliation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import type { Reading, Readings } from '../core/reading/reading.js';
import { takeReading } from '../core/reading/reading.js';
import { freeOfDust } from '../core/statistics/free-of-dust.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import { combineUncertainties } from '../core/statistics/uncertainty.js';
import { explanationsOf } from './explanations.js';
import type { FieldRow, SheetRow } from './rows.js';

/** All that makes an entry no reading, but for a place that is empty and a trial series that is not at its end. */
export type RefusedFailure = Exclude<ReadingFailure, { kind: 'empty' | 'trials-one-sided' }>;

/** Something on the sheet that does not fit. Nothing is changed by it. */
export type Misfit = {
  /** the places that it concerns, the most doubtful first */
  readonly names: readonly ReadingName[];
} & (
  | {
      /** what was entered cannot be */
      readonly kind: 'refused';
      readonly failure: RefusedFailure;
      /** what probably happened, most probable first; empty where nobody asked, or no usual slip explains it */
      readonly explanations: readonly Explanation[];
    }
  /** all that is written makes a slip probable */
  | { readonly kind: 'suspected'; readonly suspicion: Suspicion }
  /** both eyes' distances and the whole differ by more than they may */
  | (SumOfEyes & { readonly kind: 'does-not-add-up' })
  /** hand and camera lie further apart than the tolerance and both doubts allow, and no suspicion says why */
  | {
      readonly kind: 'disagrees';
      /** the open reader's own: the finding is of it alone */
      readonly value: number;
      readonly finding: Extract<Finding, { kind: 'disagrees' }>;
    }
  | {
      /** two readers differ by more than both doubts explain */
      readonly kind: 'readers-differ';
      readonly value: number;
      readonly otherReader: string;
      readonly otherValue: number;
    }
  | {
      /** one or more repeats stand far from the others */
      readonly kind: 'far-off-repeat';
      /** as they were read from the scale */
      readonly farOff: readonly number[];
      readonly others: readonly number[];
    }
  /** seldom found among people although nothing contradicts it: look again */
  | { readonly kind: 'unusual'; readonly value: number; readonly usual: Range }
);

/** Both eyes that do not make the whole. */
export type SumMisfit = Extract<Misfit, { kind: 'does-not-add-up' }>;

/** Both eyes' distances beside the distance of the whole, mm. */
export interface SumOfEyes {
  readonly isNear: boolean;
  readonly sum: number;
  readonly whole: number;
  /** how far the two may lie apart */
  readonly limit: number;
}

/**
 * What is written at each place, both readers together where they agree. Numbers that cannot be are in as well, so that a slip
 * is sought in them.
 */
export function writtenReadings(rows: readonly SheetRow[], catalogue: Catalogue): Readings {
  const readings: { -readonly [Name in keyof Readings]: Readings[Name] } = {};
  for (const { field, reading, together } of rows.flatMap(({ fields }) => fields)) {
    if (reading.ok) readings[field] = together ?? reading.value;
    else if (isOneNumber(reading.failure)) readings[field] = takeReading(field, reading.failure.value, catalogue);
  }
  return readings;
}

/** The places whose numbers are what both readers' readings say together: nobody wrote these. */
export function joinedReadings(rows: readonly SheetRow[]): ReadonlySet<ReadingName> {
  const joined = rows
    .flatMap(({ fields }) => fields)
    .filter(({ reading, other, readersDiffer }) => reading.ok && other?.reading?.ok === true && !readersDiffer);
  return new Set(joined.map(({ field }) => field));
}

/**
 * What does not fit, most probable first: what cannot be, what is suspected, what camera or second reader contradict, repeats
 * far from the others, sums that are a little off, and last what is merely seldom. Each place is named by the gravest of them; a
 * repeat far from the others is said besides, since it may be the reason.
 *
 * @param reconciliation of `writtenReadings`, or of the readings that can be; with the estimates that are not covered, so that
 * nothing here tells what the camera saw before its time
 */
export function sheetMisfits(
  rows: readonly SheetRow[],
  reconciliation: Pick<Reconciliation, 'suspicions'>,
  catalogue: Catalogue,
): readonly Misfit[] {
  const fields = rows.flatMap((row) => row.fields.map((field) => ({ ...field, covered: row.covered })));
  const refused = fields.flatMap((field) => refusedMisfit(field, reconciliation));
  const refusedNames = namesOf(refused);
  const suspected = reconciliation.suspicions
    .filter(({ names }) => names[0] === undefined || !refusedNames.has(names[0]))
    .sort((a, b) => b.probability - a.probability)
    .map(suspectedMisfit);
  const suspectedNames = namesOf(suspected);
  const isNamed = (field: ReadingName): boolean => refusedNames.has(field) || suspectedNames.has(field);

  const disagreeing = fields
    .flatMap(({ field, reading, finding, covered }) =>
      reading.ok && finding?.kind === 'disagrees' && !covered && !isNamed(field)
        ? [{ field, value: reading.value.value, finding }]
        : [],
    )
    .sort((a, b) => Math.abs(b.finding.comparison.enNumber) - Math.abs(a.finding.comparison.enNumber))
    .map(({ field, value, finding }): Misfit => ({ kind: 'disagrees', names: [field], value, finding }));
  const differing = fields.flatMap(readersMisfit);
  const sums = sumMisfits(rows, reconciliation);
  const grave = namesOf([...refused, ...suspected, ...disagreeing, ...differing, ...sums]);
  return [
    ...refused,
    ...suspected,
    ...disagreeing,
    ...differing,
    ...fields.flatMap(repeatMisfit),
    ...sums,
    ...fields.flatMap((field) => (grave.has(field.field) ? [] : unusualMisfit(field, catalogue))),
  ];
}

const SUMS = [
  { isNear: false, distances: FAR_DISTANCES },
  { isNear: true, distances: NEAR_DISTANCES },
] as const;

/**
 * Where R and L do not make the whole and no suspicion touches the three: too little to say which is wrong, too much to make
 * lenses by. They may lie apart by the tolerance of the whole, or by what three such readings scatter in 95 of 100 cases
 * (coverage factor of JCGM 100:2008, 6.3.3), whichever is less. Both readers count together where they agree.
 *
 * @param rows with the practice's tolerances
 * @param reconciliation of the readings in these rows
 */
export function sumMisfits(
  rows: readonly SheetRow[],
  { suspicions }: Pick<Reconciliation, 'suspicions'>,
): readonly SumMisfit[] {
  const suspected = namesOf(suspicions.map(suspectedMisfit));
  const find = (name: ReadingName) => {
    for (const { measurement, fields } of rows) {
      const field = fields.find((one) => one.field === name);
      if (field !== undefined) return { reading: field.together, tolerance: measurement.tolerance.value };
    }
    return null;
  };
  return SUMS.flatMap(({ isNear, distances }) => {
    const names = [distances.whole, distances.R, distances.L];
    const [whole, right, left] = [find(distances.whole), find(distances.R), find(distances.L)];
    if (!whole?.reading || !right?.reading || !left?.reading || names.some((name) => suspected.has(name))) return [];
    const limit = limitOfSum(
      whole.tolerance,
      [whole.reading, right.reading, left.reading].map(({ standardUncertainty }) => standardUncertainty),
    );
    const sum = freeOfDust(right.reading.value + left.reading.value);
    if (freeOfDust(Math.abs(sum - whole.reading.value)) <= limit) return [];
    return [{ kind: 'does-not-add-up', names, isNear, sum, whole: whole.reading.value, limit }];
  });
}

/** How far the sum of R and L may lie from the whole, given the tolerance of the whole and the doubts of all three. */
export function limitOfSum(tolerance: number, uncertainties: readonly number[]): number {
  return Math.min(tolerance, NORMAL_95 * combineUncertainties(uncertainties));
}

function suspectedMisfit(suspicion: Suspicion): Misfit {
  return { kind: 'suspected', names: suspicion.names, suspicion };
}

/** All places that are named, and those that a named slip would change. */
function namesOf(misfits: readonly Misfit[]): ReadonlySet<ReadingName> {
  return new Set(
    misfits.flatMap((misfit) => {
      const slips = explanationsOf(misfit)[0]?.slips ?? [];
      return [...misfit.names, ...slips.flatMap(({ restorations }) => restorations.map(({ name }) => name))];
    }),
  );
}

/** A single number that cannot be; one of several repeats would not stand for the whole place. */
function isOneNumber(
  failure: ReadingFailure,
): failure is Extract<ReadingFailure, { kind: 'impossible' | 'not-positive' }> {
  return (failure.kind === 'impossible' || failure.kind === 'not-positive') && failure.place === null;
}

function isRefused(failure: ReadingFailure): failure is RefusedFailure {
  return failure.kind !== 'empty' && failure.kind !== 'trials-one-sided';
}

function refusedMisfit(
  { field, reading }: FieldRow,
  { suspicions }: Pick<Reconciliation, 'suspicions'>,
): readonly Misfit[] {
  if (reading.ok || !isRefused(reading.failure)) return [];
  const suspicion = suspicions.find(({ names }) => names[0] === field);
  return [{ kind: 'refused', names: [field], failure: reading.failure, explanations: suspicion?.explanations ?? [] }];
}

function readersMisfit({ field, reading, other, readersDiffer }: FieldRow): readonly Misfit[] {
  if (!readersDiffer || !reading.ok || other?.reading?.ok !== true) return [];
  return [
    {
      kind: 'readers-differ',
      names: [field],
      value: reading.value.value,
      otherReader: other.reader,
      otherValue: other.reading.value.value,
    },
  ];
}

function repeatMisfit({ field, reading }: FieldRow): readonly Misfit[] {
  const repeats = reading.ok ? (reading.value.origin?.repeats ?? null) : null;
  if (repeats === null || repeats.farOff.length === 0) return [];
  const isFarOff = (place: number): boolean => repeats.farOff.includes(place);
  const scales = repeats.values.map(({ scale }) => scale);
  return [
    {
      kind: 'far-off-repeat',
      names: [field],
      farOff: scales.filter((_, place) => isFarOff(place)),
      others: scales.filter((_, place) => !isFarOff(place)),
    },
  ];
}

function unusualMisfit({ field, reading }: FieldRow, catalogue: Catalogue): readonly Misfit[] {
  if (!reading.ok) return [];
  const { value }: Reading = reading.value;
  const usual = measurementOfReading(catalogue, field).plausible.soft;
  return value < usual.low || value > usual.high ? [{ kind: 'unusual', names: [field], value, usual }] : [];
}
