import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import type { Estimate } from '../estimate/estimate.js';
import type { Gauge } from '../reading/gauge.js';
import { parseReading } from '../reading/parse-reading.js';
import type { Reading } from '../reading/reading.js';
import { takeReading } from '../reading/reading.js';
import { reconcile } from './reconcile.js';
import type { Evidence, Explanation, Reconciliation } from './reconciliation.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

type Values = Partial<Record<ReadingName, number>>;

function sheet(
  values: Values,
  camera: Partial<Record<ReadingName, readonly [value: number, standardUncertainty: number]>> | null = null,
): Evidence {
  const readings: Partial<Record<ReadingName, Reading>> = {};
  for (const [name, value] of Object.entries(values) as [ReadingName, number][]) {
    readings[name] = takeReading(name, value, catalogue);
  }
  const estimates: Partial<Record<ReadingName, Estimate>> = {};
  for (const [name, [value, u]] of Object.entries(camera ?? {}) as [ReadingName, readonly [number, number]][]) {
    estimates[name] = {
      value,
      standardUncertainty: u,
      low: value - 2 * u,
      high: value + 2 * u,
      unit: 'mm',
      budget: [],
    };
  }
  return { readings, estimates: camera && estimates, catalogue, workingDistanceMm: 400, gauges: [] };
}

const told = (explanation: Explanation | undefined): string =>
  (explanation?.slips ?? [])
    .map(
      ({ kind, restorations }) =>
        `${kind} ${restorations.map(({ name, restored }) => `${name} ${restored}`).join(' ')}`,
    )
    .join(' and ');

const first = ({ suspicions: [suspicion] }: Reconciliation): string => told(suspicion?.explanations[0]);

/** A fitting in which all fits, with values that readings could have. */
const CLEAN: Values = {
  pdFar: 63,
  monoPdR: 31,
  monoPdL: 32,
  pdNear: 59,
  monoNearR: 29,
  monoNearL: 30,
  apertureR: 10,
  apertureL: 9.5,
  pupilDiameterR: 4,
  pupilDiameterL: 4,
  irisDiameter: 11.5,
  headWidth: 150,
  templeWidth: 130,
  apicalRadius: 8.5,
  distanceBetweenRims10: 20,
  distanceBetweenRims15: 24,
  frontalAngleR: 22,
  frontalAngleL: 23,
  splayAngleR: 27,
  splayAngleL: 26,
  crestHeightR: 5,
  crestHeightL: 6,
  bridgeProjection: 1,
  lengthToBendR: 95,
  lengthToBendL: 96,
  lengthToTangentR: 90,
  lengthToTangentL: 91,
  lengthOfDropR: 40,
  lengthOfDropL: 40,
  angleOfSideR: 8,
  angleOfSideL: 8,
  downwardAngleOfDropR: 47,
  downwardAngleOfDropL: 46,
  inwardAngleOfDropR: 10,
  inwardAngleOfDropL: 11,
  earPointDifference: 0,
  boxLensWidth: 52,
  boxLensHeight: 38,
  distanceBetweenLenses: 18,
  overallSideLength: 135,
  fittingHeightR: 22,
  fittingHeightL: 21,
  backVertexDistanceR: 13,
  backVertexDistanceL: 13,
  pantoscopicAngle: 8,
  faceFormAngle: 5,
};

describe('a sheet on which all fits', () => {
  it('is not questioned', () => {
    expect(reconcile(sheet(CLEAN)).suspicions).toEqual([]);
    expect(reconcile(sheet({})).suspicions).toEqual([]);
    expect(reconcile(sheet({ pdFar: 63 })).suspicions).toEqual([]);
  });

  it('is not questioned for rounding', () => {
    // 31 + 32.5 = 63.5 (facts of common typing faults: this sum fits), and half a millimetre off may be rounding
    for (const pdFar of [63, 63.5, 64])
      expect(reconcile(sheet({ pdFar, monoPdR: 31, monoPdL: 32.5 })).suspicions).toEqual([]);
  });
});

describe('one slip is named with what it would restore', () => {
  it.each<[string, Values, string]>([
    // digits that changed places differ by nine times their difference (elementary number theory): 36 and 63
    ['digits swapped', { pdFar: 36 }, 'digits-swapped pdFar 63'],
    ['a wrong ten of the rule', { pdFar: 73 }, 'ten-off pdFar 63'],
    ['half for whole', { pdFar: 31 }, 'half-for-whole pdFar 63'],
    ['the whole for one eye', { monoPdL: 63 }, 'whole-for-half monoPdL 32'],
    ['centimetres', { pdFar: 6.3 }, 'centimetres pdFar 63'],
    ['a lost point', { headWidth: 15 }, 'centimetres headWidth 150'],
    // 2.48 in = 62.99 mm (1 in = 25.4 mm by definition)
    ['inches', { pdFar: 2.48 }, 'inches pdFar 63'],
    ['near for distance', { pdFar: 59 }, 'near-for-distance pdFar 63'],
    ['distance for near', { pdNear: 63 }, 'distance-for-near pdNear 59'],
    ['swapped rows', { headWidth: 130, templeWidth: 150 }, 'rows-swapped headWidth 150 templeWidth 130'],
    ['a wrong digit', { lengthToBendR: 35 }, 'digit-wrong lengthToBendR 95'],
    [
      'the row above again',
      { distanceBetweenRims15: 20, frontalAngleR: 28, frontalAngleL: 29 },
      'row-repeated distanceBetweenRims15 26',
    ],
    [
      'box width and bridge',
      { boxLensWidth: 18, distanceBetweenLenses: 52 },
      'rows-swapped boxLensWidth 52 distanceBetweenLenses 18',
    ],
    ['swapped digits of an angle', { frontalAngleL: 52 }, 'digits-swapped frontalAngleL 25'],
  ])('%s', (_, slip, expected) => {
    const readings = { ...CLEAN, ...slip };
    const reconciliation = reconcile(sheet(readings));
    expect(first(reconciliation)).toBe(expected);
    const [name] = Object.keys(slip) as [ReadingName];
    expect(reconciliation.suspicions[0]?.names).toContain(name);
    expect(reconciliation.suspicions).toHaveLength(1);
  });

  it('a sign', () => {
    const crest = { ...CLEAN, crestHeightR: -5, crestHeightL: 5.5 };
    expect(first(reconcile(sheet(crest)))).toBe('sign-lost crestHeightR 5');
  });

  it('sides that only the near distances tell apart', () => {
    const swapped = { ...CLEAN, monoPdR: 33, monoPdL: 30, monoNearR: 28, monoNearL: 31 };
    const { suspicions } = reconcile(sheet(swapped));
    // far or near: nothing says which, so both are named and neither is chosen
    expect(suspicions.flatMap(({ names }) => [...names].sort())).toEqual([
      'monoNearL',
      'monoNearR',
      'monoPdL',
      'monoPdR',
    ]);
    const kinds = suspicions[0]?.explanations.map(({ slips, probability }) => [
      slips[0].kind,
      Math.round(probability * 10),
    ]);
    expect(kinds?.slice(0, 2)).toEqual([
      ['sides-swapped', 5],
      ['sides-swapped', 5],
    ]);
  });

  it('two rows on both sides', () => {
    const swapped = { ...CLEAN, lengthToBendR: 86, lengthToBendL: 87, lengthToTangentR: 95, lengthToTangentL: 96 };
    expect(first(reconcile(sheet(swapped)))).toBe(
      'rows-swapped lengthToBendR 95 lengthToTangentR 86 lengthToBendL 96 lengthToTangentL 87',
    );
  });

  it('the number that the others know better than the slip itself', () => {
    // 60.5 near belongs to 64.6 far, and both eyes make 64
    expect(first(reconcile(sheet({ pdFar: 60.5, monoPdR: 32.5, monoPdL: 31.5, pdNear: 60 })))).toBe(
      'near-for-distance pdFar 64',
    );
  });

  it('sides that the camera tells apart', () => {
    const camera = { pdFar: [63, 0.7], monoPdR: [33, 0.8], monoPdL: [30, 0.8] } as const;
    const swapped = { pdFar: 63, monoPdR: 29.5, monoPdL: 33.5 };
    expect(first(reconcile(sheet(swapped, camera)))).toBe('sides-swapped monoPdR 33.5 monoPdL 29.5');
  });

  it('eyes that were halved and not measured, where the camera sees them unequal', () => {
    const camera = { pdFar: [64, 0.3], monoPdR: [34.5, 0.4], monoPdL: [29.5, 0.4] } as const;
    expect(first(reconcile(sheet({ pdFar: 64, monoPdR: 32, monoPdL: 32 }, camera)))).toMatch(
      /^halved monoPdR 34(\.5)? monoPdL (29\.5|30)$/,
    );
  });

  it('an offset that was added twice, or forgotten', () => {
    const gauge = EXAMPLE_GAUGES.find(({ serves }) => serves.includes('crestHeight')) as Gauge;
    expect(gauge.zeroOffset).toBe(4);
    const taken = (text: string, used: Gauge | null): Reading => {
      const reading = parseReading(text, 'crestHeightL', catalogue, used);
      if (!reading.ok) throw new Error(reading.failure.kind);
      return reading.value;
    };
    const base = sheet({ ...CLEAN, crestHeightR: 5 });
    const twice = { ...base, readings: { ...base.readings, crestHeightL: taken('6', gauge) }, gauges: EXAMPLE_GAUGES };
    expect(first(reconcile(twice))).toBe('offset-twice crestHeightL 6');
    const forgotten = {
      ...base,
      readings: { ...base.readings, crestHeightL: taken('1.5', null) },
      gauges: EXAMPLE_GAUGES,
    };
    expect(first(reconcile(forgotten))).toBe('offset-forgotten crestHeightL 5.5');
  });
});

describe('several slips', () => {
  it('far from one another are several suspicions', () => {
    const { suspicions } = reconcile(sheet({ ...CLEAN, pdFar: 36, lengthToBendL: 69, frontalAngleR: 52 }));
    expect(suspicions.map(({ explanations: [best] }) => told(best)).sort()).toEqual([
      'digits-swapped frontalAngleR 25',
      'digits-swapped lengthToBendL 96',
      'digits-swapped pdFar 63',
    ]);
  });

  it('in rows that hardly concern one another are told apart', () => {
    // head and eyes go together only a little (ANSUR II: r = 0.3)
    const { suspicions } = reconcile(sheet({ pdFar: 74, monoPdR: 32.5, monoPdL: 31.5, headWidth: 15.2 }));
    expect(suspicions.map(({ names }) => names)).toEqual([['headWidth'], ['pdFar']]);
  });

  it('that hide one another are found as a pair', () => {
    // 73 = 41 + 32: the sum fits, and only the near distances say that both are ten too large
    const { suspicions } = reconcile(sheet({ ...CLEAN, pdFar: 73, monoPdR: 41 }));
    expect(suspicions.flatMap(({ names }) => names).sort()).toEqual(['monoPdR', 'pdFar']);
    const all = suspicions.flatMap(({ explanations: [best] }) => best?.slips ?? []);
    expect(all.map(({ kind, restorations }) => `${kind} ${restorations[0]?.restored}`).sort()).toEqual([
      'ten-off 31',
      'ten-off 63',
    ]);
  });

  it('never takes more suspicions than readings, whatever is written', () => {
    const { suspicions } = reconcile(sheet({ pdFar: 40, monoPdR: 44, monoPdL: 16, pdNear: 80, monoNearR: 15 }));
    expect(suspicions.length).toBeGreaterThan(0);
    expect(suspicions.length).toBeLessThanOrEqual(6);
  });
});

describe('what is said beside it', () => {
  it('the rule that shows it, with the number that the rule expects', () => {
    const [suspicion] = reconcile(sheet({ pdFar: 61, monoPdR: 36, monoPdL: 35 })).suspicions;
    expect(suspicion?.conflict).toMatchObject({ with: 'eyes-sum', names: ['pdFar', 'monoPdR', 'monoPdL'] });
    expect(suspicion?.conflict?.expected).toBeCloseTo(71, 9);
    // three trained readings, u = 0.43 each (McMahon et al. 2012 with a step of half a millimetre): sqrt(3) 0.429
    expect(suspicion?.conflict?.standardUncertainty).toBeCloseTo(0.743, 3);
    expect(suspicion?.expected?.value).toBeGreaterThan(70);
  });

  it('the camera, where nothing else does', () => {
    const [suspicion] = reconcile(sheet({ pdFar: 61 }, { pdFar: [70.5, 0.75] })).suspicions;
    expect(suspicion?.conflict).toMatchObject({ with: 'camera', expected: 70.5 });
  });

  it('what is usual, where only people do', () => {
    const [suspicion] = reconcile(sheet({ headWidth: 95 })).suspicions;
    expect(suspicion?.conflict?.with).toBe('population');
  });

  it('that near is never more than far: the two changed places', () => {
    const reconciliation = reconcile(sheet({ monoPdR: 28, monoNearR: 31 }));
    expect(first(reconciliation)).toBe('rows-swapped monoPdR 31 monoNearR 28');
    expect(reconciliation.suspicions[0]?.conflict?.with).toBe('near-from-far');
  });

  it('reconciled values that leave a wrong reading out', () => {
    const { values } = reconcile(sheet({ ...CLEAN, pdFar: 36 }));
    expect(Math.abs((values.pdFar?.value ?? 0) - 63)).toBeLessThan(0.5);
    expect(values.monoPdR?.standardUncertainty).toBeLessThan(0.4);
  });
});

describe('whatever is written', () => {
  const values = fc.dictionary(
    fc.constantFrom(...READING_NAMES),
    fc.integer({ min: -40, max: 440 }).map((halves) => halves / 2),
  );

  it('gives finite numbers and proper probabilities, and never the same twice', () => {
    fc.assert(
      fc.property(values, (written) => {
        const { suspicions, values: reconciled, doubts } = reconcile(sheet(written));
        for (const { names, probability, explanations } of suspicions) {
          expect(names.length).toBeGreaterThan(0);
          expect(probability).toBeGreaterThan(0);
          expect(probability).toBeLessThanOrEqual(1 + 1e-9);
          expect(explanations.reduce((sum, one) => sum + one.probability, 0)).toBeLessThanOrEqual(1 + 1e-9);
          expect(new Set(explanations.map(told)).size).toBe(explanations.length);
        }
        const all = suspicions.flatMap(({ names }) => names);
        expect(new Set(all).size).toBe(all.length);
        for (const one of Object.values(reconciled)) {
          expect(Number.isFinite(one.value)).toBe(true);
          expect(Number.isFinite(one.standardUncertainty)).toBe(true);
        }
        for (const doubt of Object.values(doubts)) expect(doubt).toBeLessThanOrEqual(1 + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it('says of mirrored sheets the same, mirrored', () => {
    const mirrored = (name: ReadingName): ReadingName => {
      const other = name.endsWith('R') ? `${name.slice(0, -1)}L` : name.endsWith('L') ? `${name.slice(0, -1)}R` : name;
      return READING_NAMES.find((one) => one === other) ?? name;
    };
    const slipped: Values = { ...CLEAN, monoPdR: 13, crestHeightL: 16 };
    const turned = Object.fromEntries(
      (Object.entries(slipped) as [ReadingName, number][]).map(([name, value]) => [mirrored(name), value]),
    );
    const names = (values: Values) => reconcile(sheet(values)).suspicions.map((one) => one.names);
    const inOrder = (all: readonly (readonly ReadingName[])[]) => all.map((one) => [...one].sort().join(' ')).sort();
    expect(inOrder(names(turned))).toEqual(inOrder(names(slipped).map((one) => one.map(mirrored))));
  });
});
