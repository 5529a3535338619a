import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { MeasurementId, ReadingName } from '../core/catalogue/measurement.js';
import type { Restoration, SlipKind } from '../core/crosscheck/slip.js';
import { SLIP_KINDS } from '../core/crosscheck/slip.js';
import { unreachable } from '../core/result.js';
import type { FlaggedRecord } from './audit.js';
import type { Misfit } from './misfits.js';
import { explanationsOf } from './explanations.js';
import { folded } from './session-list.js';

// Flagged records as a list that is narrowed and sorted. What that needs is worked out once, as the records arrive: with twenty
// thousand of them a letter in the search must not be felt.

export type MisfitKind = Misfit['kind'];

/** The gravest first, as a sheet has them. */
export const MISFIT_KINDS = [
  'refused',
  'suspected',
  'disagrees',
  'readers-differ',
  'far-off-repeat',
  'does-not-add-up',
  'unusual',
] as const satisfies readonly MisfitKind[];

/** Something that does not fit, with all by which it is found and sorted. */
export interface AuditedFinding {
  readonly misfit: Misfit;
  /** what its most probable explanation would replace; empty where nothing explains it */
  readonly restorations: readonly Restoration[];
  /** the slips of that explanation */
  readonly slips: readonly SlipKind[];
  /** the places that it is about: those of `restorations`, else the most doubtful one */
  readonly places: readonly ReadingName[];
  /** all measurements that it concerns, those of `places` first */
  readonly measurements: readonly MeasurementId[];
  /** the numbers that stand there or would, with a point, each after a blank */
  readonly numbers: string;
  /** its kind, slips and measurements as places in the list of all topics, by which words are sought in it */
  readonly topics: readonly number[];
  /** how sure it is that something is wrong: more is surer; 2 for what cannot be, a probability, below 0 for what has none */
  readonly sureness: number;
  /** the first of `measurements`, counted in the order of the sheet */
  readonly measurementPlace: number;
}

/** A flagged record in the list. */
export interface AuditedRow {
  readonly record: FlaggedRecord;
  /** what it is called by, folded for searching */
  readonly folded: string;
  /** the gravest first, at least one */
  readonly findings: readonly AuditedFinding[];
}

/** A row as the list shows it: by the gravest of the findings that were asked for. */
export interface AuditedLine {
  readonly row: AuditedRow;
  readonly finding: AuditedFinding;
}

export const AUDIT_COLUMNS = ['place', 'measurement', 'probability'] as const;

export type AuditColumn = (typeof AUDIT_COLUMNS)[number];

export interface AuditSort {
  readonly column: AuditColumn;
  readonly descending: boolean;
}

/** What the list is asked to show. A record is shown where one of its findings is all that is asked for. */
export interface AuditQuery {
  /** as typed; every word of it has to be found */
  readonly search: string;
  /** any of these; none asks for nothing */
  readonly kinds: readonly MisfitKind[];
  /** null for all */
  readonly slip: SlipKind | null;
  readonly measurement: MeasurementId | null;
  readonly sort: AuditSort;
}

/** All that was flagged, the surest first. */
export const WHOLE_AUDIT: AuditQuery = {
  search: '',
  kinds: [],
  slip: null,
  measurement: null,
  sort: { column: 'probability', descending: true },
};

/** What kinds, slips and measurements are called on the screen, so that they are found by that. */
export interface AuditVocabulary {
  readonly kinds: Readonly<Record<MisfitKind, string>>;
  readonly slips: Readonly<Record<SlipKind, string>>;
  /** in the order of the catalogue */
  readonly measurements: readonly string[];
}

/** Makes flagged records ready for the list, and counts them as they come. */
export interface AuditIndex {
  /** @param name what the screen calls the record */
  readonly add: (record: FlaggedRecord, name: string) => AuditedRow;
  readonly counts: () => AuditCounts;
}

/** In how many of the rows something occurs; what occurs in none is left out. */
export interface AuditCounts {
  /** the gravest first */
  readonly kinds: ReadonlyMap<MisfitKind, number>;
  /** most frequent first */
  readonly slips: ReadonlyMap<SlipKind, number>;
  /** in the order of the sheet */
  readonly measurements: ReadonlyMap<MeasurementId, number>;
}

export const NO_COUNTS: AuditCounts = { kinds: new Map(), slips: new Map(), measurements: new Map() };

/** Topics are counted one after the other: kinds, slips, measurements. */
const FIRST_SLIP = MISFIT_KINDS.length;
const FIRST_MEASUREMENT = FIRST_SLIP + SLIP_KINDS.length;

export function createAuditIndex(catalogue: Catalogue): AuditIndex {
  const ids = catalogue.map(({ id }) => id);
  const placeOfId = new Map(ids.map((id, place) => [id, place]));
  const counted = new Array<number>(FIRST_MEASUREMENT + ids.length).fill(0);
  const countsOf = <Key>(keys: readonly Key[], from: number): (readonly [Key, number])[] =>
    keys.map((key, index) => [key, counted[from + index] ?? 0] as const).filter(([, count]) => count > 0);

  const findingOf = (misfit: Misfit, { written }: FlaggedRecord): AuditedFinding => {
    const slips = explanationsOf(misfit)[0]?.slips ?? [];
    const restorations = slips.flatMap((slip) => slip.restorations);
    const places = restorations.length > 0 ? restorations.map(({ name }) => name) : misfit.names.slice(0, 1);
    const measurements = [
      ...new Set([...places, ...misfit.names].map((name) => measurementOfReading(catalogue, name).id)),
    ];
    const measurementPlaces = measurements.map((id) => placeOfId.get(id) ?? 0);
    const values =
      restorations.length > 0
        ? restorations.flatMap((one) => [one.written, one.restored])
        : places.flatMap((name) => written.readings[name]?.value ?? []);
    return {
      misfit,
      restorations,
      slips: slips.map(({ kind }) => kind),
      places,
      measurements,
      numbers: values.map((value) => ` ${value}`).join(''),
      topics: [
        MISFIT_KINDS.indexOf(misfit.kind),
        ...slips.map(({ kind }) => FIRST_SLIP + SLIP_KINDS.indexOf(kind)),
        ...measurementPlaces.map((place) => FIRST_MEASUREMENT + place),
      ],
      sureness: surenessOf(misfit),
      measurementPlace: measurementPlaces[0] ?? 0,
    };
  };

  return {
    add: (record, name) => {
      const findings = record.misfits.map((misfit) => findingOf(misfit, record));
      const topics = new Set(findings.flatMap((finding) => finding.topics));
      for (const topic of topics) counted[topic] = (counted[topic] ?? 0) + 1;
      return { record, folded: folded(name), findings };
    },
    counts: () => ({
      kinds: new Map(countsOf(MISFIT_KINDS, 0)),
      slips: new Map(countsOf(SLIP_KINDS, FIRST_SLIP).sort(([, a], [, b]) => b - a)),
      measurements: new Map(countsOf(ids, FIRST_MEASUREMENT)),
    }),
  };
}

/** What cannot be is wrong for certain; what is no matter of probability follows after all that is, by its gravity. */
function surenessOf(misfit: Misfit): number {
  if (misfit.kind === 'refused') return 2;
  return misfit.kind === 'suspected' ? misfit.suspicion.probability : -MISFIT_KINDS.indexOf(misfit.kind);
}

/** One word that is sought. */
interface SoughtWord {
  readonly word: string;
  /** for each topic whether the word stands in its name */
  readonly hasTopic: readonly boolean[];
}

function soughtWords(search: string, { kinds, slips, measurements }: AuditVocabulary): readonly SoughtWord[] {
  const topics = [
    ...MISFIT_KINDS.map((kind) => kinds[kind]),
    ...SLIP_KINDS.map((kind) => slips[kind]),
    ...measurements,
  ].map(folded);
  return folded(search)
    .split(/\s+/)
    .filter((word) => word !== '')
    .map((word) => ({ word, hasTopic: topics.map((topic) => topic.includes(word)) }));
}

/** Tells of each row which of its findings are asked for, the gravest first. */
export function findingsAskedFor(
  query: AuditQuery,
  vocabulary: AuditVocabulary,
): (row: AuditedRow) => readonly AuditedFinding[] {
  const words = soughtWords(query.search, vocabulary);
  return (row) => row.findings.filter((finding) => isFound(row, finding, query, words));
}

function isFound(row: AuditedRow, finding: AuditedFinding, query: AuditQuery, words: readonly SoughtWord[]): boolean {
  return isAskedFor(finding, query) && words.every((word) => isCalled(row, word) || isAbout(finding, word));
}

/** What the list shows, in its order. */
export function listAudited(
  rows: readonly AuditedRow[],
  query: AuditQuery,
  vocabulary: AuditVocabulary,
): readonly AuditedLine[] {
  const words = soughtWords(query.search, vocabulary);
  const lines: AuditedLine[] = [];
  for (const row of rows) {
    const finding = row.findings.find((one) => isFound(row, one, query, words));
    if (finding !== undefined) lines.push({ row, finding });
  }
  return sortAudited(lines, query.sort);
}

function isCalled({ record: { origin }, folded: name }: AuditedRow, { word }: SoughtWord): boolean {
  return name.includes(word) || (origin.kind === 'table' && String(origin.line) === word);
}

function isAskedFor(finding: AuditedFinding, { kinds, slip, measurement }: AuditQuery): boolean {
  return (
    (kinds.length === 0 || kinds.includes(finding.misfit.kind)) &&
    (slip === null || finding.slips.includes(slip)) &&
    (measurement === null || finding.measurements.includes(measurement))
  );
}

function isAbout({ topics, numbers }: AuditedFinding, { word, hasTopic }: SoughtWord): boolean {
  return topics.some((topic) => hasTopic[topic]) || numbers.includes(` ${word}`);
}

/** Chosen: finer than two probabilities are told apart on the screen by far. */
const SURENESS_STEPS = 1e6;

/** More lines than a table of records can have: what is above in a key is the order, what is below is the line. */
const LINES = 2 ** 21;

/**
 * Lines in the order of a column; what is equal there stays in the order of the source. Numbers are sorted, not lines: that is
 * some ten times as fast.
 */
function sortAudited(lines: readonly AuditedLine[], { column, descending }: AuditSort): readonly AuditedLine[] {
  const direction = descending ? -1 : 1;
  const orderOf = orderOfColumn(column);
  const keys = Float64Array.from(lines, (line, index) => direction * orderOf(line) * LINES + index).sort();
  return Array.from(keys, (key) => lines[((key % LINES) + LINES) % LINES]).filter((line) => line !== undefined);
}

/** A whole number that is greater for what comes later. */
function orderOfColumn(column: AuditColumn): (line: AuditedLine) => number {
  switch (column) {
    case 'place':
      return ({ row }) => row.record.place;
    case 'measurement':
      return ({ finding }) => finding.measurementPlace;
    case 'probability':
      return ({ finding }) => Math.round(finding.sureness * SURENESS_STEPS);
    default:
      return unreachable(column);
  }
}

/** A column that is chosen anew begins in the order that is mostly wanted of it: the surest first, all else from the top. */
export function nextAuditSort(sort: AuditSort, column: AuditColumn): AuditSort {
  return { column, descending: sort.column === column ? !sort.descending : column === 'probability' };
}
