import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import type { Evidence, Reconcile } from '../../src/core/crosscheck/reconciliation.js';
import { takeReading } from '../../src/core/reading/reading.js';
import { DEFAULT_SIMULATION } from '../simulation/simulate-fitting.js';
import { seededRandom } from '../support/seeded-random.js';
import type { SlippedSheet } from './judge-fitting.js';
import type { SimulationRun } from './report.js';
import { reportOf, writeReport } from './report.js';
import type { SimulationTools } from './simulate-block.js';
import { BLOCK_SIZE, blocksOf, judgeBlock, judgeSwappedSides, judgeWrongPds, WRONG_PD_MM } from './simulate-block.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const TRUE_PD = 63;
/** The invented simulator makes just one slip, this often. */
const SLIP_SHARE = 0.4;

function sheet(pdFar: number): Evidence {
  return {
    readings: { pdFar: takeReading('pdFar', pdFar, catalogue), headWidth: takeReading('headWidth', 150, catalogue) },
    estimates: null,
    catalogue,
    workingDistanceMm: 400,
    gauges: [],
  };
}

/** A world in which every PD is 63 mm, and a slip makes 73 of it. */
function* simulate(seed: number, count: number, { slipShare }: { readonly slipShare: number }): Iterable<SlippedSheet> {
  const { uniform } = seededRandom(seed);
  for (let i = 0; i < count; i += 1) {
    const written = uniform() < slipShare ? TRUE_PD + 10 : TRUE_PD;
    const restorations = [{ name: 'pdFar', written, restored: TRUE_PD } as const];
    yield { evidence: sheet(written), slips: written === TRUE_PD ? [] : [{ kind: 'ten-off', restorations }] };
  }
}

/** Suspects every PD that is not 63 with the same probability, and always names the wrong ten. */
const reconcile: Reconcile = ({ readings }) => {
  const written = readings.pdFar?.value ?? TRUE_PD;
  const isOff = Math.abs(written - TRUE_PD) > 1;
  const restorations = [{ name: 'pdFar', written, restored: written - 10 } as const];
  const probability = 0.9;
  return {
    suspicions: isOff
      ? [
          {
            names: ['pdFar'],
            probability,
            explanations: [{ slips: [{ kind: 'ten-off', restorations }], probability }],
            conflict: null,
            expected: null,
          },
        ]
      : [],
    values: {},
    doubts: { pdFar: isOff ? probability : 0, headWidth: 0 },
  };
};

let time = 0;
const TOOLS: SimulationTools = { simulate, reconcile, constraintOf: () => 'narrow', nowMs: () => (time += 2) };
const OPTIONS = { ...DEFAULT_SIMULATION, slipShare: SLIP_SHARE };

describe('blocks of a simulation', () => {
  it('hold all fittings once, with seeds of their own', () => {
    const blocks = blocksOf(7, 2 * BLOCK_SIZE + 3);
    expect(blocks.map(({ count, first }) => [first, count])).toEqual([
      [0, BLOCK_SIZE],
      [BLOCK_SIZE, BLOCK_SIZE],
      [2 * BLOCK_SIZE, 3],
    ]);
    const seeds = [...blocks, ...blocksOf(8, 2 * BLOCK_SIZE)].map(({ seed }) => seed);
    expect(new Set(seeds).size).toBe(seeds.length);
    expect(blocksOf(1, 0)).toEqual([]);
  });

  it('are judged sheet by sheet, and the sheets come back as records', () => {
    const block = { seed: 5, count: 40, first: 100 };
    const { sheets, records } = judgeBlock(block, OPTIONS, true, TOOLS);
    const slipped = sheets.filter(({ slips }) => slips.length > 0);
    expect(sheets).toHaveLength(40);
    expect(sheets.every(({ ms }) => ms === 2)).toBe(true);
    expect(slipped.length).toBeGreaterThan(5);
    expect(slipped.every(({ slips }) => slips.every(({ isNamedFirst }) => isNamedFirst))).toBe(true);
    expect(records.map(({ id }) => id).slice(0, 2)).toEqual(['101', '102']);
    expect(records.filter(({ readings }) => readings.pdFar?.scale[0] === TRUE_PD + 10)).toHaveLength(slipped.length);
    expect(judgeBlock(block, OPTIONS, false, TOOLS).records).toEqual([]);
  });

  it('try wrong PDs on clean sheets, with the other readings and without', () => {
    const outcomes = judgeWrongPds({ seed: 5, count: 10, first: 0 }, OPTIONS, TOOLS);
    expect(outcomes).toHaveLength(30);
    expect(outcomes.filter(({ condition }) => condition === 'alone')).toHaveLength(10);
    // 1.5 mm is more than the invented cross-check lets pass
    expect(WRONG_PD_MM).toBeGreaterThan(1);
    expect(outcomes.every(({ isFlagged }) => isFlagged)).toBe(true);
  });
});

describe('swapped sides', () => {
  const apart = (right: number, left: number): SlippedSheet => ({
    evidence: {
      ...sheet(TRUE_PD),
      readings: {
        monoPdR: takeReading('monoPdR', right, catalogue),
        monoPdL: takeReading('monoPdL', left, catalogue),
        crestHeightR: takeReading('crestHeightR', 3, catalogue),
      },
    },
    slips: [],
  });
  /** Suspects and names whatever differs from right 33, left 30. */
  const naming: Reconcile = ({ readings }) => {
    const [right, left] = [readings.monoPdR?.value ?? 0, readings.monoPdL?.value ?? 0];
    const restorations = [
      { name: 'monoPdR', written: right, restored: 33 },
      { name: 'monoPdL', written: left, restored: 30 },
    ] as const;
    const explanations = [{ slips: [{ kind: 'sides-swapped', restorations }], probability: 0.8 }] as const;
    const suspicion = { names: ['monoPdR'], probability: 0.8, explanations, conflict: null, expected: null } as const;
    return { suspicions: right === 30 ? [suspicion] : [], values: {}, doubts: {} };
  };
  const outcomes = (...sheets: readonly SlippedSheet[]) =>
    judgeSwappedSides({ seed: 1, count: 2, first: 0 }, OPTIONS, {
      ...TOOLS,
      simulate: () => sheets,
      reconcile: naming,
    });

  it('are made where both sides are written and differ by 2 mm', () => {
    expect(outcomes(apart(33, 30))).toMatchObject([
      { kind: 'sides-swapped', measurement: 'monocularPd', magnitude: 3, isFlagged: true, isNamedFirst: true },
    ]);
    expect(outcomes(apart(31, 30), apart(32, 30))).toMatchObject([{ magnitude: 2 }]);
  });

  it('are counted by measurement', () => {
    const run = { seed: 1, workers: 1, seconds: 1, wrongPds: [], swappedSides: outcomes(apart(33, 30), apart(34, 30)) };
    const { sheets } = judgeBlock({ seed: 1, count: 5, first: 0 }, OPTIONS, false, TOOLS);
    const { swappedSides, targets } = reportOf({ ...run, sheets });
    expect(swappedSides).toMatchObject([
      { measurement: 'monocularPd', constraint: 'narrow', flagged: { trials: 2, hits: 2 }, namedFirst: { hits: 2 } },
    ]);
    expect(targets.filter(({ name }) => name.startsWith('sides swapped')).map(({ isMet }) => isMet)).toEqual([
      true,
      true,
    ]);
  });
});

describe('the report of a simulation', () => {
  const run: SimulationRun = {
    seed: 3,
    workers: 1,
    seconds: 2,
    sheets: blocksOf(3, 1000).flatMap((block) => judgeBlock(block, OPTIONS, false, TOOLS).sheets),
    wrongPds: [
      { condition: 'read-once', isFlagged: true },
      { condition: 'alone', isFlagged: false },
    ],
    swappedSides: [],
  };
  const report = reportOf(run);
  const slipCount = run.sheets.filter(({ slips }) => slips.length > 0).length;

  it('counts what was simulated', () => {
    // binomial, 1000 trials at 0.4: five standard deviations are 77
    expect(Math.abs(slipCount - 1000 * SLIP_SHARE)).toBeLessThan(78);
    expect(report).toMatchObject({
      fittings: 1000,
      fittingsPerSecond: 500,
      reconcileMs: { median: 2, percentile95: 2, longest: 2 },
      specificity: { hits: 1000 - slipCount, trials: 1000 - slipCount, share: 1 },
      falselySuspectedToo: { hits: 0, trials: slipCount },
    });
    expect(report.byKind).toMatchObject([{ kind: 'ten-off', flagged: { trials: slipCount, share: 1 } }]);
    expect(report.byMeasurement).toMatchObject([{ measurement: 'binocularPd', namedFirst: { share: 1 } }]);
    expect(report.byConstraint.map(({ flagged }) => flagged.trials)).toEqual([slipCount, 0, 0, 0, 0, 0]);
  });

  it('says which figures are met, and which were not tried', () => {
    expect(report.targets.map(({ isMet }) => isMet)).toEqual([true, true, true, null, null, true, null, false]);
  });

  it('holds what was said against what was so', () => {
    // all that the invented cross-check suspects is so, and it said 90 %
    expect(report.calibration.suspicions[9]).toMatchObject({ observed: { hits: slipCount, trials: slipCount } });
    expect(report.calibration.suspicions[9]?.predicted).toBeCloseTo(0.9, 9);
    expect(report.calibration.doubts[0]?.observed).toMatchObject({ hits: 0, trials: 2000 - slipCount });
  });

  it('is written as tables', () => {
    const text = writeReport(report);
    expect(text).toContain('Simulated fittings: 1000, seed 3');
    expect(text).toMatch(/clean sheets flagged +0\.0 % \(0\.0 to 0\.\d\) +of \d+ +asked at most 1 % +met/);
    expect(text).toMatch(/sides swapped, 2 mm and more, all: flagged +- +of 0 +asked at least 85 % +not tried/);
    expect(text).toMatch(/only the PD and the picture +0\.0 % .*NOT MET/);
    expect(text).toContain('1000 fittings in 2.0 s with 1 worker, 500 a second');
    expect(text.split('\n').every((line) => line === line.trimEnd())).toBe(true);
  });

  it('counts slips and false alarms of a cross-check that suspects everything', () => {
    const head = (): ReturnType<Reconcile> => ({
      suspicions: [{ names: ['headWidth'], probability: 0.5, explanations: [], conflict: null, expected: null }],
      values: {},
      doubts: {},
    });
    const { sheets } = judgeBlock({ seed: 1, count: 50, first: 0 }, OPTIONS, false, { ...TOOLS, reconcile: head });
    const blind = reportOf({ ...run, sheets });
    expect(blind.targets[0]).toMatchObject({ rate: { share: 1 }, isMet: false });
    expect(blind.targets[1]).toMatchObject({ rate: { share: 0 }, isMet: false });
    expect(blind.falselySuspectedToo.share).toBe(1);
    expect(blind.specificity.share).toBe(0);
  });
});
