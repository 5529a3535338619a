import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { flaggedRecord, suspectedBy, unusualAt } from '../../tests/support/flagged-records.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { FlaggedRecord } from '../session/audit.js';
import { joinTotals } from '../session/audit-findings.js';
import { createAuditIndex } from '../session/audit-list.js';
import type { AuditedExport, AuditFileTools } from './audit-files.js';
import {
  AUDIT_FILE_COLUMNS,
  auditJsonFrame,
  auditJsonRecord,
  auditTableHeader,
  auditTableRows,
  writeInSlices,
} from './audit-files.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const TOOLS: AuditFileTools = {
  catalogue,
  nameOf: ({ origin }) => (origin.kind === 'table' ? origin.record : 'Zoë, 2026-11-24'),
};

function exported(record: FlaggedRecord): AuditedExport {
  const row = createAuditIndex(catalogue).add(record, '');
  return { row, findings: row.findings };
}

const SWAPPED = {
  kind: 'suspected',
  names: ['crestHeightR', 'crestHeightL'],
  suspicion: {
    names: ['crestHeightR', 'crestHeightL'],
    probability: 0.97345,
    explanations: [
      {
        slips: [
          {
            kind: 'sides-swapped',
            restorations: [
              { name: 'crestHeightR', written: 3, restored: 5.5 },
              { name: 'crestHeightL', written: 5.5, restored: 3 },
            ],
          },
        ],
        probability: 0.7126,
      },
    ],
    conflict: null,
    expected: { value: 5, standardUncertainty: 1 },
  },
} as const;

const READINGS = { crestHeightR: 3, crestHeightL: 5.5 };

function cellsOf(text: string, delimiter: string): readonly (readonly string[])[] {
  return Papa.parse<string[]>(text, { delimiter, newline: '\r\n', skipEmptyLines: true }).data;
}

describe('flagged records as CSV', () => {
  it('has the asked columns first', () => {
    expect(auditTableHeader('.')).toBe(
      'line,record,measurement,written,restored,probability,kind,sentence,slip,slip_probability\r\n',
    );
    expect(auditTableHeader(',')).toMatch(/^line;record;/);
  });

  it('gives each number that a slip would replace a row', () => {
    const text = auditTableRows(exported(flaggedRecord(0, 'A "1"', [SWAPPED], READINGS)), TOOLS, '.');
    const [right, left] = cellsOf(text, ',');
    expect(text).toContain('"A ""1"""');
    expect(right).toHaveLength(AUDIT_FILE_COLUMNS.length);
    expect(right?.slice(0, 7)).toEqual(['2', 'A "1"', 'crest_height_r_mm', '3', '5.5', '0.973', 'suspected']);
    expect(left?.slice(2, 5)).toEqual(['crest_height_l_mm', '5.5', '3']);
    expect(right?.slice(8)).toEqual(['sides-swapped', '0.713']);
    expect(right?.[7]).toContain('Crest height R and L were probably swapped');
  });

  it('has what is written where nothing explains it, and nothing for what is no probability', () => {
    const text = auditTableRows(exported(flaggedRecord(5, null, [unusualAt('headWidth', 170.5)])), TOOLS, ',');
    expect(cellsOf(text, ';')[0]).toEqual([
      '7',
      '',
      'head_width_mm',
      '170,5',
      '',
      '',
      'unusual',
      expect.stringMatching(/^Head width: 170\.5 mm is unusual/),
      '',
      '',
    ]);
  });

  it.each(['=1+1', '+49', '-A', '@x', '\t=1', '＝1'])('keeps %j from being run by a spreadsheet', (name) => {
    const text = auditTableRows(exported(flaggedRecord(0, name, [SWAPPED], READINGS)), TOOLS, '.');
    expect(cellsOf(text, ',')[0]?.[1]).toBe(`'${name}`);
  });
});

describe('flagged records as JSON', () => {
  it('has the keys that the command writes', () => {
    const misfits = [suspectedBy('ten-off', 'headWidth', [143, 153], [0.8, 0.7])];
    const { before, between, after } = auditJsonFrame({ ...joinTotals([]), recordCount: 9, withFindings: 1 });
    const one = auditJsonRecord(exported(flaggedRecord(3, 'A', misfits, { headWidth: 143 })), TOOLS);
    const file = JSON.parse(before + one + between + one + after) as unknown;
    const record = {
      record: 'A',
      line: 5,
      readingCount: 1,
      findings: [
        {
          kind: 'suspected',
          columns: ['head_width_mm'],
          probability: 0.8,
          expected: null,
          conflictsWith: null,
          explanations: [
            {
              probability: 0.7,
              slips: [{ kind: 'ten-off', restorations: [{ column: 'head_width_mm', written: 143, restored: 153 }] }],
            },
          ],
          sentences: [
            'Head width: 143 mm does not fit the rest.',
            'Head width was probably read at the wrong ten: 143 instead of 153 mm (70 %).',
          ],
        },
      ],
    };
    expect(file).toEqual({
      summary: { recordCount: 9, withFindings: 1, byKind: expect.any(Object) as unknown, probableSlips: [] },
      records: [record, record],
    });
  });

  it('names a kept session by its wearer and its id', () => {
    const record: FlaggedRecord = {
      ...flaggedRecord(0, null, [SWAPPED], READINGS),
      origin: { kind: 'session', sessionId: 's1' },
    };
    expect(JSON.parse(auditJsonRecord(exported(record), TOOLS))).toMatchObject({
      record: 'Zoë, 2026-11-24',
      line: null,
      session: 's1',
    });
  });
});

describe('writing in slices', () => {
  it('leaves no piece out, and lets others work between', async () => {
    let turns = 0;
    const timer = setInterval(() => {
      turns += 1;
    }, 0);
    const told: number[] = [];
    const pieces = await writeInSlices(
      Array.from({ length: 60 }, (_, index) => index),
      (index) => {
        const until = performance.now() + 2;
        while (performance.now() < until);
        return String(index);
      },
      (done) => told.push(done),
    );
    clearInterval(timer);
    expect(pieces.map(Number)).toEqual(Array.from({ length: 60 }, (_, index) => index));
    expect(told.length).toBeGreaterThan(2);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
    expect(turns).toBeGreaterThan(2);
  });
});
