import { execFileSync, spawnSync } from 'node:child_process';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { sampleSession, sampleSessions } from '../../tests/support/sample-sessions.js';
import { sessionArbitrary } from '../../tests/support/session-arbitrary.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { DecimalSign } from '../core/reading/parse-reading.js';
import type { SessionRecord } from '../core/record/session-record.js';
import { sessionTableColumns, writeSessionTable } from './session-table.js';

const CATALOGUE = assembleCatalogue(OUTSIDE_TABLES);
const DELIMITERS: Readonly<Record<DecimalSign, string>> = { '.': ',', ',': ';' };

type Rows = readonly Readonly<Record<string, string>>[];

function readByPapaparse(table: string, decimalSign: DecimalSign): Rows {
  const { data, errors } = Papa.parse<Record<string, string>>(table, {
    header: true,
    delimiter: DELIMITERS[decimalSign],
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  return data;
}

const PROGRAM = `
import csv, io, json, sys
text = io.TextIOWrapper(sys.stdin.buffer, encoding="utf-8", newline="").read()
print(json.dumps(list(csv.DictReader(io.StringIO(text, newline=""), delimiter=sys.argv[1], strict=True))))
`;

function readByPython(table: string, decimalSign: DecimalSign): Rows {
  const found = spawnSync('python3', ['--version']);
  if (found.status !== 0) throw new Error('This test reads tables by Python’s csv module: install python3.');
  const output = execFileSync('python3', ['-c', PROGRAM, DELIMITERS[decimalSign]], { input: table });
  return JSON.parse(output.toString()) as Rows;
}

const session: SessionRecord = {
  ...sampleSession(1),
  sheet: {
    ...filledSheet(
      {
        pdFar: '63,5 64.5',
        headWidth: '150',
        crestHeightR: '-2,5',
        apicalRadius: '10 loose 9 fits',
        monoPdR: 'about 31',
      },
      {
        second: { pdFar: '64' },
        settings: { workingDistanceText: '350' },
        practice: {
          gauges: [
            {
              id: 'calipers',
              name: 'Calipers',
              serves: ['headWidth'],
              resolution: 1,
              zeroOffset: 2,
              bias: 0.5,
              checkedOn: null,
            },
          ],
          gaugeInUse: { headWidth: 'calipers' },
        },
      },
    ),
    notes: { wearer: '=1+1', squint: true, light: 'dim', remark: 'two "lines";\r\n1,5' },
  },
};

describe('a table of sessions', () => {
  it.each(['.', ','] as const)('is read alike by papaparse and by Python, with the decimal sign %s', (decimalSign) => {
    const table = writeSessionTable([session, ...sampleSessions(3)], CATALOGUE, decimalSign);
    const rows = readByPapaparse(table, decimalSign);
    expect(readByPython(table, decimalSign)).toEqual(rows);
    expect(rows).toHaveLength(4);
    const number = (text: string): string => (decimalSign === ',' ? text.replace('.', ',') : text);
    // readings: the mean of both repeats; 150 + 2 - 0.5 by the gauge; the largest size that fitted
    expect(rows[0]).toMatchObject({
      session: session.id,
      begun: session.begunAt,
      origin: 'desk',
      wearer: "'=1+1",
      remark: 'two "lines";\r\n1,5',
      squint: 'yes',
      light: 'dim',
      reader_first: 'A',
      reader_second: 'B',
      working_distance_mm: '350',
      pd_far_mm_first: '64',
      pd_far_mm_second: '64',
      head_width_mm_first: number('151.5'),
      head_width_mm_second: '',
      crest_height_r_mm_first: number('-2.5'),
      mono_pd_r_mm_first: '',
      not_numbers: 'mono_pd_r_mm_first: about 31',
      places_written: '46',
      camera_disagrees: '2',
    });
    const { pdFar } = session.camera!.estimates;
    expect(Number(rows[0]!['pd_far_mm_camera']!.replace(',', '.'))).toBe(pdFar.value);
    expect(Number(rows[0]!['pd_far_mm_camera_u']!.replace(',', '.'))).toBe(pdFar.standardUncertainty);
  });

  it('has the same columns whatever is in it', () => {
    const header = (table: string): string => table.slice(0, table.indexOf('\r\n'));
    const [none, many] = [writeSessionTable([], CATALOGUE, '.'), writeSessionTable([session], CATALOGUE, '.')];
    expect(header(none)).toBe(header(many));
    expect(header(none).split(',')).toEqual(sessionTableColumns(CATALOGUE));
  });

  it.each(['=1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1', '\n1', '=cmd|x'])(
    'lets no spreadsheet run %j',
    (wearer) => {
      const { sheet } = session;
      const record = { ...session, sheet: { ...sheet, notes: { ...sheet.notes, wearer } } };
      const [row] = readByPapaparse(writeSessionTable([record], CATALOGUE, '.'), '.');
      expect(row?.['wearer']).toBe(`'${wearer}`);
    },
  );

  it('gives back whatever was typed, and no cell that begins a formula', () => {
    fc.assert(
      fc.property(fc.array(sessionArbitrary, { minLength: 1, maxLength: 3 }), (sessions) => {
        const rows = readByPapaparse(writeSessionTable(sessions, CATALOGUE, ','), ',');
        const named = sessions.map(({ sheet }) => sheet.notes.wearer.replaceAll('\0', '\uFFFD'));
        expect(rows.map((row) => (row['wearer'] ?? '').replace(/^'/, ''))).toEqual(
          named.map((wearer) => wearer.replace(/^'/, '')),
        );
        const textCells = rows.flatMap((row) => [
          row['wearer'],
          row['remark'],
          row['not_numbers'],
          row['reader_first'],
        ]);
        expect(textCells.filter((cell) => /^[=+\-@\t\r]/.test(cell ?? ''))).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});
