import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { SessionSummary } from '../core/record/session-record.js';
import type { FlaggedRecord } from '../session/audit.js';
import type { AuditedFinding, AuditVocabulary } from '../session/audit-list.js';
import type { AuditStage, AuditState, AuditSubject } from '../session/audit-run.js';
import { explanationsOf } from '../session/explanations.js';
import { words } from './language.js';
import { plainNumber, tenthNumber, withUnit } from './numbers.js';
import { nameShown, visitShown } from './sessions-table.js';
import { timeShown } from './sessions-when.js';
import { isProbableSlip } from './slip-marks.js';
import { isOneMeasurement, listWords, sideLetter, upperFirst } from './slip-places.js';
import type { WrittenSheet } from './slip-sentences.js';
import { probabilityWords, writtenNumber } from './slip-sentences.js';

/** What a flagged record is called, and where it is found. */
export interface RecordNaming {
  readonly name: string;
  /** its line in the table, or the time of the visit */
  readonly where: string;
}

/** @param summary of the kept session that the record is; null for a record of a table, and for a session that is not listed */
export function recordNaming({ origin }: FlaggedRecord, summary: SessionSummary | null, now: Date): RecordNaming {
  if (origin.kind === 'table') {
    return { name: origin.record ?? words.audit.noName, where: words.audit.line(origin.line) };
  }
  return summary === null
    ? { name: words.audit.noName, where: '' }
    : { name: nameShown(summary), where: upperFirst(visitShown(summary, now)) };
}

/** The names by which the list is searched, in the language of the moment. */
export function auditVocabulary(catalogue: Catalogue): AuditVocabulary {
  return {
    kinds: words.audit.kinds,
    slips: words.slipsInShort,
    measurements: catalogue.map(
      ({ id }) => `${words.measurements[id].shortName} ${words.measurements[id].inSentences}`,
    ),
  };
}

/** What a finding says in the cells of a row. */
export interface FindingCells {
  /** `Crest height R and L` */
  readonly reading: string;
  /** `3, 5`; empty where nothing stands there that is a number */
  readonly written: string;
  /** `R 5, L 3 mm`; null where nothing explains it */
  readonly restored: string | null;
  /** `right and left swapped, 86 %` */
  readonly cause: string | null;
  /** `97 %`, or what it is where it is no matter of probability */
  readonly sureness: string;
}

export function findingCells(finding: AuditedFinding, sheet: WrittenSheet): FindingCells {
  const { misfit, restorations, places } = finding;
  const { catalogue } = sheet;
  const explanations = explanationsOf(misfit);
  const [best] = explanations;
  const isProbable = isProbableSlip(explanations);
  const restored = valuesWords(
    restorations.map((one) => [one.name, one.restored]),
    catalogue,
  );
  return {
    reading: readingsWords(places, catalogue),
    written: writtenWords(finding, sheet),
    restored: best === undefined ? null : isProbable ? restored : words.audit.perhaps(restored),
    cause:
      best === undefined
        ? null
        : words.audit.cause(
            listWords([...new Set(finding.slips)].map((slip) => words.slipsInShort[slip])),
            probabilityWords(best.probability),
          ),
    sureness:
      misfit.kind === 'suspected' ? probabilityWords(misfit.suspicion.probability) : words.audit.kinds[misfit.kind],
  };
}

function writtenWords({ misfit, restorations, places }: AuditedFinding, sheet: WrittenSheet): string {
  const { catalogue } = sheet;
  if (restorations.length > 0) {
    return valuesWords(
      restorations.map((one) => [one.name, one.written]),
      catalogue,
    );
  }
  const [name] = places;
  if (name === undefined) return '';
  if (misfit.kind === 'refused' && 'typed' in misfit.failure) return misfit.failure.typed;
  const { unit } = measurementOfReading(catalogue, name);
  if (misfit.kind === 'far-off-repeat') return withUnit(listWords(misfit.farOff.map(plainNumber)), unit);
  const said = misfit.kind === 'refused' ? misfit.failure : misfit;
  const value = 'value' in said ? said.value : sheet.readings[name]?.value;
  return value === undefined ? '' : withUnit(writtenNumber(name, value, sheet), unit);
}

/** `71 mm`; of both sides `R 5, L 3 mm`; of several rows in the order in which they are named, `20, 9 mm`. */
function valuesWords(values: readonly (readonly [ReadingName, number])[], catalogue: Catalogue): string {
  const names = values.map(([name]) => name);
  const isOfBothSides = values.length > 1 && isOneMeasurement(names, catalogue);
  const units = new Set(names.map((name) => measurementOfReading(catalogue, name).unit));
  return values
    .map(([name, value], index) => {
      const { unit } = measurementOfReading(catalogue, name);
      const isLast = index === values.length - 1;
      const number = tenthNumber(value);
      const said = isLast || units.size > 1 || unit === 'deg' ? withUnit(number, unit) : number;
      return isOfBothSides ? `${sideLetter(name, catalogue)} ${said}` : said;
    })
    .join(', ');
}

/** `Crest height R and L`; short, as it stands alone. */
function readingsWords(places: readonly ReadingName[], catalogue: Catalogue): string {
  const shortName = (name: ReadingName): string =>
    words.measurements[measurementOfReading(catalogue, name).id].shortName;
  const [first] = places;
  if (first !== undefined && places.length > 1 && isOneMeasurement(places, catalogue)) {
    return `${shortName(first)} ${listWords(places.map((name) => sideLetter(name, catalogue)))}`;
  }
  return listWords(places.map((name) => `${shortName(name)} ${sideLetter(name, catalogue)}`.trim()));
}

/** What an audit that has ended came to. */
export function auditResult({ stage, rows }: Pick<AuditState, 'stage' | 'rows'>): string {
  if (stage.kind === 'stopped') return words.audit.stopped(stage.recordCount, rows.length);
  if (stage.kind !== 'done') return '';
  const { recordCount } = stage.totals;
  return rows.length === 0 ? words.audit.none(recordCount) : words.audit.result(rows.length, recordCount);
}

/** What was looked through, and when. */
export function auditSubject(subject: AuditSubject, at: Date): string {
  const time = timeShown(at.toISOString());
  return subject.kind === 'table'
    ? words.audit.ofTable(subject.name, time)
    : words.audit.ofSessions(subject.summaries.length, subject.isPart, time);
}

/** How far an audit has come. */
export function auditProgress(
  { isReading, recordCount, flaggedCount }: Extract<AuditStage, { kind: 'running' }>,
  subject: AuditSubject,
): string {
  if (!isReading) return words.audit.progress(recordCount, flaggedCount);
  return subject.kind === 'table'
    ? words.audit.reading
    : words.audit.readingSessions(recordCount, subject.summaries.length);
}
