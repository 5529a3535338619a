import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { reconciledSheet } from '../../../tests/support/reconciled-sheet.js';
import { assembleCatalogue } from '../../core/catalogue/catalogue.js';
import { openSheet } from '../../session/sheet.js';
import { demo } from './demo.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const state = openSheet(demo.sheet);
const { rows, reconciliation } = reconciledSheet(state, catalogue);

describe('the invented wearer', () => {
  it('has a reading in every place of the sheet, and all can be read', () => {
    const fields = rows.flatMap((row) => row.fields);
    expect(fields.filter(({ reading }) => !reading.ok)).toEqual([]);
  });

  it('fits together but for the two slips that were put in', () => {
    // 61 for 71; and 6 + 4 where the 4 were in the 6 already
    expect(reconciliation.suspicions.map(({ explanations }) => explanations[0]?.slips)).toMatchObject([
      [{ kind: 'ten-off', restorations: [{ name: 'pdFar', written: 61, restored: 71 }] }],
      [{ kind: 'offset-twice', restorations: [{ name: 'crestHeightL', written: 10, restored: 6 }] }],
    ]);
  });
});
