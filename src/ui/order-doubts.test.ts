import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import type { Filling, SomeReadings } from '../../tests/support/filled-sheet.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { reconciledSheet } from '../../tests/support/reconciled-sheet.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Reconciliation } from '../core/crosscheck/reconciliation.js';
import { writtenReadings } from '../session/misfits.js';
import { orderOf } from '../session/order.js';
import { openSheet } from '../session/sheet.js';
import { orderDoubtSentences } from './order-doubts.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

/** All of these suspected as one; nothing where there are none. */
function together(names: readonly ReadingName[]): Reconciliation {
  const suspicion = { names, probability: 0.9, explanations: [], conflict: null, expected: null };
  return { suspicions: names.length === 0 ? [] : [suspicion], values: {}, doubts: {} };
}

/** What is open of a sheet of which nothing was confirmed. */
function open(readings: SomeReadings, filling: Filling = {}, given?: Reconciliation): readonly string[] {
  const state = openSheet(filledSheet(readings, filling));
  const { rows, reconciliation: found } = reconciledSheet(state, catalogue);
  const reconciliation = given ?? found;
  const { doubts } = orderOf(rows, reconciliation, state);
  return orderDoubtSentences(doubts, { readings: writtenReadings(rows, catalogue), catalogue, gauges: [] }, 'B');
}

describe('what is open', () => {
  it('names each of two slips, whichever of them a sentence tells of', () => {
    const readings = { pdFar: '74', monoPdR: '32.5', monoPdL: '31.5', headWidth: '15.2' };
    for (const reconciliation of [undefined, together(['headWidth', 'pdFar'])]) {
      const said = open(readings, {}, reconciliation);
      expect(said.some((one) => /Not ordered before it is settled: .*PD, distance\.$/.test(one))).toBe(true);
      expect(said).toContain('In, but not confirmed and so not ordered: PD of each eye R, L.');
      expect(said.some((one) => one.startsWith('Head width: “15.2” is not ordered.'))).toBe(true);
    }
  });

  it('says of a number that cannot be only that', () => {
    expect(open({ headWidth: '15.2' }, {}, together(['headWidth']))).toEqual([
      expect.stringMatching(/^Head width: “15\.2” is not ordered\./),
    ]);
  });

  it('calls places as the tables of the order do', () => {
    expect(
      open({ monoPdR: '32.5' }, { second: { monoPdR: '38', crestHeightL: '4', pdNear: '60' } }, together([])),
    ).toEqual([
      'PD of each eye R: the two readers are too far apart; it is not ordered before both read it again.',
      'Read by B alone, and not ordered: PD, near; Crest height L.',
      'In, but not confirmed and so not ordered: PD of each eye R.',
    ]);
  });
});
