import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import type { ReadingName } from '../../src/core/catalogue/measurement.js';
import type { Evidence, Explanation, Reconciliation, Suspicion } from '../../src/core/crosscheck/reconciliation.js';
import type { Slip, SlipKind } from '../../src/core/crosscheck/slip.js';
import { takeReading } from '../../src/core/reading/reading.js';
import { isSuspected, judgeFitting } from './judge-fitting.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

const EVIDENCE: Evidence = {
  readings: { pdFar: takeReading('pdFar', 36.5, catalogue), headWidth: takeReading('headWidth', 150, catalogue) },
  estimates: null,
  catalogue,
  workingDistanceMm: 400,
  gauges: [],
};

function slip(kind: SlipKind, ...changes: readonly (readonly [ReadingName, number, number])[]): Slip {
  return { kind, restorations: changes.map(([name, written, restored]) => ({ name, written, restored })) };
}

function suspicion(names: readonly ReadingName[], probability: number, ...explained: readonly Slip[]): Suspicion {
  const explanations = explained.map((one): Explanation => ({ slips: [one], probability: probability / 2 }));
  return { names, probability, explanations, conflict: null, expected: null };
}

function reconciliation(...suspicions: readonly Suspicion[]): Reconciliation {
  return { suspicions, values: {}, doubts: { pdFar: 0.97, headWidth: 0.02 } };
}

const SWAPPED = slip('digits-swapped', ['pdFar', 36.5, 63.5]);

function outcomeOf(made: readonly Slip[], ...suspicions: readonly Suspicion[]) {
  return judgeFitting({ evidence: EVIDENCE, slips: made }, reconciliation(...suspicions), () => 'narrow', 1.5);
}

describe('judging what is said of a sheet', () => {
  it('takes the true slip as flagged and named', () => {
    const outcome = outcomeOf([SWAPPED], suspicion(['pdFar'], 0.97, SWAPPED));
    expect(outcome.slips).toEqual([
      {
        kind: 'digits-swapped',
        measurement: 'binocularPd',
        unit: 'mm',
        magnitude: 27,
        constraint: 'narrow',
        isFlagged: true,
        isNamedFirst: true,
        isRestored: true,
      },
    ]);
    expect(outcome).toMatchObject({
      suspicionCount: 1,
      falseSuspicionCount: 0,
      suspicions: [{ probability: 0.97, isTrue: true }],
      explanations: [{ probability: 0.97 / 2, isTrue: true }],
      ms: 1.5,
    });
  });

  it('counts the first explanation only', () => {
    const other = slip('ten-off', ['pdFar', 36.5, 46.5]);
    const [judged] = outcomeOf([SWAPPED], suspicion(['pdFar'], 0.9, other, SWAPPED)).slips;
    expect(judged).toMatchObject({ isFlagged: true, isNamedFirst: false, isRestored: false });
  });

  it('knows the right number under another name', () => {
    const other = slip('digit-wrong', ['pdFar', 36.5, 63.5]);
    const outcome = outcomeOf([SWAPPED], suspicion(['pdFar'], 0.9, other));
    expect(outcome.slips[0]).toMatchObject({ isNamedFirst: false, isRestored: true });
    expect(outcome.explanations).toEqual([{ probability: 0.45, isTrue: false }]);
  });

  it('lets a restored number be off by the tolerance, and not by more', () => {
    const tolerance = OUTSIDE_TABLES.tolerances.binocularPd.value;
    const near = (off: number) =>
      outcomeOf([SWAPPED], suspicion(['pdFar'], 0.9, slip('digits-swapped', ['pdFar', 36.5, 63.5 + off]))).slips[0];
    expect(near(tolerance)).toMatchObject({ isNamedFirst: true });
    expect(near(tolerance + 0.1)).toMatchObject({ isNamedFirst: false, isRestored: false });
  });

  it('does not count a suspicion of another place', () => {
    const outcome = outcomeOf([SWAPPED], suspicion(['headWidth'], 0.6));
    expect(outcome.slips[0]).toMatchObject({ isFlagged: false, isNamedFirst: false });
    expect(outcome).toMatchObject({ falseSuspicionCount: 1, suspicions: [{ isTrue: false }] });
    expect(isSuspected('headWidth', reconciliation(suspicion(['headWidth'], 0.6)))).toBe(true);
    expect(isSuspected('pdFar', reconciliation(suspicion(['headWidth'], 0.6)))).toBe(false);
  });

  it('takes both places of an exchange, in either order', () => {
    const made = slip('sides-swapped', ['crestHeightR', 5, 3], ['crestHeightL', 3, 5]);
    const named = slip('sides-swapped', ['crestHeightL', 3, 5], ['crestHeightR', 5, 3]);
    const half = slip('sides-swapped', ['crestHeightL', 3, 5]);
    expect(outcomeOf([made], suspicion(['crestHeightL'], 0.9, named)).slips[0]).toMatchObject({ isNamedFirst: true });
    expect(outcomeOf([made], suspicion(['crestHeightL'], 0.9, half)).slips[0]).toMatchObject({ isNamedFirst: false });
  });

  it('finds nothing to count on a clean sheet but what is said', () => {
    const outcome = outcomeOf([], suspicion(['pdFar'], 0.7, SWAPPED));
    expect(outcome).toMatchObject({
      slips: [],
      suspicionCount: 1,
      falseSuspicionCount: 1,
      explanations: [{ isTrue: false }],
    });
  });

  it('sorts the doubts of all readings by whether they were changed', () => {
    const { doubts } = outcomeOf([SWAPPED]);
    expect(doubts[9]).toEqual({ count: 1, probabilitySum: 0.97, trueCount: 1 });
    expect(doubts[0]).toEqual({ count: 1, probabilitySum: 0.02, trueCount: 0 });
  });
});
