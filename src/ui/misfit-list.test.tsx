import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { Explanation, Suspicion } from '../core/crosscheck/reconciliation.js';
import { sheetMisfits } from '../session/misfits.js';
import { sheetRows } from '../session/rows.js';
import { openSheet, sheetReducer } from '../session/sheet.js';
import { EMPTY_TYPED_SHEET } from '../core/record/typed-sheet.js';
import type { Equipment } from './equipment.js';
import { EquipmentContext } from './equipment.js';
import { MisfitList } from './misfit-list.js';
import type { SheetInHand } from './use-sheet.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function markup(typed: string, suspicions: readonly Suspicion[]): string {
  const opened = openSheet(EMPTY_TYPED_SHEET);
  const written = sheetReducer(opened, { kind: 'reading-typed', field: 'pdFar', text: typed });
  const state = sheetReducer(written, { kind: 'reading-entered', field: 'pdFar', at: '2026-01-01T10:00:00Z' });
  const rows = sheetRows(state, null, catalogue);
  const misfits = sheetMisfits(rows, { suspicions }, catalogue);
  const sheet = { state, rows, misfits, dispatch: () => undefined } as unknown as SheetInHand;
  return renderToStaticMarkup(
    <EquipmentContext value={{ catalogue } as unknown as Equipment}>
      <MisfitList sheet={sheet} />
    </EquipmentContext>,
  );
}

function suspicion(...explanations: readonly Explanation[]): Suspicion {
  return { names: ['pdFar'], probability: 0.9, explanations, conflict: null, expected: null };
}

const tenOff = (probability: number): Explanation => ({
  slips: [{ kind: 'ten-off', restorations: [{ name: 'pdFar', written: 61, restored: 71 }] }],
  probability,
});

const buttonsOf = (text: string): readonly string[] =>
  [...text.matchAll(/<button[^>]*>(.*?)<\/button>/g)].map(([, inner]) => inner!.replaceAll(/<[^>]*>/g, ''));

describe('the list of what does not fit', () => {
  it('is not there before anything is in, and says so where all fits', () => {
    expect(markup('', [])).toBe('');
    expect(markup('61', [])).toContain('Nothing stands out among the readings.');
  });

  it('leads to the field, and offers what was probably meant', () => {
    const text = markup('61', [suspicion(tenOff(0.86))]);
    expect(text).toContain('PD, distance was probably read at the wrong ten: 61 instead of 71 mm (86 %).');
    expect(buttonsOf(text)).toEqual(['Read PD, distance again', 'Use 71, keep 61 on record (PD, distance)']);
  });

  it('offers nothing that is not probable', () => {
    expect(buttonsOf(markup('61', [suspicion(tenOff(0.3))]))).toEqual(['Read PD, distance again']);
    expect(buttonsOf(markup('61', [suspicion()]))).toEqual(['Read PD, distance again']);
  });

  it('says once that a percentage rests on chosen frequencies, where there are any', () => {
    const other: Suspicion = { ...suspicion(tenOff(0.7)), names: ['headWidth'] };
    expect(
      markup('61', [suspicion(tenOff(0.86)), other]).match(
        /with chosen frequencies of slips; it tends to be too low\./g,
      ),
    ).toHaveLength(1);
    expect(markup('61', [suspicion()])).not.toContain('frequencies');
  });
});
