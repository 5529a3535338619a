import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { READING_NAMES } from '../../src/core/catalogue/measurement.js';
import { nameAt } from '../../src/core/crosscheck/observed-sheet.js';
import { reconcile, suspicionsWithin } from '../../src/core/crosscheck/reconcile.js';
import type { Evidence } from '../../src/core/crosscheck/reconciliation.js';
import { figuresOf } from '../../src/core/crosscheck/sheet-figures.js';
import { faultsOfOne } from '../../src/core/crosscheck/slip-faults.js';
import { createSuspicionBound } from '../../src/core/crosscheck/suspicion-bound.js';
import { seededRandom } from '../support/seeded-random.js';
import { DEFAULT_SIMULATION, simulateFittings, type SimulationOptions } from './simulate-fitting.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const bound = createSuspicionBound(catalogue);

function mayBeSuspected(evidence: Evidence): boolean {
  return blocksInDoubt(evidence).size > 0;
}

function blocksInDoubt(evidence: Evidence): ReadonlySet<number> {
  return bound(figuresOf({ ...evidence, catalogue }), (place) => faultsOfOne(nameAt(place), evidence));
}

function sheets(seed: number, count: number, options: Partial<SimulationOptions>): readonly Evidence[] {
  return [...simulateFittings(seed, count, { ...DEFAULT_SIMULATION, ...options })].map(({ evidence }) => evidence);
}

/** Numbers of a sheet set to what their neighbours say, moved a little, or rounded: what no simulated slip does. */
function disturbed(evidence: Evidence, seed: number): Evidence {
  const { uniform } = seededRandom(seed);
  const readings = { ...evidence.readings };
  for (let change = 0; change < 3; change += 1) {
    const name = READING_NAMES[Math.floor(uniform() * READING_NAMES.length)]!;
    const other = READING_NAMES[Math.floor(uniform() * READING_NAMES.length)]!;
    const [one, second] = [readings[name], readings[other]];
    if (one === undefined || second === undefined) continue;
    const value = uniform() < 0.3 ? second.value : one.value + Math.round(8 * (uniform() - 0.5));
    readings[name] = { ...one, value };
  }
  const { pdFar } = readings;
  if (pdFar !== undefined && uniform() < 0.3) {
    for (const name of ['monoPdR', 'monoPdL'] as const) {
      const eye = readings[name];
      if (eye !== undefined) readings[name] = { ...eye, value: pdFar.value / 2 };
    }
  }
  return { ...evidence, readings };
}

const KINDS: readonly (readonly [string, readonly Evidence[]])[] = [
  ['sheets with and without slips', sheets(3, 150, {})],
  ['sheets without slips', sheets(4, 200, { slipShare: 0 })],
  ['sheets with two slips', sheets(5, 100, { slipShare: 1, secondSlipShare: 1 })],
  ['sheets with PDs read three times, all with a picture', sheets(6, 100, { pdRepeats: 3, cameraShare: 1 })],
  ['sheets that are half empty', sheets(7, 150, { emptyShare: 0.5 })],
  ['sheets with hardly anything on them', sheets(8, 200, { emptyShare: 0.9, slipShare: 0 }).map(disturbed)],
  ['sheets on which numbers were moved', sheets(9, 200, { slipShare: 0 }).map(disturbed)],
];

describe('the bound on suspicions', () => {
  it.each(KINDS)('lets nothing through that would be suspected: %s', (_, all) => {
    for (const one of all) {
      const blocks = blocksInDoubt(one);
      const { suspicions } = reconcile(one);
      if (blocks.size === 0) expect(suspicions).toEqual([]);
      else expect(suspicionsWithin(blocks, one)).toEqual(suspicions);
    }
  });

  // Otherwise it would save nothing. Chosen: what a second look at one sheet in eight costs is little beside a look at all.
  it('lets nearly all sheets through on which all is right', () => {
    const clean = sheets(10, 400, { slipShare: 0 });
    expect(clean.filter(mayBeSuspected).length / clean.length).toBeLessThan(0.125);
  });

  it('takes what is no number for suspicious', () => {
    const [one] = sheets(11, 1, { slipShare: 0, emptyShare: 0 });
    const pdFar = one?.readings.pdFar;
    if (one === undefined || pdFar === undefined) throw new Error('The sheet has a PD.');
    expect(mayBeSuspected({ ...one, readings: { ...one.readings, pdFar: { ...pdFar, value: 1e200 } } })).toBe(true);
  });
});
