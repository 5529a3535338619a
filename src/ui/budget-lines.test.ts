import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { BudgetSource, Estimate } from '../core/estimate/estimate.js';
import { budgetBars } from './budget-lines.js';

function estimate(budget: readonly (readonly [BudgetSource, number])[]): Estimate {
  const u = Math.hypot(...budget.map(([, share]) => share));
  return {
    value: 63,
    standardUncertainty: u,
    low: 63 - 2 * u,
    high: 63 + 2 * u,
    unit: 'mm',
    budget: budget.map(([source, standardUncertainty]) => ({ source, standardUncertainty })),
  };
}

it('shares the variance, not the deviation', () => {
  // 3, 4 and 12 make 13: 144, 16 and 9 of 169
  const bars = budgetBars(
    estimate([
      ['contact-depth', 12],
      ['camera', 4],
      ['gaze', 3],
    ]),
  );
  expect(bars.map(({ share }) => share * 169)).toEqual([144, 16, 9].map((part) => expect.closeTo(part, 9) as number));
  expect(bars.map(({ of }) => (of.kind === 'source' ? of.source : null))).toEqual(['contact-depth', 'camera', 'gaze']);
});

it('puts several small sources together, and leaves a single one its name', () => {
  const large = ['contact-depth', 1] as const;
  const together = budgetBars(estimate([large, ['camera', 0.04], ['gaze', 0.03]]));
  expect(together).toHaveLength(2);
  expect(together[1]).toMatchObject({ of: { kind: 'small', count: 2 } });
  expect(together[1]!.standardUncertainty).toBeCloseTo(0.05, 12);
  expect(budgetBars(estimate([large, ['camera', 0.04]]))[1]).toMatchObject({
    of: { kind: 'source', source: 'camera' },
  });
});

it('loses nothing of any budget', () => {
  const sources = ['card-size', 'card-edges', 'iris-edges', 'camera', 'gaze', 'midline'] as const;
  const budgets = fc.array(fc.double({ min: 0.001, max: 5, noNaN: true }), { minLength: 1, maxLength: sources.length });
  fc.assert(
    fc.property(budgets, (shares) => {
      const one = estimate(shares.sort((a, b) => b - a).map((share, i) => [sources[i]!, share]));
      const bars = budgetBars(one);
      expect(bars.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
      expect(Math.hypot(...bars.map((bar) => bar.standardUncertainty))).toBeCloseTo(one.standardUncertainty, 9);
    }),
  );
});
