import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { decodeRecordFile, readRecordTable } from '../../src/session/record-table.js';
import { problemLines } from './problem-lines.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function linesOf(text: string): readonly string[] {
  const table = readRecordTable(text, catalogue);
  if (table.ok) throw new Error('The table was read.');
  return problemLines('a.csv', table.failure);
}

describe('problemLines', () => {
  it.each([
    [
      'record,pd_fra_mm\nA,63\n',
      'a.csv, line 1, column 2 (pd_fra_mm): No column is called “pd_fra_mm”. Is pd_far_mm meant?',
    ],
    [
      'record,shoes,pd_far_mm\nA,42,63\n',
      'a.csv, line 1, column 2 (shoes): No column is called “shoes”. Rename it or take it away.',
    ],
    [
      'record,pd_far_mm\nA,6three\n',
      'a.csv, line 2, column 2 (pd_far_mm): “6three” is no number. Write digits only, and leave the cell empty where nothing was read.',
    ],
    [
      'record,pd_far_mm\n\nA,63,5\n',
      'a.csv, line 3: The row has 3 fields, the header 2. Where commas part the fields, a number with a decimal comma needs quotation marks.',
    ],
    [
      'record,pd_far_mm\nA\n',
      'a.csv, line 2: The row has 1 field, the header 2. Empty cells need their separators too.',
    ],
    ['', 'a.csv: The file is empty.'],
    [
      '63;31\n',
      'a.csv, line 1: The first row should name the columns, but holds “63 31”. Put a row with their names above it.',
    ],
  ])('says of %j where and what', (text, line) => {
    expect(linesOf(text)).toEqual([line]);
  });

  it('has a sentence for every problem that a file can have', () => {
    const texts = [
      'record\nA\n',
      'pd_far_mm\n',
      'pd_far_mm,\n63,\n',
      'pd_far_mm,pd_far_mm\n63,63\n',
      'pd_far_mm,pd_far_mm_camera\n63,63\n',
      'pd_far_mm\n"63\n',
      'pd_far_mm\n6\u00003\n',
      'pd_far_mm,pd_far_mm_camera,pd_far_mm_camera_u\n63,63,\n63,,1\n63,63 64,1\n63,63,0\n',
    ];
    const lines = texts.flatMap((text) => linesOf(text));
    expect(lines).toHaveLength(texts.length + 3);
    expect(lines.every((line) => /: [A-Z“].*[.]/.test(line))).toBe(true);
    expect(new Set(lines).size).toBe(lines.length);
  });

  it('says how many problems are not shown, and cuts what is long', () => {
    const lines = linesOf(`pd_far_mm\n${`${'x'.repeat(100)}\n`.repeat(30)}`);
    expect(lines).toHaveLength(21);
    expect(lines[0]).toBe(
      `a.csv, line 2, column 1 (pd_far_mm): “${'x'.repeat(40)}…” is no number. Write digits only, and leave the cell empty where nothing was read.`,
    );
    expect(lines[20]).toBe('a.csv: 10 more problems of 30 are not shown.');
  });

  it('names the encoding', () => {
    const text = decodeRecordFile(new Uint8Array([0xff, 0xfe, 0x41, 0]));
    expect(text.ok ? [] : problemLines('a.csv', text.failure)).toEqual([
      'a.csv: The file is UTF-16. Save it as CSV in UTF-8.',
    ]);
  });
});
