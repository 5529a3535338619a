import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReadingName } from '../catalogue/measurement.js';
import { CENTRATION_STANDARDS } from './centration-standards.js';
import type { Cost, ReadingDifference } from './cost-of-difference.js';
import { costOfDifference, costOfDifferences, roomOfReading } from './cost-of-difference.js';
import type { EyePrescription, LensKind, Prescription } from './prescription.js';

const ANSI = CENTRATION_STANDARDS['ansi-z80.1'];
const ISO = CENTRATION_STANDARDS['iso-21987'];

function eye(sphereD: number, more: Partial<EyePrescription> = {}): EyePrescription {
  return {
    sphereD,
    cylinderD: 0,
    axisDeg: 180,
    addD: 0,
    prism: { horizontal: { amount: 0, base: 'in' }, vertical: { amount: 0, base: 'up' } },
    ...more,
  };
}

function pair(R: EyePrescription, L: EyePrescription = R, lensKind: LensKind = 'single-vision'): Prescription {
  return { R, L, vertexDistanceMm: null, lensKind };
}

function off(name: ReadingName, differenceMm: number, standardUncertaintyMm = 0): ReadingDifference {
  return { name, differenceMm, standardUncertaintyMm };
}

type PrismCost = Extract<Cost, { kind: 'prism' }>;

function prismCost(prescription: Prescription, differences: readonly ReadingDifference[], standard = ANSI): PrismCost {
  const [cost, ...more] = costOfDifferences(prescription, standard, differences);
  expect(more).toEqual([]);
  if (cost?.kind !== 'prism') throw new Error(`a cost of kind ${cost?.kind ?? 'none at all'}`);
  return cost;
}

describe('the cost of a wrong PD', () => {
  it('is nothing for weak lenses, and beyond the standard for strong ones', () => {
    // Prentice (closed form): 2 mm at -0.50 D are 0.10; at -6.00 D 1.20 of the 1.50 of 2.5 mm, and 3 mm are 1.80
    const weak = prismCost(pair(eye(-0.5)), [off('pdFar', 2)]);
    expect(weak.horizontal.amount).toBeCloseTo(0.1, 12);
    expect(weak.horizontal.allowed).toBe(0.67);
    expect(weak.verdict).toBe('negligible');
    const strong = prismCost(pair(eye(-6)), [off('pdFar', 2)]);
    expect(strong.horizontal.amount).toBeCloseTo(1.2, 12);
    expect(strong.horizontal.allowed).toBeCloseTo(1.5, 12);
    expect(strong.horizontal.share).toBeCloseTo(0.8, 12);
    expect(strong.horizontal.rule).toEqual({ prism: 1.5, ofShift: { shiftMm: 2.5, powerD: 6 } });
    expect(strong.verdict).toBe('within');
    expect(prismCost(pair(eye(-6)), [off('pdFar', 3)]).verdict).toBe('beyond');
    expect(prismCost(pair(eye(0)), [off('pdFar', 9)]).verdict).toBe('negligible');
  });

  it('reaches a limit exactly without going beyond it', () => {
    expect(prismCost(pair(eye(-6)), [off('pdFar', 2.5)]).verdict).toBe('within');
    // 2.0 mm of ISO 21987, from memory
    expect(prismCost(pair(eye(-6)), [off('pdFar', 2)], ISO).verdict).toBe('within');
    expect(prismCost(pair(eye(-6)), [off('pdFar', 2.01)], ISO).verdict).toBe('beyond');
  });

  it('has its base by the sign of lens and error', () => {
    // a plus lens whose centre stands outside of the pupil has its base out (textbook)
    expect(prismCost(pair(eye(4)), [off('pdFar', 1)]).horizontal.base).toBe('out');
    expect(prismCost(pair(eye(-4)), [off('pdFar', 1)]).horizontal.base).toBe('in');
    expect(prismCost(pair(eye(4)), [off('monoPdL', -1)]).horizontal.base).toBe('in');
  });

  it('of one eye counts with that eye’s lens alone', () => {
    const unequal = pair(eye(-1), eye(-6));
    expect(prismCost(unequal, [off('monoPdR', 2)]).horizontal.amount).toBeCloseTo(0.2, 12);
    expect(prismCost(unequal, [off('monoPdL', 2)]).horizontal.amount).toBeCloseTo(1.2, 12);
  });

  it('is nothing where both eyes are off to the same side of the face through equal lenses', () => {
    const cost = prismCost(pair(eye(-6)), [off('monoPdR', 2), off('monoPdL', -2)]);
    expect(cost.horizontal.amount).toBeCloseTo(0, 12);
    expect(cost.verdict).toBe('negligible');
    // but the corridors of progressive lenses are both beside the eyes
    const progressive = prismCost(pair(eye(-6, { addD: 2 }), eye(-6, { addD: 2 }), 'progressive'), [
      off('monoPdR', 2),
      off('monoPdL', -2),
    ]);
    expect(progressive.positions.map(({ side, amount, allowed, verdict }) => [side, amount, allowed, verdict])).toEqual(
      [
        ['R', 2, 1, 'beyond'],
        ['L', 2, 1, 'beyond'],
      ],
    );
    expect(progressive.verdict).toBe('beyond');
  });

  it('through an oblique cylinder is vertical as well', () => {
    // F xy = -C sin a cos a: 4 sin 45 cos 45 = 2 D (closed form); 2 mm of one eye are 0.4, more than the 0.33 allowed
    const cost = prismCost(pair(eye(0, { cylinderD: -4, axisDeg: 45 })), [off('monoPdR', 2)]);
    expect(cost.vertical.amount).toBeCloseTo(0.4, 12);
    expect(cost.horizontal.amount).toBeCloseTo(0.4, 12);
    expect(cost.horizontal.verdict).toBe('within');
    expect(cost.verdict).toBe('beyond');
  });
});

describe('the cost of wrong heights', () => {
  it('cancels where both are off alike through equal lenses, and adds where they are off against one another', () => {
    const alike = prismCost(pair(eye(-4)), [off('fittingHeightR', 2), off('fittingHeightL', 2)]);
    expect(alike.vertical.amount).toBeCloseTo(0, 12);
    const against = prismCost(pair(eye(-4)), [off('fittingHeightR', 1), off('fittingHeightL', -1)]);
    // 4 D and 2 mm: 0.8, twice what 1.0 mm allows
    expect(against.vertical.amount).toBeCloseTo(0.8, 12);
    expect(against.vertical.share).toBeCloseTo(2, 12);
    expect(against.verdict).toBe('beyond');
  });

  it('of unequal lenses does not cancel', () => {
    // -1 and -5 D, both 2 mm too high: 0.2 against 1.0 (Prentice)
    const cost = prismCost(pair(eye(-1), eye(-5)), [off('fittingHeightR', 2), off('fittingHeightL', 2)]);
    expect(cost.vertical.amount).toBeCloseTo(0.8, 12);
    expect(cost.vertical.base).toBe('up');
  });

  it('of multifocal lenses counts the height of the segment', () => {
    const cost = prismCost(pair(eye(0, { addD: 2 }), eye(0, { addD: 2 }), 'multifocal'), [off('fittingHeightR', 1.5)]);
    expect(cost.positions).toHaveLength(1);
    expect(cost.positions[0]).toMatchObject({ part: 'segments', direction: 'vertical', side: 'R', allowed: 1 });
    expect(cost.verdict).toBe('beyond');
  });
});

describe('the cost of wrong box sizes', () => {
  it('is that of the decentration which is worked out from them', () => {
    // (a + DBL) / 2 - PD: 2 mm more of a are 1 mm for each lens, 2 mm for the pair
    for (const name of ['boxLensWidth', 'distanceBetweenLenses'] as const) {
      const cost = prismCost(pair(eye(4)), [off(name, 2)]);
      expect(cost.horizontal.amount).toBeCloseTo(0.8, 12);
      expect(cost.horizontal.base).toBe('in');
    }
    expect(prismCost(pair(eye(-1), eye(-5)), [off('boxLensHeight', 2)]).vertical.amount).toBeCloseTo(0.4, 12);
  });
});

describe('the cost of a wrong near PD', () => {
  it('is for lenses made for near that of sphere and addition', () => {
    const cost = prismCost(pair(eye(1, { addD: 2 })), [off('pdNear', 2)]);
    expect(cost.plane).toBe('near');
    expect(cost.horizontal.amount).toBeCloseTo(0.6, 12);
  });

  it('is for multifocal lenses that of the segments', () => {
    const prescription = pair(eye(-6, { addD: 2 }), eye(-6, { addD: 2 }), 'multifocal');
    const cost = prismCost(prescription, [off('pdNear', 3)]);
    expect(cost.plane).toBe('segments');
    expect(cost.horizontal.amount).toBeCloseTo(0.6, 12);
    // segment_horizontal_total_mm 2.5 of ANSI Z80.1-2015 (three summaries)
    expect(cost.positions[0]).toMatchObject({
      part: 'segments',
      side: null,
      amount: 3,
      allowed: 2.5,
      verdict: 'beyond',
    });
    expect(prismCost(prescription, [off('pdNear', 3)], ISO).positions).toEqual([]);
  });

  it('is none for progressive lenses, which bring their own inset', () => {
    const prescription = pair(eye(-6, { addD: 2 }), eye(-6, { addD: 2 }), 'progressive');
    expect(costOfDifference(prescription, ANSI, off('pdNear', 3))).toEqual({
      kind: 'none',
      names: ['pdNear'],
      reason: 'inset-of-design',
    });
  });
});

describe('the cost of a wrong vertex distance', () => {
  it('is the change of the strongest power', () => {
    // written 17, true 12: a lens meant for 17 mm sits 5 mm nearer and acts as -8 / (1 - 0.005 * 8) = -8.333 (lens.vertex of the facts)
    const cost = costOfDifference(pair(eye(-6, { cylinderD: -2, axisDeg: 90 })), ANSI, off('backVertexDistanceR', 5));
    if (cost.kind !== 'power') throw new Error(cost.kind);
    expect(cost.powers[0]).toMatchObject({ side: 'R', powerD: -8 });
    expect(cost.powers[0]?.changeD).toBeCloseTo(-0.3333, 4);
    expect(cost.verdict).toBe('beyond');
    expect(costOfDifference(pair(eye(-2)), ANSI, off('backVertexDistanceL', 3))).toMatchObject({
      verdict: 'negligible',
    });
  });
});

describe('what no lens is made by', () => {
  it('costs nothing, and says why', () => {
    const prescription = pair(eye(-9));
    for (const name of ['apertureR', 'headWidth', 'templeWidth', 'apicalRadius', 'lengthToBendR'] as const) {
      expect(costOfDifference(prescription, ANSI, off(name, 5))).toMatchObject({ reason: 'not-through-lenses' });
      expect(roomOfReading(prescription, ANSI, name)).toBeNull();
    }
    expect(costOfDifference(prescription, ANSI, off('pantoscopicAngle', 5))).toMatchObject({
      reason: 'tilt-not-worked-out',
    });
  });

  it('stands beside what does cost in one answer', () => {
    const costs = costOfDifferences(pair(eye(-9)), ANSI, [off('pdFar', 1), off('headWidth', 5)]);
    expect(costs.map(({ kind }) => kind)).toEqual(['prism', 'none']);
  });
});

describe('prescribed prism', () => {
  const prism = { horizontal: { amount: 3, base: 'out' }, vertical: { amount: 1, base: 'up' } } as const;

  it('is part of what each eye looks through', () => {
    // right eye, +5 D, centre 2 mm too far out: 1.0 base out on top of 3 base out (Prentice)
    const { through } = prismCost(pair(eye(5, { prism }), eye(0)), [off('monoPdR', 2)]);
    expect(through.R.horizontal.amount).toBeCloseTo(4, 12);
    expect(through.R.horizontal.base).toBe('out');
    expect(through.R.vertical).toEqual({ amount: 1, base: 'up' });
    expect(through.L.horizontal.amount).toBe(0);
  });

  it('widens the limits of ISO 21987 and not those of ANSI Z80.1', () => {
    const prescription = pair(eye(1, { prism }));
    expect(prismCost(prescription, [off('pdFar', 1)], ISO).horizontal.allowed).toBe(1);
    expect(prismCost(prescription, [off('pdFar', 1)], ISO).vertical.allowed).toBe(0.5);
    expect(prismCost(prescription, [off('pdFar', 1)], ANSI).horizontal.allowed).toBe(0.67);
  });
});

describe('a difference that is not well known', () => {
  it('is open where its doubt reaches across a limit', () => {
    // 2 mm at -6 D use 1.2 of 1.5; 1.96 * 0.5 mm reach to 1.79
    const cost = prismCost(pair(eye(-6)), [off('pdFar', 2, 0.5)]);
    expect(cost.horizontal.high).toBeCloseTo(1.2 + 1.96 * 0.5 * 0.6, 4);
    expect(cost.verdict).toBe('open');
    expect(prismCost(pair(eye(-6)), [off('pdFar', 6, 0.5)]).verdict).toBe('beyond');
    expect(prismCost(pair(eye(-0.25)), [off('pdFar', 2, 0.5)]).verdict).toBe('negligible');
  });

  it('adds the doubts of both eyes as independent ones', () => {
    const cost = prismCost(pair(eye(-5)), [off('monoPdR', 0, 0.3), off('monoPdL', 0, 0.4)]);
    expect(cost.horizontal.high).toBeCloseTo(1.96 * 0.5 * 0.5, 4);
    expect(cost.horizontal.low).toBe(0);
  });
});

describe('mirroring the wearer', () => {
  it('leaves every cost as it was, and turns up into down', () => {
    const lens = fc.record({
      sphereD: fc.integer({ min: -40, max: 40 }).map((quarters) => quarters / 4),
      cylinderD: fc.integer({ min: -16, max: 0 }).map((quarters) => quarters / 4),
      axisDeg: fc.integer({ min: 1, max: 179 }),
    });
    const mm = fc.integer({ min: -40, max: 40 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(lens, lens, mm, mm, mm, (R, L, pd, upR, upL) => {
        const straight = prismCost(pair(eye(0, R), eye(0, L)), [
          off('monoPdR', pd),
          off('fittingHeightR', upR),
          off('fittingHeightL', upL),
        ]);
        const mirrored = prismCost(
          pair(eye(0, { ...L, axisDeg: 180 - L.axisDeg }), eye(0, { ...R, axisDeg: 180 - R.axisDeg })),
          [off('monoPdL', pd), off('fittingHeightL', upR), off('fittingHeightR', upL)],
        );
        expect(mirrored.horizontal.amount).toBeCloseTo(straight.horizontal.amount, 9);
        expect(mirrored.vertical.amount).toBeCloseTo(straight.vertical.amount, 9);
        if (straight.vertical.amount > 1e-6) expect(mirrored.vertical.base).not.toBe(straight.vertical.base);
        if (straight.horizontal.amount > 1e-6) expect(mirrored.horizontal.base).toBe(straight.horizontal.base);
      }),
      { seed: 45 },
    );
  });
});

describe('the room of a reading', () => {
  it('ends where the first limit is reached', () => {
    // tol.ansi of the facts: 3.35 mm for -2 D, 2.5 mm for -6 D
    expect(roomOfReading(pair(eye(-2)), ANSI, 'pdFar')?.mm).toBeCloseTo(3.35, 9);
    expect(roomOfReading(pair(eye(-6)), ANSI, 'pdFar')?.mm).toBeCloseTo(2.5, 9);
    expect(roomOfReading(pair(eye(2)), ANSI, 'fittingHeightR')?.mm).toBeCloseTo(1.65, 9);
    expect(roomOfReading(pair(eye(0)), ANSI, 'pdFar')?.mm).toBe(Infinity);
    const progressive = pair(eye(-2, { addD: 2 }), eye(-2, { addD: 2 }), 'progressive');
    expect(roomOfReading(progressive, ANSI, 'monoPdR')?.mm).toBeCloseTo(1, 9);
    expect(roomOfReading(progressive, ANSI, 'pdFar')?.mm).toBeCloseTo(2, 9);
  });

  it('is never more for both eyes than twice the room of the stronger one', () => {
    // R -6.00 / -1.25 x 10 has -6.04 D across (sine of 10 degrees squared: 0.0302), L +2.00: the mean of 4.02 D may have 2.5 mm of it,
    // 1.005; that is 1.665 mm of R alone. By what is left of the pair, 4.04 D, a shared error might be 4.98 mm.
    const unequal = { ...pair(eye(-6, { cylinderD: -1.25, axisDeg: 10 })), L: eye(2) };
    const ofR = roomOfReading(unequal, ANSI, 'monoPdR');
    expect(ofR?.mm).toBeCloseTo(1.664, 3);
    expect(ofR?.tighterEye).toBeNull();
    for (const name of ['pdFar', 'pdNear', 'boxLensWidth', 'distanceBetweenLenses'] as const) {
      const room = roomOfReading(unequal, ANSI, name);
      expect(room?.mm).toBeCloseTo(3.328, 3);
      expect(room?.tighterEye).toBe('R');
    }
    // +1.00 and -1.00 cancel, and still each may be off by 6.7 mm alone: 0.67 by 0.1
    const opposite = { ...pair(eye(1)), L: eye(-1) };
    expect(roomOfReading(opposite, ANSI, 'pdFar')).toEqual({ mm: expect.closeTo(13.4, 9) as number, tighterEye: null });
    // a lens without power beside one of +4.00 leaves nothing open
    expect(roomOfReading({ ...pair(eye(4)), L: eye(0) }, ANSI, 'pdFar')).toEqual({
      mm: expect.closeTo(3.35, 9) as number,
      tighterEye: 'R',
    });
  });
});
