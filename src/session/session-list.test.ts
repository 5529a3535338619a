import { describe, expect, it } from 'vitest';
import type { FindingCounts, SessionSummary } from '../core/record/session-record.js';
import { NO_FINDINGS } from '../core/record/session-record.js';
import type { ListQuery } from './session-list.js';
import {
  daysAgo,
  FINDING_FILTERS,
  folded,
  indexSessions,
  listedState,
  listSessions,
  passesFilter,
  sortSessions,
  WHOLE_LIST,
} from './session-list.js';

// Expected values follow from the definitions beside the code; spellings are those of the languages named.

const compare = new Intl.Collator('en').compare;

function session(id: string, change: Partial<SessionSummary> = {}): SessionSummary {
  return {
    id,
    begunAt: '2026-11-20T10:00:00.000Z',
    changedAt: '2026-11-20T10:30:00.000Z',
    origin: 'desk',
    wearer: id,
    remark: '',
    readers: [],
    binocularPd: '',
    camera: null,
    findings: NO_FINDINGS,
    ...change,
  };
}

function counts(change: Partial<FindingCounts>): FindingCounts {
  return { ...NO_FINDINGS, ...change };
}

function found(summaries: readonly SessionSummary[], query: Partial<ListQuery>): readonly string[] {
  const indexed = indexSessions(summaries, () => '25 November 2026');
  return listSessions(indexed, { ...WHOLE_LIST, ...query }, compare).sessions.map(({ id }) => id);
}

describe('the state of a listed session', () => {
  it('names what is most urgent', () => {
    expect(listedState(counts({ written: 4, confirmed: 4, misfits: 1, disagrees: 1 }))).toBe('misfits');
    expect(listedState(counts({ written: 4, confirmed: 4, disagrees: 1 }))).toBe('disagrees');
    expect(listedState(counts({ written: 4, confirmed: 3 }))).toBe('open');
    expect(listedState(counts({ written: 4, confirmed: 4 }))).toBe('confirmed');
    expect(listedState(NO_FINDINGS)).toBe('empty');
  });

  it('lets a session pass each filter that holds for it', () => {
    const passed = (findings: FindingCounts, camera: SessionSummary['camera'] = 'picture') =>
      FINDING_FILTERS.filter((filter) => passesFilter(session('a', { findings, camera }), filter));
    expect(passed(counts({ written: 4, confirmed: 3, misfits: 1, disagrees: 1, cannotTell: 1 }))).toEqual([
      'misfits',
      'disagrees',
      'cannot-tell',
      'open',
    ]);
    expect(passed(counts({ written: 4, confirmed: 4 }), null)).toEqual(['without-camera', 'confirmed']);
    expect(passed(NO_FINDINGS)).toEqual(['empty']);
  });
});

describe('searching', () => {
  it('folds case and diacritics', () => {
    expect(folded('Ångström, Ełk, ÉCOLE, Strauß')).toBe('angstrom, elk, ecole, strauss');
    expect(folded('62,5')).toBe('62.5');
  });

  it('finds in wearer, remark, readers, distance and day; every word has to stand somewhere', () => {
    const all = [
      session('a', { wearer: 'Zoë Müller' }),
      session('b', { remark: 'second visit' }),
      session('c', { readers: ['Ana', 'Björn'] }),
      session('d', { binocularPd: '62.5 63' }),
    ];
    expect(found(all, { search: 'zoe' })).toEqual(['a']);
    expect(found(all, { search: 'MULLER zoe' })).toEqual(['a']);
    expect(found(all, { search: 'mueller' })).toEqual(['a']);
    expect(found(all, { search: 'visit' })).toEqual(['b']);
    expect(found(all, { search: 'bjorn' })).toEqual(['c']);
    expect(found(all, { search: '62,5' })).toEqual(['d']);
    expect(found(all, { search: 'november' })).toHaveLength(4);
    expect(found(all, { search: 'zoe visit' })).toEqual([]);
    expect(found(all, { search: '  ' })).toHaveLength(4);
  });

  it('finds nothing across the end of a field', () => {
    expect(found([session('a', { wearer: 'An', remark: 'na' })], { search: 'anna' })).toEqual([]);
  });
});

describe('filtering', () => {
  const all = [
    session('a', { findings: counts({ written: 2, misfits: 1 }) }),
    session('b', { findings: counts({ written: 2, confirmed: 2 }), camera: 'sweep' }),
    session('c', { findings: counts({ written: 2, disagrees: 1 }), camera: 'picture', origin: 'distant' }),
  ];

  it('shows what any of the chosen filters lets pass', () => {
    expect(found(all, { findings: ['misfits', 'confirmed'] })).toEqual(['a', 'b']);
    expect(found(all, { findings: ['misfits'], origin: 'distant' })).toEqual([]);
    expect(found(all, { origin: 'distant' })).toEqual(['c']);
  });

  it('counts what each filter would leave of what was searched, whatever is chosen', () => {
    const { counts: each } = listSessions(
      indexSessions(all, () => ''),
      { ...WHOLE_LIST, findings: ['misfits'] },
      compare,
    );
    expect(each).toEqual({
      misfits: 1,
      disagrees: 1,
      'cannot-tell': 0,
      'without-camera': 1,
      open: 2,
      confirmed: 1,
      empty: 0,
    });
  });
});

describe('sorting', () => {
  const all = [
    session('a', { wearer: 'Özil', begunAt: '2026-11-18T10:00:00.000Z', binocularPd: '9,5' }),
    session('b', { wearer: '', begunAt: '2026-11-20T10:00:00.000Z', binocularPd: '64' }),
    session('c', { wearer: 'Paul', begunAt: '2026-11-19T10:00:00.000Z', binocularPd: 'n/a' }),
    session('d', { wearer: 'oda', begunAt: '2026-11-17T10:00:00.000Z', binocularPd: '62.5 63' }),
  ];
  const order = (column: ListQuery['sort']['column'], descending: boolean) =>
    sortSessions(all, { column, descending }, compare).map(({ id }) => id);

  it('sorts texts by the alphabet, and what is empty last either way', () => {
    expect(order('wearer', false)).toEqual(['d', 'a', 'c', 'b']);
    expect(order('wearer', true)).toEqual(['c', 'a', 'd', 'b']);
  });

  it('sorts distances as numbers, and what is none last', () => {
    expect(order('pd', false)).toEqual(['a', 'd', 'b', 'c']);
    expect(order('pd', true)).toEqual(['b', 'd', 'a', 'c']);
  });

  it('sorts visits by their time, and puts the latest first among equals', () => {
    expect(order('when', true)).toEqual(['b', 'c', 'a', 'd']);
    expect(order('origin', false)).toEqual(['b', 'c', 'a', 'd']);
    expect(order('origin', true)).toEqual(['b', 'c', 'a', 'd']);
  });
});

it('counts days by the calendar, not by hours', () => {
  const now = new Date(2026, 2, 30, 0, 5);
  expect(daysAgo(new Date(2026, 2, 30, 0, 1).toISOString(), now)).toBe(0);
  expect(daysAgo(new Date(2026, 2, 29, 23, 59).toISOString(), now)).toBe(1);
  // over the night in which clocks change in Europe
  expect(daysAgo(new Date(2026, 2, 28, 12, 0).toISOString(), now)).toBe(2);
});

it('searches a thousand sessions in a few milliseconds', () => {
  const thousand = Array.from({ length: 1000 }, (_, index) =>
    session(String(index), { wearer: `Wearer ${index}`, remark: 'a remark of some length, as they are' }),
  );
  const indexed = indexSessions(thousand, () => '25 November 2026');
  const before = process.cpuUsage();
  const { sessions } = listSessions(indexed, { ...WHOLE_LIST, search: 'wearer 99' }, compare);
  const { user, system } = process.cpuUsage(before);
  // Of the processor's time, far above what it takes (about 2 ms) and far below what anybody notices.
  expect((user + system) / 1000).toBeLessThan(50);
  // 99, 990 to 999, and 199 to 899
  expect(sessions).toHaveLength(19);
});
