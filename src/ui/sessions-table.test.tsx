import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { exampleSession } from '../../tests/support/memory-session-store.js';
import type { FindingCounts } from '../core/record/session-record.js';
import { NO_FINDINGS, summaryOf } from '../core/record/session-record.js';
import { nextSort, SessionsTable, stateShown, visitShown } from './sessions-table.js';

const NOW = new Date(2026, 10, 25, 12, 0);

/** A time on a day this many days before, where this runs. */
function ago(days: number, hours: number): string {
  return new Date(2026, 10, 25 - days, hours, 5).toISOString();
}

function summary(id: string, begunAt: string, findings: Partial<FindingCounts> = {}) {
  return summaryOf(exampleSession(id, { begunAt, changedAt: begunAt, findings: { ...NO_FINDINGS, ...findings } }));
}

function markup(sort: Parameters<typeof SessionsTable>[0]['sort']): string {
  const nothing = (): void => undefined;
  return renderToStaticMarkup(
    <SessionsTable
      sessions={[summary('a', ago(0, 9)), { ...summary('b', ago(1, 9)), wearer: '<b>Ann</b>', origin: 'distant' }]}
      listedCount={2}
      now={NOW}
      openId="b"
      sort={sort}
      onSort={nothing}
      selected={new Set(['a'])}
      onSelect={nothing}
      onSelectAll={nothing}
      onOpen={nothing}
    />,
  );
}

describe('the table of sessions', () => {
  it('tells the order of its columns', () => {
    const html = markup({ column: 'wearer', descending: true });
    expect(html.match(/aria-sort="descending"/g)).toHaveLength(1);
    expect(html.match(/aria-sort="none"/g)).toHaveLength(5);
    expect(html).toMatch(/aria-sort="descending"><button[^>]*>Wearer/);
  });

  it('marks the session on the sheet and names what can be selected', () => {
    const html = markup({ column: 'when', descending: true });
    expect(html.match(/aria-current="true"/g)).toHaveLength(1);
    expect(html).toContain('aria-label="Select No name, today, 09:05"');
    expect(html).toContain('At a distance, without supervision');
    expect(html).toContain('&lt;b&gt;Ann&lt;/b&gt;');
  });

  it('turns the order round where a column is chosen again, and begins with the latest visit', () => {
    const byWearer = nextSort({ column: 'when', descending: true }, 'wearer');
    expect(byWearer).toEqual({ column: 'wearer', descending: false });
    expect(nextSort(byWearer, 'wearer')).toEqual({ column: 'wearer', descending: true });
    expect(nextSort(byWearer, 'when')).toEqual({ column: 'when', descending: true });
  });
});

describe('what a row says', () => {
  it('calls today and yesterday so, and all other days by their date', () => {
    expect(visitShown(summary('a', ago(0, 0)), NOW)).toBe('today, 00:05');
    expect(visitShown(summary('a', ago(1, 23)), NOW)).toBe('yesterday, 23:05');
    expect(visitShown(summary('a', ago(2, 9)), NOW)).toBe('23 Nov 2026, 09:05');
  });

  it('names the state with its numbers', () => {
    const said = (findings: Partial<FindingCounts>): string => stateShown(summary('a', ago(0, 9), findings));
    expect(said({ written: 3, misfits: 1 })).toBe('1 thing does not fit');
    expect(said({ written: 3, disagrees: 2 })).toBe('Camera disagrees 2 times');
    expect(said({ written: 3, confirmed: 1 })).toBe('Open: 1 of 3 confirmed');
    expect(said({ written: 3, confirmed: 3 })).toBe('All 3 confirmed');
    expect(said({})).toBe('Nothing written');
  });
});
