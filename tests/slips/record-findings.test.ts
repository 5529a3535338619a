import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { createAuditTally } from '../../src/session/audit-findings.js';
import { createRecordAudit } from '../../src/session/audit-records.js';
import { gaugesOfTable } from '../../src/session/record-evidence.js';
import { readRecordTable } from '../../src/session/record-table.js';
import { findingLines, findingsOfRecord, nameGauge, summaryLines } from './record-findings.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function auditOf(text: string) {
  const table = readRecordTable(text, catalogue);
  if (!table.ok) throw new Error(JSON.stringify(table.failure));
  const audit = createRecordAudit(catalogue, gaugesOfTable(table.value, catalogue, nameGauge));
  const tally = createAuditTally();
  const all = [...table.value.records()].map((record) => {
    const audited = audit(record);
    tally.add(audited.readingCount, audited.found?.misfits ?? []);
    return findingsOfRecord(record, audited, catalogue);
  });
  return { all, totals: tally.totals() };
}

function findingsOf(text: string) {
  return auditOf(text).all;
}

const HEADER = 'record,pd_far_mm,mono_pd_r_mm,mono_pd_l_mm,pd_near_mm,head_width_mm';

describe('findings of a record', () => {
  it('are none where all fits', () => {
    const [findings] = findingsOf(`${HEADER}\nA,63,31.5,31.5,59,152\n`);
    expect(findings).toMatchObject({ record: 'A', line: 2, readingCount: 5, findings: [] });
    expect(findings === undefined ? null : findingLines(findings)).toEqual([]);
  });

  it('name the slip, the column and the number that it would have been', () => {
    // 36.5 is 63.5 with its first two digits swapped; the other readings belong to 63.5
    const [findings] = findingsOf(`${HEADER}\nA,36.5,32,31.5,59.5,152\n`);
    const [first] = findings?.findings ?? [];
    expect(first).toMatchObject({
      kind: 'suspected',
      columns: ['pd_far_mm'],
      explanations: [
        {
          slips: [{ kind: 'digits-swapped', restorations: [{ column: 'pd_far_mm', written: 36.5, restored: 63.5 }] }],
        },
      ],
    });
    expect(first?.probability).toBeGreaterThan(0.95);
    expect(first?.sentences.join(' ')).toContain('63.5 mm');
    expect(findings === undefined ? null : findingLines(findings)[0]).toBe('A (line 2)');
  });

  it('keep what cannot be, and seek the slip in it', () => {
    const [findings] = findingsOf(`${HEADER}\n,635,32,31.5,59.5,152\n`);
    const [first] = findings?.findings ?? [];
    expect(first).toMatchObject({ kind: 'refused', columns: ['pd_far_mm'], probability: null });
    expect(first?.explanations[0]?.slips).toMatchObject([
      { restorations: [{ column: 'pd_far_mm', written: 635, restored: 63.5 }] },
    ]);
    expect(findings === undefined ? null : findingLines(findings)[0]).toBe('Record (line 2)');
  });

  it('point out a repeat far from the others, hand against camera, and what is zero', () => {
    const all = findingsOf(
      'pd_far_mm,pd_far_mm_camera,pd_far_mm_camera_u,box_lens_width_mm\n' +
        '63 63.5 63 73 63.5,,,52\n63,67,0.3,52\n63,,,0\n',
    );
    expect(all.map(({ findings }) => findings.map(({ kind }) => kind))).toEqual([
      expect.arrayContaining(['far-off-repeat']),
      [expect.stringMatching(/suspected|disagrees/)],
      ['refused'],
    ]);
  });

  it('are counted', () => {
    const { totals: summary } = auditOf(
      `${HEADER}\nA,63,31.5,31.5,59,152\nB,36.5,32,31.5,59.5,152\nC,635,32,31.5,59.5,152\n`,
    );
    expect(summary).toMatchObject({ recordCount: 3, withFindings: 2, byKind: { suspected: 1, refused: 1 } });
    const lines = summaryLines(summary);
    expect(lines[0]).toBe('3 records read, 2 with something that does not fit:');
    expect(lines).toContain('       1  with a number that cannot be');
    expect(lines).toContain('       1  two digits swapped');
    expect(summaryLines(auditOf(`${HEADER}\nA,63,31.5,31.5,59,152\n`).totals)).toEqual([
      '1 record read, 0 with something that does not fit.',
    ]);
  });
});
