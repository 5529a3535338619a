import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { flaggedRecord, suspectedBy, unusualAt } from '../../tests/support/flagged-records.js';
import { exampleSession } from '../../tests/support/memory-session-store.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { summaryOf } from '../core/record/session-record.js';
import { createAuditIndex, listAudited, WHOLE_AUDIT } from '../session/audit-list.js';
import { auditResult, auditSubject, auditVocabulary, findingCells } from './audit-sentences.js';
import { AuditTable } from './audit-table.js';
import { ENGLISH_TAG } from './language.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const AT = new Date(2026, 10, 26, 3, 12);
const index = createAuditIndex(catalogue);
const ROWS = [
  flaggedRecord(
    0,
    '<b>Ann</b>',
    [suspectedBy('ten-off', 'headWidth', [143, 153], [0.8, 0.7]), unusualAt('pdFar', 80)],
    {
      headWidth: 143,
    },
  ),
  flaggedRecord(1, null, [suspectedBy('digit-wrong', 'headWidth', [143, 153], [0.7, 0.2])], { headWidth: 143 }),
  { ...flaggedRecord(2, null, [unusualAt('pdFar', 80)]), origin: { kind: 'session', sessionId: 's1' } } as const,
].map((record) => index.add(record, ''));

const nothing = (): void => undefined;

function markup(opened: readonly number[], kept: readonly string[] = ['s1']): string {
  return renderToStaticMarkup(
    <AuditTable
      lines={listAudited(ROWS, WHOLE_AUDIT, auditVocabulary(catalogue))}
      from={50}
      lineCount={53}
      opened={new Set(opened)}
      summaries={new Map([['s1', summaryOf(exampleSession('s1'))]])}
      keptIds={new Set(kept)}
      openId="s1"
      at={AT}
      catalogue={catalogue}
      tag={ENGLISH_TAG}
      sort={WHOLE_AUDIT.sort}
      onSort={nothing}
      onToggle={nothing}
      onOpen={nothing}
    />,
  );
}

describe('the table of flagged records', () => {
  it('tells its order, and which rows of how many these are', () => {
    const html = markup([]);
    expect(html).toMatch(/aria-sort="descending"><button[^>]*>How sure/);
    expect(html.match(/aria-sort="none"/g)).toHaveLength(2);
    expect(html).toContain('aria-rowcount="54"');
    expect(html.match(/<tr[^>]*aria-rowindex="5[234]"/g)).toHaveLength(3);
    expect(html.match(/aria-current="true"/g)).toHaveLength(1);
    expect(html).toContain('&lt;b&gt;Ann&lt;/b&gt;');
  });

  it('shows all findings of a row that is opened, and the way to its session', () => {
    expect(markup([])).not.toContain('Open this session');
    expect(markup([])).not.toContain('wrong ten:');
    const html = markup([0, 2]);
    expect(html.match(/aria-expanded="true"/g)).toHaveLength(2);
    expect(html).toContain('Head width was probably read at the wrong ten: 143 instead of 153 mm (70 %).');
    expect(html).toContain('PD, distance: 80 mm is unusual');
    expect(html).toContain('Open this session');
  });

  it('offers no way to a session that is gone', () => {
    expect(markup([])).toContain('data-session="s1"');
    const html = markup([2], []);
    expect(html).toContain('Deleted since');
    expect(html).not.toContain('data-session');
    expect(html).not.toContain('Open this session');
  });
});

describe('what a row says of a finding', () => {
  const cellsOf = (row: number) => findingCells(ROWS[row]!.findings[0]!, { ...ROWS[row]!.record.written, catalogue });

  it('is the number that was meant where that is probable, else one that may be', () => {
    expect(cellsOf(0)).toEqual({
      reading: 'Head width',
      written: '143 mm',
      restored: '153 mm',
      cause: 'wrong ten, 70 %',
      sureness: '80 %',
    });
    expect(cellsOf(1)).toMatchObject({ restored: 'perhaps 153 mm', cause: 'one digit wrong, 20 %' });
    expect(cellsOf(2)).toMatchObject({ written: '80 mm', restored: null, cause: null, sureness: 'only unusual' });
  });

  it('names the sides where both are meant', () => {
    const restorations = [
      { name: 'crestHeightR', written: 3, restored: 5 },
      { name: 'crestHeightL', written: 5, restored: 3 },
    ] as const;
    const misfit = {
      kind: 'refused',
      names: ['crestHeightR'],
      failure: { kind: 'not-a-number', typed: 'x', place: null },
      explanations: [{ slips: [{ kind: 'sides-swapped', restorations }], probability: 0.9 }],
    } as const;
    const row = index.add(flaggedRecord(0, null, [misfit]), '');
    expect(findingCells(row.findings[0]!, { ...row.record.written, catalogue })).toMatchObject({
      reading: 'Crest height R and L',
      written: 'R 3, L 5 mm',
      restored: 'R 5, L 3 mm',
      sureness: 'cannot be',
    });
  });
});

describe('what a row says of two rows of a sheet', () => {
  it('is their numbers in the order of their names', () => {
    const restorations = [
      { name: 'headWidth', written: 140, restored: 152 },
      { name: 'templeWidth', written: 152, restored: 140 },
    ] as const;
    const misfit = {
      kind: 'refused',
      names: ['headWidth'],
      failure: { kind: 'not-a-number', typed: 'x', place: null },
      explanations: [{ slips: [{ kind: 'rows-swapped', restorations }], probability: 0.9 }],
    } as const;
    const row = index.add(flaggedRecord(0, null, [misfit]), '');
    expect(findingCells(row.findings[0]!, { ...row.record.written, catalogue })).toMatchObject({
      reading: 'Head width and Temple width',
      written: '140, 152 mm',
      restored: '152, 140 mm',
    });
  });
});

describe('what an audit came to', () => {
  const totals = (recordCount: number) => ({ stage: { kind: 'done', totals: { recordCount }, at: AT } }) as never;

  it('is said plainly, also where nothing was found', () => {
    expect(auditResult({ ...(totals(1204) as object), rows: [] } as never)).toBe(
      'None of 1,204 records was flagged; that does not make them right.',
    );
    expect(auditResult({ ...(totals(1204) as object), rows: ROWS } as never)).toBe(
      '3 of 1,204 records have something that does not fit.',
    );
    expect(auditResult({ stage: { kind: 'stopped', recordCount: 40, at: AT }, rows: ROWS })).toMatch(
      /^Stopped after 40 records: 3 of them flagged\./,
    );
  });

  it('names what was looked through, and when', () => {
    expect(auditSubject({ kind: 'table', file: new Blob(), name: 'a.csv' }, AT)).toBe(
      'a.csv, looked through at 03:12.',
    );
    const summaries = [summaryOf(exampleSession('s1')), summaryOf(exampleSession('s2'))];
    expect(auditSubject({ kind: 'sessions', summaries, isPart: true }, AT)).toBe(
      '2 sessions that were selected, looked through at 03:12.',
    );
    expect(auditSubject({ kind: 'sessions', summaries, isPart: false }, AT)).toMatch(/^All 2 sessions kept here,/);
  });
});
