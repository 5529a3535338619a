import { parseDecimal, partsOfSeries } from '../core/reading/parse-reading.js';
import type { FindingCounts, SessionOrigin, SessionSummary } from '../core/record/session-record.js';
import { unreachable } from '../core/result.js';

/** How a session stands, the most urgent first. */
export const LISTED_STATES = ['misfits', 'disagrees', 'open', 'confirmed', 'empty'] as const;

export type ListedState = (typeof LISTED_STATES)[number];

/** What a list can be narrowed to; a session may be several of these at once. */
export const FINDING_FILTERS = [
  'misfits',
  'disagrees',
  'cannot-tell',
  'without-camera',
  'open',
  'confirmed',
  'empty',
] as const;

export type FindingFilter = (typeof FINDING_FILTERS)[number];

export const LIST_COLUMNS = ['wearer', 'when', 'readers', 'pd', 'origin', 'state'] as const;

export type ListColumn = (typeof LIST_COLUMNS)[number];

export interface ListSort {
  readonly column: ListColumn;
  readonly descending: boolean;
}

/** What the list is asked to show. */
export interface ListQuery {
  /** as typed; every word of it has to stand somewhere in what is listed of a session */
  readonly search: string;
  /** any of these; none asks for nothing */
  readonly findings: readonly FindingFilter[];
  /** null for all */
  readonly origin: SessionOrigin['kind'] | null;
  readonly sort: ListSort;
}

/** All sessions, the latest visit first. */
export const WHOLE_LIST: ListQuery = {
  search: '',
  findings: [],
  origin: null,
  sort: { column: 'when', descending: true },
};

/** A session with what is searched, folded once. */
export interface IndexedSession {
  readonly summary: SessionSummary;
  readonly folded: string;
}

export interface ListedSessions {
  readonly sessions: readonly SessionSummary[];
  /** how many of the searched sessions each filter would leave */
  readonly counts: Readonly<Record<FindingFilter, number>>;
}

/** What is most urgent of a session. */
export function listedState(findings: FindingCounts): ListedState {
  if (findings.misfits > 0) return 'misfits';
  if (findings.disagrees > 0) return 'disagrees';
  if (findings.written === 0) return 'empty';
  return findings.confirmed < findings.written ? 'open' : 'confirmed';
}

export function passesFilter({ findings, camera }: SessionSummary, filter: FindingFilter): boolean {
  switch (filter) {
    case 'misfits':
      return findings.misfits > 0;
    case 'disagrees':
      return findings.disagrees > 0;
    case 'cannot-tell':
      return findings.cannotTell > 0;
    case 'without-camera':
      return camera === null;
    case 'open':
      return findings.written > 0 && findings.confirmed < findings.written;
    case 'confirmed':
      return findings.written > 0 && findings.confirmed >= findings.written;
    case 'empty':
      return findings.written === 0;
    default:
      return unreachable(filter);
  }
}

/** Letters that Unicode does not take apart into a letter and a mark, and how they are typed without. */
const UNMARKED: Readonly<Record<string, string>> = {
  ß: 'ss',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  æ: 'ae',
  œ: 'oe',
  ı: 'i',
};

/** A text without case and diacritics; a decimal comma becomes a point. */
export function folded(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßøłđðþæœı]/g, (letter) => UNMARKED[letter] ?? letter)
    .replace(/(\d),(?=\d)/g, '$1.');
}

/** As German spells its umlauts where a keyboard has none, folded. */
function spelledOut(text: string): string {
  return folded(text.normalize('NFC').replace(/[äöüÄÖÜ]/g, (letter) => `${folded(letter)}e`));
}

/** Parts what may be searched, so that no word is found across two fields. */
const BETWEEN = '\n';

/**
 * Sessions made ready to be searched.
 *
 * @param whenShown what the list says of the day, so that it can be searched as well
 */
export function indexSessions(
  summaries: readonly SessionSummary[],
  whenShown: (summary: SessionSummary) => string,
): readonly IndexedSession[] {
  return summaries.map((summary) => {
    const texts = [summary.wearer, summary.remark, ...summary.readers, summary.binocularPd, whenShown(summary)];
    const typed = texts.join(BETWEEN);
    const plain = folded(typed);
    return { summary, folded: /[äöü]/i.test(typed.normalize('NFC')) ? plain + BETWEEN + spelledOut(typed) : plain };
  });
}

/**
 * What the list shows, in its order.
 *
 * @param compareTexts in the alphabet of the screen's language
 */
export function listSessions(
  indexed: readonly IndexedSession[],
  query: ListQuery,
  compareTexts: (a: string, b: string) => number,
): ListedSessions {
  const sought = folded(query.search)
    .split(/\s+/)
    .filter((word) => word !== '');
  const searched = indexed.flatMap(({ summary, folded: text }) =>
    (query.origin === null || summary.origin === query.origin) && sought.every((word) => text.includes(word))
      ? [summary]
      : [],
  );
  const counts = Object.fromEntries(
    FINDING_FILTERS.map((filter) => [filter, searched.filter((summary) => passesFilter(summary, filter)).length]),
  ) as Record<FindingFilter, number>;
  const left =
    query.findings.length === 0
      ? searched
      : searched.filter((summary) => query.findings.some((filter) => passesFilter(summary, filter)));
  return { sessions: sortSessions(left, query.sort, compareTexts), counts };
}

/** Sessions in the order of a column. What is empty there comes last either way; what is equal, the latest visit first. */
export function sortSessions(
  summaries: readonly SessionSummary[],
  { column, descending }: ListSort,
  compareTexts: (a: string, b: string) => number,
): readonly SessionSummary[] {
  const direction = descending ? -1 : 1;
  const keyed = summaries.map((summary) => ({ summary, key: sortKey(summary, column) }));
  keyed.sort((a, b) => {
    if (a.key === null || b.key === null) {
      return Number(a.key === null) - Number(b.key === null) || byVisit(a.summary, b.summary);
    }
    const order =
      typeof a.key === 'number' && typeof b.key === 'number'
        ? a.key - b.key
        : compareTexts(String(a.key), String(b.key));
    return direction * order || byVisit(a.summary, b.summary);
  });
  return keyed.map(({ summary }) => summary);
}

function sortKey(summary: SessionSummary, column: ListColumn): string | number | null {
  switch (column) {
    case 'wearer':
      return summary.wearer === '' ? null : summary.wearer;
    case 'when':
      return Date.parse(summary.begunAt);
    case 'readers':
      return summary.readers.length === 0 ? null : summary.readers.join(' ');
    case 'pd':
      return firstNumber(summary.binocularPd);
    case 'origin':
      return summary.origin === 'desk' ? 0 : 1;
    case 'state':
      return LISTED_STATES.indexOf(listedState(summary.findings));
    default:
      return unreachable(column);
  }
}

/** The first of several repeats; null where it is no number. */
function firstNumber(typed: string): number | null {
  const [first = ''] = partsOfSeries(typed);
  const number = parseDecimal(first);
  return number.ok ? number.value : null;
}

function byVisit(a: SessionSummary, b: SessionSummary): number {
  return Date.parse(b.begunAt) - Date.parse(a.begunAt);
}

/** Whole calendar days, where this runs, from the day of `iso` to that of `now`: 0 is the same day, 1 the day before. */
export function daysAgo(iso: string, now: Date): number {
  const then = new Date(iso);
  const day = (date: Date): number => Date.UTC(date.getFullYear(), date.getMonth(), date.getDate());
  return Math.round((day(now) - day(then)) / 86_400_000);
}
