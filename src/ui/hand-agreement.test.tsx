import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { ReaderId } from '../core/record/reader-sheet.js';
import { sheetRows } from '../session/rows.js';
import type { SheetEvent } from '../session/sheet.js';
import { openSheet, sheetReducer } from '../session/sheet.js';
import { ReadersAgreement } from './hand-agreement.js';
import type { SheetInHand } from './use-sheet.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

const FIRST: { readonly [Name in ReadingName]?: string } = {
  pdFar: '63',
  headWidth: '152',
  templeWidth: '141',
  overallSideLength: '140',
};

function events(reader: ReaderId, name: string, texts: typeof FIRST): readonly SheetEvent[] {
  return [
    { kind: 'reader-chosen', reader },
    { kind: 'reader-named', reader, name },
    ...Object.entries(texts).flatMap(([field, text]): readonly SheetEvent[] => [
      { kind: 'reading-typed', field: field as ReadingName, text },
      { kind: 'reading-entered', field: field as ReadingName, at: '2026-03-04T12:00:00Z' },
    ]),
  ];
}

function said(second: typeof FIRST): string {
  const all = [...events('first', 'A. Hale', FIRST), ...events('second', '', second)];
  const state = all.reduce(sheetReducer, openSheet(null));
  const rows = sheetRows(state, null, catalogue);
  return renderToStaticMarkup(<ReadersAgreement sheet={{ state, rows } as unknown as SheetInHand} />)
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/\s+/g, ' ');
}

describe('the agreement of two readers', () => {
  it('is said as the mean difference and the limits of agreement, first less second', () => {
    // Differences 1, 2, 1, 2: mean 1.5, sd sqrt(1/3) = 0.577; ± 3.182 (t for 3) * 0.577 / 2 = 0.92; limits 1.5 ± 1.96 * 0.577 = 1.13
    const text = said({ pdFar: '62', headWidth: '150', templeWidth: '140', overallSideLength: '138' });
    expect(text).toContain('4 lengths, A. Hale − Second reader: +1.5 mm on average (95 %: +0.6 to +2.4)');
    expect(text).toContain('between +0.4 and +2.6 mm');
    expect(text).toContain('hold the gauge');
  });

  it('blames no one where the mean difference may be nothing', () => {
    expect(said({ pdFar: '64', headWidth: '151', templeWidth: '142', overallSideLength: '139' })).not.toContain(
      'hold the gauge',
    );
  });

  it('is not said of a few places, nor of places of which only one was read', () => {
    expect(said({ pdFar: '62', headWidth: '150', templeWidth: '140' })).toBe('');
    expect(said({ frontalAngleR: '24', frontalAngleL: '24', pantoscopicAngle: '8', faceFormAngle: '5' })).toBe('');
  });
});
