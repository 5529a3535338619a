import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { Measurement, ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import { FAR_DISTANCES, NEAR_DISTANCES } from '../core/catalogue/pupil-distances.js';
import { CAMERA_PLACES, nameAt, placeOf } from '../core/crosscheck/observed-sheet.js';
import { suspicionsWithin } from '../core/crosscheck/reconcile.js';
import type { Evidence, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { SheetFigures } from '../core/crosscheck/sheet-figures.js';
import { emptyFigures, figuresOf } from '../core/crosscheck/sheet-figures.js';
import type { Fault } from '../core/crosscheck/slip-faults.js';
import { faultsOfOne } from '../core/crosscheck/slip-faults.js';
import { createSuspicionBound } from '../core/crosscheck/suspicion-bound.js';
import { ROUNDING_SLACK } from '../core/crosscheck/rounding-slack.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import type { Gauge } from '../core/reading/gauge.js';
import type { SessionRecord } from '../core/record/session-record.js';
import { freeOfDust } from '../core/statistics/free-of-dust.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import type { FlaggedRecord, WrittenThere } from './audit.js';
import { sheetEvidence } from './evidence.js';
import { workingDistanceOf } from './measuring-settings.js';
import type { Misfit } from './misfits.js';
import { explanationsOf } from './explanations.js';
import { joinedReadings, limitOfSum, sheetMisfits } from './misfits.js';
import { evidenceOfRecord, readingOfRecord } from './record-evidence.js';
import { rowsOfEvidence } from './record-rows.js';
import type { RecordedEstimate, RecordInTable } from './record-table.js';
import { sheetRows } from './rows.js';
import { openSheet } from './sheet.js';

/** What was looked through: how many readings, and what does not fit with what stands there; null where all fits. */
export interface AuditedRecord {
  readonly readingCount: number;
  readonly found: Pick<FlaggedRecord, 'misfits' | 'written'> | null;
}

/** Looks the records of one table through, one after the other. */
export type AuditRecord = (record: RecordInTable) => AuditedRecord;

/** Looks sessions through. */
export type AuditSession = (record: SessionRecord) => AuditedRecord;

/**
 * What the sheet would find in each record, by a shorter way: most records can be seen to hold nothing that may be suspected (see
 * `suspicion-bound.ts`), and what else does not fit concerns single rows, so that only these are laid out.
 *
 * @param gauges of the table, as `gaugesOfTable` names them
 */
export function createRecordAudit(catalogue: Catalogue, gauges: readonly Gauge[]): AuditRecord {
  const blocksInDoubt = createSuspicionBound(catalogue);
  const places = READING_NAMES.map((name): PlaceRules => placeRules(name, catalogue));
  const figures = emptyFigures();
  return (record) => {
    const readingCount = takeFigures(record, places, gauges, catalogue, figures);
    let whole: Evidence | null = null;
    const evidence = (): Evidence => (whole ??= evidenceOfRecord(record, gauges, catalogue));
    const slipsAt = (place: number): readonly Fault[] => {
      const name = nameAt(place);
      // of the others only distances lead to slips of another distance
      const names = DISTANCES.includes(name) ? DISTANCES : [name];
      return faultsOfOne(name, whole ?? evidenceOfRecord(record, gauges, catalogue, names));
    };
    const inDoubt = blocksInDoubt(figures, slipsAt);
    const suspicions = inDoubt.size === 0 ? [] : suspicionsWithin(inDoubt, evidence());
    if (suspicions.length > 0) return { readingCount, found: found(evidence(), catalogue, suspicions) };
    const rows = rowsThatMayNotFit(record, places, figures, catalogue);
    if (rows.length === 0) return { readingCount, found: null };
    const names = rows.flatMap(({ fields }) => fields.map(({ name }) => name));
    return { readingCount, found: found(evidenceOfRecord(record, gauges, catalogue, names), rows, []) };
  };
}

const DISTANCES: readonly ReadingName[] = [FAR_DISTANCES, NEAR_DISTANCES].flatMap(({ whole, R, L }) => [whole, R, L]);

/** What does not fit in these rows. */
function found(evidence: Evidence, rows: Catalogue, suspicions: readonly Suspicion[]): AuditedRecord['found'] {
  const misfits = sheetMisfits(rowsOfEvidence(evidence, rows), { suspicions }, evidence.catalogue);
  return misfits.length === 0 ? null : { misfits, written: writtenThere(misfits, evidence, NO_NAMES) };
}

const NO_NAMES: ReadonlySet<ReadingName> = new Set();

/** What sentences about these misfits may name. */
function writtenThere(
  misfits: readonly Misfit[],
  { readings, gauges }: Evidence,
  joined: ReadonlySet<ReadingName>,
): WrittenThere {
  const spokenOf = new Set(misfits.flatMap(namesIn));
  const named = [...spokenOf].flatMap((name) => {
    const reading = readings[name];
    return reading === undefined ? [] : [[name, reading] as const];
  });
  const joinedThere = joined.size === 0 ? joined : new Set([...joined].filter((name) => spokenOf.has(name)));
  return { readings: Object.fromEntries(named), gauges, joined: joinedThere };
}

function namesIn(misfit: Misfit): readonly ReadingName[] {
  const slips = explanationsOf(misfit).flatMap((explanation) => explanation.slips);
  const restored = slips.flatMap(({ restorations }) => restorations.map(({ name }) => name));
  const conflict = misfit.kind === 'suspected' ? (misfit.suspicion.conflict?.names ?? []) : [];
  return [...misfit.names, ...restored, ...conflict];
}

/** What is asked of the number at one place, beside what all others say of it. */
interface PlaceRules {
  readonly name: ReadingName;
  readonly measurement: Measurement;
  /** of one number, without and with a gauge */
  readonly ownVariance: number;
}

function placeRules(name: ReadingName, catalogue: Catalogue): PlaceRules {
  const one = readingOfRecord(name, { scale: [0], zeroOffset: null }, [], catalogue);
  return {
    name,
    measurement: measurementOfReading(catalogue, name),
    ownVariance: one.standardUncertainty ** 2,
  };
}

/** The figures of a record, as `figuresOf` has them of its evidence; returns the number of readings. */
function takeFigures(
  record: RecordInTable,
  places: readonly PlaceRules[],
  gauges: readonly Gauge[],
  catalogue: Catalogue,
  figures: SheetFigures,
): number {
  const { isThere, value, ownVariance, added } = figures;
  isThere.fill(0);
  figures.workingDistanceMm = record.workingDistanceMm ?? DEFAULT_MEASURING_SETTINGS.workingDistanceMm;
  let count = 0;
  for (let place = 0; place < places.length; place += 1) {
    const { name, ownVariance: ofOne } = places[place]!;
    const recorded = record.readings[name];
    if (recorded === undefined) continue;
    count += 1;
    const { scale, zeroOffset } = recorded;
    isThere[place] = 1;
    added[place] = zeroOffset === null ? 0 : freeOfDust(zeroOffset);
    if (scale.length === 1) {
      value[place] = freeOfDust(scale[0]! + added[place]!);
      ownVariance[place] = ofOne;
    } else {
      const reading = readingOfRecord(name, recorded, gauges, catalogue);
      value[place] = reading.value;
      ownVariance[place] = reading.standardUncertainty ** 2;
    }
  }
  for (const place of CAMERA_PLACES) {
    const estimate = record.estimates[nameAt(place)];
    if (estimate === undefined) continue;
    isThere[place] = 1;
    value[place] = estimate.value;
    ownVariance[place] = estimate.standardUncertainty ** 2;
  }
  return count;
}

/** All rows of which something may be said though nothing is suspected; some of these will fit after all. */
function rowsThatMayNotFit(
  { readings, estimates }: RecordInTable,
  places: readonly PlaceRules[],
  figures: SheetFigures,
  catalogue: Catalogue,
): Catalogue {
  const { isThere, value } = figures;
  const rows = new Set<Measurement>();
  for (let place = 0; place < places.length; place += 1) {
    if (isThere[place] === 0) continue;
    const { name, measurement } = places[place]!;
    const { soft, hard } = measurement.plausible;
    const own = value[place]!;
    const estimate = estimates[name];
    const isUsual = own >= soft.low && own <= soft.high && own >= hard.low && own <= hard.high;
    if (
      !isUsual ||
      (!measurement.isSigned && own <= 0) ||
      readings[name]!.scale.length > 1 ||
      (estimate !== undefined && mayDisagree(own, figures.ownVariance[place]!, estimate, measurement))
    ) {
      rows.add(measurement);
    }
  }
  for (const { whole, R, L } of [FAR_DISTANCES, NEAR_DISTANCES]) {
    const [all, right, left] = [placeOf(whole), placeOf(R), placeOf(L)];
    if (isThere[all] === 0 || isThere[right] === 0 || isThere[left] === 0) continue;
    const { tolerance } = places[all]!.measurement;
    const variances = [all, right, left].map((place) => figures.ownVariance[place]!);
    const limit = limitOfSum(tolerance.value, variances.map(Math.sqrt));
    if (Math.abs(value[right]! + value[left]! - value[all]!) <= limit - ROUNDING_SLACK) continue;
    for (const place of [all, right, left]) rows.add(places[place]!.measurement);
  }
  return rows.size === 0 ? [] : catalogue.filter((measurement) => rows.has(measurement));
}

/** Whether hand and camera may lie further apart than the tolerance and both doubts allow; see `compareReading`. */
function mayDisagree(
  hand: number,
  ownVariance: number,
  { value, standardUncertainty }: RecordedEstimate,
  { tolerance }: Measurement,
): boolean {
  const apart = Math.abs(hand - value) + ROUNDING_SLACK;
  return apart > tolerance.value && apart > NORMAL_95 * Math.sqrt(ownVariance + standardUncertainty ** 2);
}

/** What the sheet of a session would show to the reader whose sheet is open. */
export function createSessionAudit(catalogue: Catalogue): AuditSession {
  const blocksInDoubt = createSuspicionBound(catalogue);
  return ({ sheet, camera }) => {
    const rows = sheetRows(openSheet(sheet, camera), camera?.estimates ?? null, catalogue);
    const evidence: Evidence = {
      ...sheetEvidence(rows, catalogue, {
        hasPicture: camera !== null,
        workingDistanceMm: workingDistanceOf(sheet.settings),
        practice: sheet.settings.practice,
      }),
      catalogue,
    };
    const inDoubt = blocksInDoubt(figuresOf(evidence), (place) => faultsOfOne(nameAt(place), evidence));
    const suspicions = inDoubt.size === 0 ? [] : suspicionsWithin(inDoubt, evidence);
    const misfits = sheetMisfits(rows, { suspicions }, catalogue);
    return {
      readingCount: Object.keys(evidence.readings).length,
      found: misfits.length === 0 ? null : { misfits, written: writtenThere(misfits, evidence, joinedReadings(rows)) },
    };
  };
}
