import { describe, expect, it } from 'vitest';
import type { ReadingEntry, ReadingHistory } from './reading-history.js';
import { correctionsOf, isContinuedBy, lastEntered, withEntry } from './reading-history.js';

const AT = '2026-11-25T10:00:00.000Z';
const LATER = '2026-11-25T10:05:00.000Z';

function entry(text: string, at: string | null = AT, name: ReadingEntry['name'] = 'pdFar'): ReadingEntry {
  return { name, text, by: 'A', at };
}

describe('a history of entries', () => {
  it('grows by one entry, whatever stood there before', () => {
    const first = withEntry([], '', entry('61'));
    expect(first).toEqual([entry('61')]);
    const second = withEntry(first, '61', entry('', LATER));
    expect(second).toEqual([entry('61'), entry('', LATER)]);
    expect(lastEntered(second, 'pdFar')).toBe('');
    expect(lastEntered(second, 'headWidth')).toBe('');
  });

  it('takes up what counted without an entry of its own', () => {
    expect(withEntry([entry('61')], '71', entry('63', LATER))).toEqual([
      entry('61'),
      entry('71', LATER),
      entry('63', LATER),
    ]);
  });

  it('tells each replaced entry, by who replaced it and when', () => {
    const history: ReadingHistory = [
      entry('61', null),
      entry('149', AT, 'headWidth'),
      { ...entry('71', LATER), by: 'B' },
      entry('71 71.5', LATER),
    ];
    expect(correctionsOf(history)).toEqual([{ name: 'pdFar', earlier: '61', by: 'B', at: LATER }]);
  });

  it('tells a cleared place as a correction, and what comes after it as none', () => {
    expect(correctionsOf([entry('61'), entry('', LATER), entry('63', LATER)])).toMatchObject([{ earlier: '61' }]);
  });
});

describe('continuing a history', () => {
  const earlier = [entry('61'), entry('71', LATER)];

  it('is adding to its end', () => {
    expect(isContinuedBy(earlier, earlier)).toBe(true);
    expect(isContinuedBy([], earlier)).toBe(true);
    expect(isContinuedBy(earlier, [...earlier, entry('63')])).toBe(true);
  });

  it.each([
    ['an entry is missing', [entry('61')]],
    ['an entry comes between', [entry('61'), entry('63'), entry('71', LATER)]],
    ['a text was changed', [entry('62'), entry('71', LATER)]],
    ['a time was changed', [entry('61', LATER), entry('71', LATER)]],
    ['a reader was changed', [{ ...entry('61'), by: 'B' }, entry('71', LATER)]],
    ['a place was changed', [entry('61', AT, 'headWidth'), entry('71', LATER)]],
  ])('is not where %s', (_what, later) => {
    expect(isContinuedBy(earlier, later)).toBe(false);
  });
});
