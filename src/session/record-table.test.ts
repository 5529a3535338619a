import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { FittingRecord, RecordInTable, RecordProblem } from './record-table.js';
import {
  decodeRecordFile,
  LARGEST_TABLE_BYTES,
  plainDecimal,
  readRecordTable,
  SHOWN_PROBLEMS,
  writeRecordTable,
} from './record-table.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function recordsOf(text: string): readonly RecordInTable[] {
  const table = readRecordTable(text, catalogue);
  if (!table.ok) throw new Error(JSON.stringify(table.failure));
  const records = [...table.value.records()];
  expect(records).toHaveLength(table.value.recordCount);
  return records;
}

function problemsOf(text: string): readonly RecordProblem[] {
  const table = readRecordTable(text, catalogue);
  if (table.ok) throw new Error('The table was read.');
  // it goes from thread to thread
  expect(structuredClone(table.failure)).toEqual(table.failure);
  return table.failure.problems;
}

const SAMPLE = [
  'record,working_distance_mm,pd_far_mm,mono_pd_r_mm,mono_pd_l_mm,pd_far_mm_camera,pd_far_mm_camera_u,head_width_mm,head_width_mm_offset',
  'A1,400,63.5,31.5,32,63.1,0.4,47,100',
  '"B, second visit",,62 62.5 62,,,,,,',
].join('\r\n');

describe('reading a table of records', () => {
  it('takes readings, repeats, estimates and offsets from their columns', () => {
    expect(recordsOf(SAMPLE)).toEqual([
      {
        line: 2,
        id: 'A1',
        workingDistanceMm: 400,
        readings: {
          pdFar: { scale: [63.5], zeroOffset: null },
          monoPdR: { scale: [31.5], zeroOffset: null },
          monoPdL: { scale: [32], zeroOffset: null },
          headWidth: { scale: [47], zeroOffset: 100 },
        },
        estimates: { pdFar: { value: 63.1, standardUncertainty: 0.4 } },
      },
      {
        line: 3,
        id: 'B, second visit',
        workingDistanceMm: null,
        readings: { pdFar: { scale: [62, 62.5, 62], zeroOffset: null } },
        estimates: {},
      },
    ]);
  });

  it('can be read again and again', () => {
    const table = readRecordTable(SAMPLE, catalogue);
    if (!table.ok) throw new Error('The table was refused.');
    expect([...table.value.records()]).toEqual([...table.value.records()]);
  });

  it('knows which amounts the gauges of a column need', () => {
    const rows = ['47,100', '147,0', '50,100', '150,', ...[1, 2, 3, 4].map((offset) => `150,${offset}`)];
    const table = readRecordTable(`head_width_mm,head_width_mm_offset\n${rows.join('\n')}`, catalogue);
    expect(table.ok && [...table.value.zeroOffsets]).toEqual([['headWidth', [100, 0, 1, 2]]]);
  });

  it.each([
    ['semicolons with decimal commas', 'record;pd_far_mm;pd_near_mm\nA;63,5;60,5 61\n'],
    ['tabs with decimal commas', 'record\tpd_far_mm\tpd_near_mm\nA\t63,5\t60,5 61\n'],
    ['commas with quoted decimal commas', 'record,pd_far_mm,pd_near_mm\nA,"63,5","60,5 61"\n'],
    ['quotation marks everywhere', '"record","pd_far_mm","pd_near_mm"\n"A","63.5","60.5 61"\n'],
    ['a byte-order mark', '\uFEFFrecord,pd_far_mm,pd_near_mm\nA,63.5,60.5 61\n'],
    ['a byte-order mark and quotation marks', '\uFEFF"record","pd_far_mm",pd_near_mm\nA,63.5,60.5 61\n'],
    ['ends of lines of an old kind', 'record,pd_far_mm,pd_near_mm\rA,63.5,60.5 61\r'],
    ['mixed ends of lines and no last one', 'record,pd_far_mm,pd_near_mm\r\nA,63.5,60.5 61'],
    ['blank lines and rows', '\n  \nrecord,pd_far_mm,pd_near_mm\n\n,,\nA,63.5,60.5 61\n , ,\n\n'],
    ['spaces and capitals', ' Record , PD_far_mm,pd_near_mm \n A ,  63.5,60.5  61 \n'],
    ['another order of columns', 'pd_near_mm,record,pd_far_mm\n60.5 61,A,63.5\n'],
    ['repeats parted by a quoted semicolon', 'record;pd_far_mm;pd_near_mm\nA;63,5;"60,5; 61"\n'],
    ['a column of tabs in commas', 'record,pd_far_mm,pd_near_mm\nA,63.5,60.5\t61\n'],
  ])('reads %s', (_, text) => {
    expect(recordsOf(text)).toMatchObject([
      { id: 'A', readings: { pdFar: { scale: [63.5] }, pdNear: { scale: [60.5, 61] } } },
    ]);
  });

  it('keeps numbers that cannot be, so that the cross-check can say what happened', () => {
    const [record] = recordsOf('pd_far_mm,bridge_projection_mm,crest_height_r_mm\n635,-2.5,\u22123\n');
    expect(record?.readings).toEqual({
      pdFar: { scale: [635], zeroOffset: null },
      bridgeProjection: { scale: [-2.5], zeroOffset: null },
      crestHeightR: { scale: [-3], zeroOffset: null },
    });
  });

  it('counts lines as an editor does, also below a quoted line feed', () => {
    const records = recordsOf('record,pd_far_mm\r\n"two\r\nlines",63\r\n\r\nB,64\r\n');
    expect(records.map(({ id, line }) => [id, line])).toEqual([
      ['two\nlines', 2],
      ['B', 5],
    ]);
    expect(problemsOf('record,pd_far_mm\n"two\nlines",63\n\nB,6x\n')).toMatchObject([{ place: { line: 5 } }]);
  });

  it('counts lines across the blocks in which it reads', () => {
    const rows = Array.from({ length: 2500 }, (_, index) => `"${index}\n",63`);
    const problems = problemsOf(`record,pd_far_mm\n${rows.join('\n')}\nlast,none\n`);
    expect(problems).toEqual([
      { kind: 'bad-number', place: { line: 5002, column: 2, columnName: 'pd_far_mm' }, text: 'none' },
    ]);
  });
});

describe('refusing a table of records', () => {
  const place = (line: number, column: number, columnName: string) => ({ line, column, columnName });
  const cases: readonly (readonly [string, string, readonly RecordProblem[]])[] = [
    ['an empty file', '', [{ kind: 'empty' }]],
    ['blank lines', '\uFEFF\n \r\n', [{ kind: 'empty' }]],
    ['a header alone', 'record,pd_far_mm\n', [{ kind: 'no-records' }]],
    ['numbers in place of the header', 'A;63,5;60\n', [{ kind: 'no-header', line: 1, text: 'A 63,5 60' }]],
    ['a table without readings', 'record\nA\n', [{ kind: 'no-readings' }]],
    [
      'columns that nobody knows',
      'record,pd_fra_mm,shoe size\nA,63,42\n',
      [
        { kind: 'unknown-column', place: place(1, 2, 'pd_fra_mm'), nearest: 'pd_far_mm' },
        { kind: 'unknown-column', place: place(1, 3, 'shoe size'), nearest: null },
      ],
    ],
    ['a column without a name', 'record,pd_far_mm,\nA,63,\n', [{ kind: 'unnamed-column', place: place(1, 3, '') }]],
    [
      'a column twice',
      'pd_far_mm,record,PD_far_mm\n63,A,64\n',
      [{ kind: 'duplicate-column', place: place(1, 3, 'PD_far_mm'), firstColumn: 1 }],
    ],
    [
      'an estimate without its uncertainty, and an offset of nothing',
      'pd_near_mm,pd_far_mm_camera,head_width_mm_offset\n60,63,100\n',
      [
        { kind: 'partner-missing', place: place(1, 2, 'pd_far_mm_camera'), partner: 'pd_far_mm_camera_u' },
        { kind: 'partner-missing', place: place(1, 3, 'head_width_mm_offset'), partner: 'head_width_mm' },
      ],
    ],
    [
      'bad numbers',
      'record,pd_far_mm,pd_near_mm\nA,63 mm,60\nB,63,"1,060.5"\nC,6e1,60 x\n',
      [
        { kind: 'bad-number', place: place(2, 2, 'pd_far_mm'), text: '63 mm' },
        { kind: 'bad-number', place: place(3, 3, 'pd_near_mm'), text: '1,060.5' },
        { kind: 'bad-number', place: place(4, 2, 'pd_far_mm'), text: '6e1' },
        { kind: 'bad-number', place: place(4, 3, 'pd_near_mm'), text: '60 x' },
      ],
    ],
    [
      'decimal commas where commas part the fields',
      'record,pd_far_mm,pd_near_mm\nA,63,5,60\nB,63\n',
      [
        { kind: 'field-count', line: 2, found: 4, expected: 3 },
        { kind: 'field-count', line: 3, found: 2, expected: 3 },
      ],
    ],
    [
      'half an estimate',
      'record,pd_far_mm,pd_far_mm_camera,pd_far_mm_camera_u\nA,63,63.2,\nB,63,,0.5\n',
      [
        { kind: 'half-estimate', place: place(2, 4, 'pd_far_mm_camera_u') },
        { kind: 'half-estimate', place: place(3, 3, 'pd_far_mm_camera') },
      ],
    ],
    [
      'what must be above zero, and what must be one number',
      'working_distance_mm,pd_far_mm,pd_far_mm_camera,pd_far_mm_camera_u\n0,63,63 64,-0.5\n',
      [
        { kind: 'not-positive', place: place(2, 1, 'working_distance_mm'), text: '0' },
        { kind: 'several-numbers', place: place(2, 3, 'pd_far_mm_camera'), text: '63 64' },
        { kind: 'not-positive', place: place(2, 4, 'pd_far_mm_camera_u'), text: '-0.5' },
      ],
    ],
    [
      'a quotation mark that is not closed, after what can be read',
      'record,pd_far_mm\nA,x\n\nB,"63\nC,64\n',
      [
        { kind: 'bad-number', place: place(2, 2, 'pd_far_mm'), text: 'x' },
        { kind: 'quotation', line: 4 },
      ],
    ],
    ['a quotation mark within a quoted field', 'record,pd_far_mm\n"A"b,63\n', [{ kind: 'quotation', line: 2 }]],
    [
      'a quotation mark that is not closed in the header',
      '"record,pd_far_mm\nA,63\n',
      [{ kind: 'quotation', line: 1 }],
    ],
    ['a NUL', 'record,pd_far_mm\nA,6\u00003\n', [{ kind: 'nul', line: 2 }]],
  ];

  it.each(cases)('names %s', (_, text, problems) => {
    expect(problemsOf(text)).toEqual(problems);
  });

  it('counts all problems and shows the first', () => {
    const table = readRecordTable(`pd_far_mm\n${'x\n'.repeat(1234)}`, catalogue);
    if (table.ok) throw new Error('The table was read.');
    expect(table.failure.problemCount).toBe(1234);
    expect(table.failure.problems).toHaveLength(SHOWN_PROBLEMS);
  });

  it('never throws, whatever the text', () => {
    const pieces = fc.constantFrom(
      'record',
      'pd_far_mm',
      ',',
      ';',
      '\t',
      '"',
      '\n',
      '\r\n',
      '63',
      '6,5',
      ' ',
      '\0',
      'x',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 40 }), (parts) => {
        const table = readRecordTable(parts.join(''), catalogue);
        if (table.ok) expect([...table.value.records()]).toHaveLength(table.value.recordCount);
        else expect(table.failure.problemCount).toBeGreaterThan(0);
      }),
    );
  });
});

describe('decoding a file of records', () => {
  const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
  const problems = (bytes: Uint8Array) => {
    const text = decodeRecordFile(bytes);
    return text.ok ? text.value : text.failure.problems;
  };

  it('takes UTF-8 with and without its mark', () => {
    expect(problems(bytesOf('record\nM\u00fcnster'))).toBe('record\nM\u00fcnster');
    expect(problems(new Uint8Array([0xef, 0xbb, 0xbf, 0x61]))).toBe('a');
  });

  it('knows UTF-16 by its mark, either way round', () => {
    expect(problems(new Uint8Array([0xff, 0xfe, 0x61, 0]))).toEqual([{ kind: 'utf-16' }]);
    expect(problems(new Uint8Array([0xfe, 0xff, 0, 0x61]))).toEqual([{ kind: 'utf-16' }]);
  });

  it('names the line that is no UTF-8', () => {
    const latin1 = Uint8Array.from(Buffer.from('record\nABC\nM\u00fcnster\nZ', 'latin1'));
    expect(problems(latin1)).toEqual([{ kind: 'not-utf-8', line: 3 }]);
  });

  it('refuses what is too large without looking at it', () => {
    expect(problems(new Uint8Array(LARGEST_TABLE_BYTES + 1))).toEqual([
      { kind: 'too-large', bytes: LARGEST_TABLE_BYTES + 1, limitBytes: LARGEST_TABLE_BYTES },
    ]);
  });
});

describe('writing a table of records', () => {
  it('writes only the columns that are used, as RFC 4180 has it', () => {
    const records: readonly FittingRecord[] = [
      {
        id: 'a "b", c',
        workingDistanceMm: null,
        readings: { pdFar: { scale: [63.5, 63], zeroOffset: null } },
        estimates: { pdNear: { value: 60, standardUncertainty: 0.25 } },
      },
    ];
    // fields with a comma or a quotation mark stand in quotation marks, which are doubled within (RFC 4180, section 2, 6 and 7)
    expect(writeRecordTable(records, catalogue)).toBe(
      'record,pd_far_mm,pd_near_mm_camera,pd_near_mm_camera_u\r\n"a ""b"", c",63.5 63,60,0.25\r\n',
    );
  });

  it('gives every record back that it wrote', () => {
    const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);
    const positive = fc.double({ min: 1e-9, max: 1e6, noNaN: true });
    const name = fc.constantFrom(...READING_NAMES);
    const record = fc.record({
      id: fc.option(
        fc
          .string({ unit: 'grapheme', minLength: 1 })
          .map((text) => text.replace(/[\0\r]/g, '').trim())
          .filter((text) => text !== ''),
      ),
      workingDistanceMm: fc.option(positive),
      readings: fc.dictionary(
        name,
        fc.record({ scale: fc.array(number, { minLength: 1, maxLength: 3 }), zeroOffset: fc.option(number) }),
        { minKeys: 1, noNullPrototype: true },
      ),
      estimates: fc.dictionary(name, fc.record({ value: number, standardUncertainty: positive }), {
        noNullPrototype: true,
      }),
    });
    fc.assert(
      fc.property(fc.array(record, { minLength: 1, maxLength: 4 }), (records) => {
        const back = recordsOf(writeRecordTable(records, catalogue));
        expect(back.map(({ line: _, ...rest }) => rest)).toEqual(records);
      }),
    );
  });
});

describe('plainDecimal', () => {
  it.each([
    [63.5, '63.5'],
    [-3, '-3'],
    [1e-7, '0.0000001'],
    [-1.25e-9, '-0.00000000125'],
    [1.5e21, '1500000000000000000000'],
    [0, '0'],
  ])('writes %d as %s', (value, text) => {
    expect(plainDecimal(value)).toBe(text);
  });

  it('keeps every number as it is', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = plainDecimal(value);
        expect(text).toMatch(/^-?\d+(\.\d+)?$/);
        expect(Number(text) + 0).toBe(value + 0);
      }),
    );
  });
});
