import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { Measurement, MeasurementId, ReadingName } from '../core/catalogue/measurement.js';
import type { Estimate } from '../core/estimate/estimate.js';
import { parseReading } from '../core/reading/parse-reading.js';
import { gaugeInUse } from '../core/record/practice.js';
import type { ReaderId } from '../core/record/reader-sheet.js';
import { READER_IDS } from '../core/record/reader-sheet.js';
import type { CameraRecord, SessionRecord } from '../core/record/session-record.js';
import type { SampledNumber } from '../core/statistics/agreement.js';
import { groupedLimitsOfAgreement, type GroupedAgreement } from '../core/statistics/grouped-agreement.js';
import { mean } from '../core/statistics/moments.js';
import { median, MODIFIED_Z_LIMIT, modifiedZScores } from '../core/statistics/robust.js';
import { coverageFactor } from '../core/statistics/student-t.js';
import { theilSenSlope } from '../core/statistics/theil-sen.js';
import type { Side } from '../core/units/side.js';
import { NEEDS_BOTH_EYES } from './rows.js';

/** What one reader found at one place in one visit, and what the camera said of the same. */
export interface ComparedPair {
  readonly sessionId: string;
  /** as typed; empty where nobody typed a name */
  readonly wearer: string;
  /** when the visit began, ISO 8601, and the same in milliseconds */
  readonly at: string;
  readonly atMs: number;
  readonly name: ReadingName;
  readonly side: Side | null;
  readonly camera: CameraRecord['kind'];
  /** null for a plain rule */
  readonly gauge: { readonly id: string; readonly name: string } | null;
  /** as typed, trimmed; empty where nobody typed a name */
  readonly reader: string;
  readonly handValue: number;
  readonly cameraValue: number;
  /** standard uncertainty of `difference`, hand and camera joined, as both were judged then */
  readonly standardUncertainty: number;
  /** hand less camera, in the unit of the measurement */
  readonly difference: number;
  /** of hand and camera: against this the difference is drawn (Bland and Altman 1986), since either alone would tilt the picture */
  readonly mean: number;
}

/** What a session has of one measurement. */
export interface SessionPairs {
  readonly pairs: readonly ComparedPair[];
  /** places where both are known and the camera's value is still covered for who reads */
  readonly covered: number;
}

const NONE: SessionPairs = { pairs: [], covered: 0 };

/**
 * The pairs of one measurement in one session, of both readers. Left out: what is no reading, what the camera did not measure
 * or takes for granted with a squint, and what is covered on the sheet. Of the session that is open at this desk that is also what
 * the open reader may not see yet of the other's.
 *
 * @param openId the session on the sheet; null where there is none
 */
export function pairsOfSession(
  record: SessionRecord,
  measurement: Measurement,
  catalogue: Catalogue,
  openId: string | null,
): SessionPairs {
  const { camera, sheet } = record;
  if (camera === null) return NONE;
  const { readers, notes, settings } = sheet;
  const gauge = gaugeInUse(settings.practice, measurement.id);
  const keepsCovered = settings.covered && camera.supervision === 'reader';
  const read = (reader: ReaderId) =>
    measurement.fields.map(({ name }) => parseReading(readers[reader].readings[name], name, catalogue, gauge));
  const isOpenCovered = keepsCovered && record.id === openId && !read(sheet.reader).every((reading) => reading.ok);
  const atMs = Date.parse(record.begunAt);
  const pairs: ComparedPair[] = [];
  let covered = 0;
  for (const reader of READER_IDS) {
    const readings = read(reader);
    const isCovered = isOpenCovered || (keepsCovered && !readings.every((reading) => reading.ok));
    for (const [place, { name, side }] of measurement.fields.entries()) {
      const reading = readings[place]!;
      const estimate = estimateOf(camera, name);
      if (!reading.ok || estimate === null || (notes.squint && NEEDS_BOTH_EYES.includes(name))) continue;
      if (isCovered) {
        covered += 1;
        continue;
      }
      const { value, standardUncertainty } = reading.value;
      pairs.push({
        sessionId: record.id,
        wearer: notes.wearer.trim(),
        at: record.begunAt,
        atMs,
        name,
        side,
        camera: camera.kind,
        gauge: gauge === null ? null : { id: gauge.id, name: gauge.name },
        reader: readers[reader].reader.trim(),
        handValue: value,
        cameraValue: estimate.value,
        standardUncertainty: Math.hypot(standardUncertainty, estimate.standardUncertainty),
        difference: value - estimate.value,
        mean: (value + estimate.value) / 2,
      });
    }
  }
  return { pairs, covered };
}

function estimateOf({ estimates }: CameraRecord, name: ReadingName): Estimate | null {
  const known: { readonly [Name in ReadingName]?: Estimate } = estimates;
  return known[name] ?? null;
}

/** In how many sessions something is written where the camera has a value too, by measurement; nothing of it is parsed. */
export function countComparable(
  records: readonly SessionRecord[],
  catalogue: Catalogue,
): ReadonlyMap<MeasurementId, number> {
  const counts = new Map<MeasurementId, number>();
  for (const { camera, sheet } of records) {
    if (camera === null) continue;
    for (const { id, fields } of catalogue) {
      const isThere = fields.some(
        ({ name }) =>
          estimateOf(camera, name) !== null &&
          READER_IDS.some((reader) => sheet.readers[reader].readings[name].trim() !== ''),
      );
      if (isThere) counts.set(id, (counts.get(id) ?? 0) + 1);
    }
  }
  return counts;
}

/** What the pairs are told apart by. */
export type Grouping = 'gauge' | 'reader';

/** Pairs that have a gauge or a reader in common. */
export interface PairGroup {
  /** the gauge's id, or the reader's name in small letters; empty for a plain rule, or where nobody typed a name */
  readonly key: string;
  /** as it was written last; empty as `key` */
  readonly name: string;
  readonly pairs: readonly ComparedPair[];
}

/** The pairs by gauge or by reader, the largest group first. A gauge keeps its place when it is called otherwise, a reader with other capitals. */
export function groupPairs(pairs: readonly ComparedPair[], by: Grouping): readonly PairGroup[] {
  const groups = new Map<string, { name: string; latestMs: number; pairs: ComparedPair[] }>();
  for (const pair of pairs) {
    const name = by === 'gauge' ? (pair.gauge?.name ?? '') : pair.reader;
    const key = by === 'gauge' ? (pair.gauge?.id ?? '') : name.toLowerCase();
    const group = groups.get(key);
    if (group === undefined) {
      groups.set(key, { name, latestMs: pair.atMs, pairs: [pair] });
      continue;
    }
    group.pairs.push(pair);
    if (pair.atMs >= group.latestMs) {
      group.latestMs = pair.atMs;
      group.name = name;
    }
  }
  return [...groups]
    .map(([key, { name, pairs: own }]) => ({ key, name, pairs: own }))
    .sort((a, b) => b.pairs.length - a.pairs.length || (a.key < b.key ? -1 : 1));
}

/** How the differences of a group go with time. */
export interface Drift {
  /** change in 30 days, in the unit of the measurement, with its 95 % interval */
  readonly per30Days: number;
  readonly low: number;
  readonly high: number;
  /** the difference that the line has at this moment (milliseconds) */
  readonly at: (atMs: number) => number;
  readonly days: number;
}

/** What the differences of a group say together; what they are too few for is null. */
export interface GroupAgreement {
  readonly group: PairGroup;
  /** what is counted, the earliest first */
  readonly counted: readonly ComparedPair[];
  /** what stands so far from the others that it is taken for a slip, and not counted */
  readonly farOff: readonly ComparedPair[];
  /** visits of what is counted */
  readonly visits: number;
  /** mean difference; null under `LEAST_FOR_MEAN` visits */
  readonly bias: SampledNumber | null;
  /** null under `LEAST_FOR_LIMITS` visits */
  readonly limits: GroupedAgreement | null;
  /** null under `LEAST_FOR_DRIFT` visits, or where they lie within less than `LEAST_DRIFT_DAYS` days */
  readonly drift: Drift | null;
  /** how differences scatter, and how they would by the doubts of hand and camera alone (root mean square); null as the mean */
  readonly scatter: { readonly seen: number; readonly expected: number } | null;
}

/** Chosen: from here on Student's interval of the mean is no wider than 2.5 standard deviations in all. */
export const LEAST_FOR_MEAN = 5;

/** Chosen: from here on a limit is known to less than half of its distance from the mean: t √(3/n) sd is below 0.98 sd. */
export const LEAST_FOR_LIMITS = 15;

/** Chosen: the interval of the slope rests on a normal approximation that is fair from about ten on. */
export const LEAST_FOR_DRIFT = 10;

/** Chosen: over fewer days a change in 30 days would be told from a part of them. */
export const LEAST_DRIFT_DAYS = 30;

/** Fewer differences cannot tell which of them is the odd one. */
const LEAST_FOR_FAR_OFF = LEAST_FOR_MEAN;

const DAY_MS = 86_400_000;

/**
 * What the differences of a group say together. The visit is what counts: right and left, and both readers of one visit, share what
 * its picture is off by. Differences that stand out from the group's by their modified z-score (Iglewicz and Hoaglin 1993) and lie
 * further than the tolerance from its median are slips sooner than scatter, and are not counted unless `countsFarOff`.
 *
 * @param tolerance in the unit of the measurement
 */
export function agreementOfGroup(group: PairGroup, tolerance: number, countsFarOff: boolean): GroupAgreement {
  const inOrder = group.pairs.toSorted((a, b) => a.atMs - b.atMs);
  const isFarOff = countsFarOff ? () => false : farOffTest(inOrder, tolerance);
  const counted = inOrder.filter((pair) => !isFarOff(pair));
  const byVisit = visitsOf(counted);
  const visits = byVisit.length;
  const result = groupedLimitsOfAgreement(byVisit.map((pairs) => pairs.map(({ difference }) => difference)));
  const agreement = result.ok && visits >= LEAST_FOR_MEAN ? result.value : null;
  return {
    group,
    counted,
    farOff: inOrder.filter(isFarOff),
    visits,
    bias: agreement?.bias ?? null,
    limits: visits >= LEAST_FOR_LIMITS ? agreement : null,
    drift: visits >= LEAST_FOR_DRIFT ? driftOf(byVisit) : null,
    scatter:
      agreement === null
        ? null
        : {
            seen: agreement.standardDeviation,
            expected: Math.sqrt(mean(counted.map(({ standardUncertainty }) => standardUncertainty ** 2))),
          },
  };
}

function farOffTest(pairs: readonly ComparedPair[], tolerance: number): (pair: ComparedPair) => boolean {
  if (pairs.length < LEAST_FOR_FAR_OFF) return () => false;
  const differences = pairs.map(({ difference }) => difference);
  const centre = median(differences);
  const scores = modifiedZScores(differences);
  const farOff = new Set(
    pairs.filter(
      ({ difference }, place) =>
        Math.abs(scores[place] ?? 0) > MODIFIED_Z_LIMIT && Math.abs(difference - centre) > tolerance,
    ),
  );
  return (pair) => farOff.has(pair);
}

/** The pairs of each visit, in the order in which its first one comes. */
function visitsOf(pairs: readonly ComparedPair[]): readonly (readonly ComparedPair[])[] {
  const visits = new Map<string, ComparedPair[]>();
  for (const pair of pairs) {
    const visit = visits.get(pair.sessionId);
    if (visit === undefined) visits.set(pair.sessionId, [pair]);
    else visit.push(pair);
  }
  return [...visits.values()];
}

/** One point for each visit: what its differences have in common would otherwise count several times. */
function driftOf(byVisit: readonly (readonly ComparedPair[])[]): Drift | null {
  const points = byVisit.map((pairs) => ({
    x: pairs[0]!.atMs / DAY_MS,
    y: mean(pairs.map(({ difference }) => difference)),
  }));
  const days = points.map(({ x }) => x);
  const span = days.reduce((most, day) => Math.max(most, day), -Infinity) - (days[0] ?? 0);
  const found = span < LEAST_DRIFT_DAYS ? null : theilSenSlope(points);
  if (found?.ok !== true) return null;
  const { slope, interval, intercept } = found.value;
  return {
    per30Days: 30 * slope,
    low: 30 * interval.low,
    high: 30 * interval.high,
    at: (atMs) => intercept + (slope * atMs) / DAY_MS,
    days: span,
  };
}

/**
 * How a group's mean differs from that of all others together, with its 95 % interval (Welch 1947, degrees of freedom after
 * Satterthwaite, with visits as what counts). What the camera is off by for all of them cancels here; what it is off by for
 * other wearers, pictures or times does not. Null where either side has too few visits for a mean.
 */
export function againstOthers(one: GroupAgreement, all: readonly GroupAgreement[]): SampledNumber | null {
  const others = all.filter((other) => other !== one).flatMap(({ counted }) => counted);
  const own = meansOfVisits(one.counted);
  const theirs = meansOfVisits(others);
  if (own.length < LEAST_FOR_MEAN || theirs.length < LEAST_FOR_MEAN) return null;
  const [mine, other] = [momentsOf(own), momentsOf(theirs)];
  const variance = mine.variance + other.variance;
  const value = mine.mean - other.mean;
  const standardError = Math.sqrt(variance);
  if (variance === 0) return { value, standardError, interval: { low: value, high: value } };
  const degrees = variance ** 2 / (mine.variance ** 2 / (own.length - 1) + other.variance ** 2 / (theirs.length - 1));
  const t = coverageFactor(0.95, Math.max(1, degrees));
  return { value, standardError, interval: { low: value - t * standardError, high: value + t * standardError } };
}

function meansOfVisits(pairs: readonly ComparedPair[]): readonly number[] {
  return visitsOf(pairs).map((own) => mean(own.map(({ difference }) => difference)));
}

/** Mean, and the square of its standard error. */
function momentsOf(values: readonly number[]): { readonly mean: number; readonly variance: number } {
  const centre = mean(values);
  const squares = values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
  return { mean: centre, variance: squares / (values.length - 1) / values.length };
}
