import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { reconcile } from '../../src/core/crosscheck/reconcile.js';
import type { Evidence } from '../../src/core/crosscheck/reconciliation.js';
import { createRecordAudit, createSessionAudit } from '../../src/session/audit-records.js';
import { sheetEvidence } from '../../src/session/evidence.js';
import { workingDistanceOf } from '../../src/session/measuring-settings.js';
import type { Misfit } from '../../src/session/misfits.js';
import { joinedReadings, sheetMisfits } from '../../src/session/misfits.js';
import { evidenceOfRecord, gaugesOfTable, recordOfEvidence } from '../../src/session/record-evidence.js';
import { rowsOfEvidence } from '../../src/session/record-rows.js';
import { readRecordTable, writeRecordTable } from '../../src/session/record-table.js';
import { sheetRows } from '../../src/session/rows.js';
import { openSheet } from '../../src/session/sheet.js';
import { misfitExplanations, misfitSentence } from '../../src/ui/misfit-sentences.js';
import type { WrittenSheet } from '../../src/ui/slip-sentences.js';
import { DEFAULT_SIMULATION, simulateFittings, type SimulationOptions } from '../simulation/simulate-fitting.js';
import { sampleSessions } from '../support/sample-sessions.js';
import { seededRandom } from '../support/seeded-random.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function sentencesOf(misfits: readonly Misfit[], sheet: WrittenSheet): readonly string[] {
  return misfits.flatMap((misfit) => [misfitSentence(misfit, sheet), ...misfitExplanations(misfit, sheet)]);
}

/** A table of simulated sheets, every third PD read several times, one of the repeats now and then far from the others. */
function tableText(seed: number, count: number, options: Partial<SimulationOptions>): string {
  const { uniform } = seededRandom(seed);
  const fittings = [...simulateFittings(seed, count, { ...DEFAULT_SIMULATION, ...options })];
  const records = fittings.map(({ evidence }, index) => {
    const record = recordOfEvidence(evidence, String(index));
    const { pdFar } = record.readings;
    const [one] = pdFar?.scale ?? [];
    if (pdFar === undefined || one === undefined || uniform() > 0.3) return record;
    const scale = [one, one + 0.5, uniform() < 0.3 ? one + 10 : one];
    return { ...record, readings: { ...record.readings, pdFar: { ...pdFar, scale } } };
  });
  return writeRecordTable(records, catalogue);
}

describe('the audit of records', () => {
  it.each([
    ['with and without slips', tableText(41, 200, {})],
    ['without slips', tableText(42, 200, { slipShare: 0 })],
    ['with two slips', tableText(43, 80, { slipShare: 1, secondSlipShare: 1 })],
    ['with a picture, half empty', tableText(44, 120, { cameraShare: 1, emptyShare: 0.5 })],
  ])('finds what the sheet would show: %s', (_, text) => {
    const table = readRecordTable(text, catalogue);
    if (!table.ok) throw new Error(JSON.stringify(table.failure));
    const gauges = gaugesOfTable(table.value, catalogue, () => 'a gauge');
    const audit = createRecordAudit(catalogue, gauges);
    for (const record of table.value.records()) {
      const evidence = evidenceOfRecord(record, gauges, catalogue);
      const misfits = sheetMisfits(rowsOfEvidence(evidence, catalogue), reconcile(evidence), catalogue);
      const { readingCount, found } = audit(record);
      expect(readingCount).toBe(Object.keys(evidence.readings).length);
      expect(found?.misfits ?? []).toEqual(misfits);
      // nor do the sentences need more than what is said to stand there
      if (found !== null) {
        expect(sentencesOf(misfits, { ...found.written, catalogue })).toEqual(sentencesOf(misfits, evidence));
      }
    }
  });
});

describe('the audit of sessions', () => {
  it('finds what the sheet would show', () => {
    const audit = createSessionAudit(catalogue);
    const all = sampleSessions(60);
    const outcomes = all.map((session) => {
      const { sheet, camera } = session;
      const rows = sheetRows(openSheet(sheet, camera), camera?.estimates ?? null, catalogue);
      const evidence: Evidence = {
        ...sheetEvidence(rows, catalogue, {
          hasPicture: camera !== null,
          workingDistanceMm: workingDistanceOf(sheet.settings),
          practice: sheet.settings.practice,
        }),
        catalogue,
      };
      const misfits = sheetMisfits(rows, reconcile(evidence), catalogue);
      const { found } = audit(session);
      expect(found?.misfits ?? []).toEqual(misfits);
      if (found !== null) {
        expect(sentencesOf(misfits, { ...found.written, catalogue })).toEqual(
          sentencesOf(misfits, { ...evidence, joined: joinedReadings(rows) }),
        );
      }
      return misfits.length;
    });
    expect(Math.max(...outcomes)).toBeGreaterThan(0);
  });
});
