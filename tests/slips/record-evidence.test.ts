import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { evidenceOfRecord, gaugesOfTable, recordOfEvidence } from '../../src/session/record-evidence.js';
import { readRecordTable, writeRecordTable } from '../../src/session/record-table.js';
import { simulateFittings } from '../simulation/simulate-fitting.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function tableOf(text: string) {
  const table = readRecordTable(text, catalogue);
  if (!table.ok) throw new Error(JSON.stringify(table.failure));
  return table.value;
}

describe('evidence of a record', () => {
  const table = tableOf(
    [
      'record,working_distance_mm,pd_far_mm,pd_far_mm_camera,pd_far_mm_camera_u,head_width_mm,head_width_mm_offset',
      'A,350,63 64,62.5,0.5,47,100',
      'B,,63,,,150,',
    ].join('\n'),
  );
  const gauges = gaugesOfTable(table, catalogue, () => '');
  const [a, b] = [...table.records()].map((record) => evidenceOfRecord(record, gauges, catalogue));

  it('adds what the gauge needs, and says so', () => {
    expect(a?.readings.headWidth).toMatchObject({ value: 147, origin: { gauge: { zeroOffset: 100 } } });
    expect(b?.readings.headWidth).toMatchObject({ value: 150, origin: { gauge: null } });
  });

  it('names the gauges of the table for every record, so that an amount can have been forgotten', () => {
    expect(gauges).toMatchObject([{ serves: ['headWidth'], zeroOffset: 100, bias: 0 }]);
    expect(b?.gauges).toBe(gauges);
    // the same gauge by its id
    expect(a?.readings.headWidth?.origin?.gauge?.id).toBe(gauges[0]?.id);
  });

  it('takes the mean of repeats', () => {
    expect(a?.readings.pdFar).toMatchObject({ value: 63.5, origin: { repeats: { mean: 63.5, range: 1 } } });
  });

  it('takes the camera’s estimate with its 95 % interval', () => {
    const { value, standardUncertainty, low, high } = a?.estimates?.pdFar ?? {};
    expect([value, standardUncertainty]).toEqual([62.5, 0.5]);
    // 1.96 standard deviations either way
    expect(low).toBeCloseTo(61.52, 3);
    expect(high).toBeCloseTo(63.48, 3);
    expect(b?.estimates).toBeNull();
  });

  it('takes the usual working distance where the record has none', () => {
    expect([a?.workingDistanceMm, b?.workingDistanceMm]).toEqual([350, 400]);
  });
});

describe('record of evidence', () => {
  it('brings simulated sheets through a file and back with the same values', () => {
    const fittings = [...simulateFittings(11, 12)];
    const records = fittings.map(({ evidence }, index) => recordOfEvidence(evidence, String(index)));
    const table = tableOf(writeRecordTable(records, catalogue));
    const gauges = gaugesOfTable(table, catalogue, () => '');
    const back = [...table.records()].map((record) => evidenceOfRecord(record, gauges, catalogue));
    expect(back).toHaveLength(12);
    for (const [index, { evidence }] of fittings.entries()) {
      const again = back[index];
      expect(Object.keys(again?.readings ?? {})).toEqual(Object.keys(evidence.readings));
      for (const [name, { value, origin }] of Object.entries(evidence.readings)) {
        const reading = again?.readings[name as keyof typeof evidence.readings];
        expect(reading?.value).toBeCloseTo(value, 9);
        expect(reading?.origin?.gauge?.zeroOffset).toBe(origin?.gauge?.zeroOffset);
      }
      expect(again?.estimates?.pdFar?.value).toBe(evidence.estimates?.pdFar?.value);
      expect(again?.workingDistanceMm).toBe(evidence.workingDistanceMm);
    }
  });
});
