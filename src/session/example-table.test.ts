import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { createRecordAudit } from './audit-records.js';
import { exampleTable } from './example-table.js';
import { explanationsOf } from './explanations.js';
import { gaugesOfTable } from './record-evidence.js';
import { readRecordTable } from './record-table.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

describe('the example of a table', () => {
  it('is understood, shows every kind of column, and has slips in the records that are said to have some', () => {
    const text = exampleTable(catalogue);
    for (const end of ['record', 'working_distance_mm', '_offset', '_camera', '_camera_u']) {
      expect(text).toMatch(new RegExp(`(^|,|_mm)${end}(,|\\r)`));
    }
    const table = readRecordTable(text, catalogue);
    if (!table.ok) throw new Error(JSON.stringify(table.failure));
    const look = createRecordAudit(
      catalogue,
      gaugesOfTable(table.value, catalogue, () => ''),
    );
    const found = [...table.value.records()].map((record) => look(record).found);
    expect(found.map((one) => one !== null)).toEqual([false, true, false, true]);
    const restored = found.map((one) => explanationsOf(one?.misfits[0] ?? NONE)[0]?.slips[0].restorations[0]);
    // 33 and 33 make 66; 31 and 31 make 62, of which near is 58 (62 W / (W + 27) at 400 mm)
    expect(restored[1]).toMatchObject({ name: 'pdFar', written: 56, restored: 66 });
    expect(restored[3]).toMatchObject({ name: 'pdNear', written: 85, restored: 58 });
  });
});

const NONE = { kind: 'unusual', names: [], value: 0, usual: { low: 0, high: 0 } } as const;
