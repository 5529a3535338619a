import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue } from '../../core/catalogue/catalogue.js';
import { reconcile } from '../../core/crosscheck/reconcile.js';
import { sheetEvidence } from '../../session/evidence.js';
import { sheetRows } from '../../session/rows.js';
import { openSheet } from '../../session/sheet.js';
import { demo } from './demo.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const state = openSheet(demo.sheet);
const rows = sheetRows(state, null, catalogue);

describe('the invented wearer', () => {
  it('has a reading in every place of the sheet, and all can be read', () => {
    const fields = rows.flatMap((row) => row.fields);
    expect(fields.filter(({ reading }) => !reading.ok)).toEqual([]);
  });

  it('fits together but for the two slips that were put in', () => {
    const evidence = sheetEvidence(rows, catalogue, {
      hasPicture: false,
      workingDistanceMm: 400,
      practice: state.settings.practice,
    });
    const { suspicions } = reconcile({ ...evidence, catalogue });
    // 61 for 71; and 6 + 4 where the 4 were in the 6 already
    expect(suspicions.map(({ explanations }) => explanations[0]?.slips)).toMatchObject([
      [{ kind: 'ten-off', restorations: [{ name: 'pdFar', written: 61, restored: 71 }] }],
      [{ kind: 'offset-twice', restorations: [{ name: 'crestHeightL', written: 10, restored: 6 }] }],
    ]);
  });
});
