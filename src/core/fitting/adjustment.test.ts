import { describe, expect, it } from 'vitest';
import { weightedMean } from '../statistics/weighted-mean.js';
import { adjust, type Adjustment, type Knowledge } from './adjustment.js';

function adjusted<Source extends string>(
  knowledge: Knowledge<Source>,
  start: readonly number[],
  steps: readonly number[],
  iterationLimit?: number,
): Adjustment<Source> {
  const outcome = adjust(knowledge, start, steps, iterationLimit);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

const plain = () => false;

/**
 * Misra1a of NIST's Statistical Reference Datasets, nonlinear regression: y = b1 (1 - exp(-b2 x)). Data and certified values from
 * memory; that the one follows from the other to nine digits bears the memory out.
 */
const MISRA1A = {
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  b: [2.3894212918e2, 5.5015643181e-4],
  standardDeviation: [2.7070075241, 7.2668688436e-6],
  residualSquares: 1.2455138894e-1,
} as const;

describe('adjust', () => {
  const misra: Knowledge<'datum'> = {
    sources: MISRA1A.x.map(() => 'datum'),
    robust: plain,
    residuals: ([b1, b2]) => MISRA1A.x.map((x, i) => b1! * (1 - Math.exp(-b2! * x)) - MISRA1A.y[i]!),
  };

  it.each([
    ['far', [500, 1e-4]],
    ['near', [250, 5e-4]],
  ])('reaches the certified values of Misra1a from the %s start', (_, start) => {
    const outcome = adjusted(misra, start, [1e-3, 1e-9], 200);
    // Six digits, as asked of a good program; central differences limit the rest.
    MISRA1A.b.forEach((value, i) => expect(outcome.parameters[i]! / value).toBeCloseTo(1, 6));
    const squares = outcome.residuals.reduce((sum, r) => sum + r * r, 0);
    expect(squares / MISRA1A.residualSquares).toBeCloseTo(1, 6);
    // The certified standard deviations count the residual variance, which `adjust` takes as one.
    const residualSd = Math.sqrt(squares / (MISRA1A.x.length - 2));
    MISRA1A.standardDeviation.forEach((value, i) =>
      expect((residualSd * Math.sqrt(outcome.covariance[i]![i]!)) / value).toBeCloseTo(1, 5),
    );
  });

  it('is the weighted mean for direct observations, with its uncertainty split by source in closed form', () => {
    const values = [
      { value: 63, standardUncertainty: 0.5 },
      { value: 64, standardUncertainty: 0.8 },
      { value: 61.5, standardUncertainty: 1.2 },
    ];
    const outcome = adjusted<'a' | 'b' | 'c'>(
      {
        sources: ['a', 'b', 'c'],
        robust: plain,
        residuals: ([x]) => values.map(({ value, standardUncertainty }) => (x! - value) / standardUncertainty),
      },
      [0],
      [1e-3],
    );
    const mean = outcome.propagate(([x]) => x!);
    // Worked example: mean 63.0832, u 0.3998.
    expect(mean.value).toBeCloseTo(63.0832, 4);
    expect(mean.standardUncertainty).toBeCloseTo(0.3998, 4);
    expect(mean.standardUncertainty).toBeCloseTo(weightedMean(values).standardUncertainty, 9);
    // The mean moves by w_i / W per unit of value i: its share is (w_i / W) u_i = u^2 / u_i.
    const u = mean.standardUncertainty;
    expect(mean.bySource.get('a')).toBeCloseTo((u * u) / 0.5, 9);
    expect(mean.bySource.get('b')).toBeCloseTo((u * u) / 0.8, 9);
    expect(mean.bySource.get('c')).toBeCloseTo((u * u) / 1.2, 9);
  });

  it('carries uncertainty through voltage, current and phase as JCGM 100, H.2 does', () => {
    // Means of H.2.1: V = 4.9990 V, I = 19.6610 mA, phase 1.04446 rad, u = 0.0032 V, 0.0095 mA, 0.00075 rad; taken here without
    // their correlation, R = V cos(phase) / I: relative squares add, tan(phase) u(phase) for the phase.
    const [V, I, phase] = [4.999, 19.661e-3, 1.04446];
    const [uV, uI, uPhase] = [0.0032, 0.0095e-3, 0.00075];
    const outcome = adjusted<'voltage' | 'current' | 'phase'>(
      {
        sources: ['voltage', 'current', 'phase'],
        robust: plain,
        residuals: ([v, i, p]) => [(v! - V) / uV, (i! - I) / uI, (p! - phase) / uPhase],
      },
      [5, 0.02, 1],
      [1e-5, 1e-8, 1e-6],
    );
    const resistance = outcome.propagate(([v, i, p]) => (v! / i!) * Math.cos(p!));
    // 127.732 ohm is printed in H.2.
    expect(resistance.value).toBeCloseTo(127.732, 2);
    const R = resistance.value;
    expect(resistance.bySource.get('voltage')).toBeCloseTo((R * uV) / V, 6);
    expect(resistance.bySource.get('current')).toBeCloseTo((R * uI) / I, 6);
    expect(resistance.bySource.get('phase')).toBeCloseTo(R * Math.tan(phase) * uPhase, 6);
    expect(resistance.standardUncertainty).toBeCloseTo(R * Math.hypot(uV / V, uI / I, Math.tan(phase) * uPhase), 6);
  });

  it('splits the uncertainty so that the squares add up to g^T cov g', () => {
    const outcome = adjusted<'slope' | 'points'>(
      {
        sources: ['points', 'points', 'points', 'slope'],
        robust: plain,
        // a line through three points and a prior of its slope
        residuals: ([a, b]) => [a! - 1, (a! + b! - 2.2) / 0.5, (a! + 2 * b! - 2.9) / 0.7, (b! - 1) / 0.3],
      },
      [0, 0],
      [1e-4, 1e-4],
    );
    const at = outcome.propagate(([a, b]) => a! + 3 * b!);
    const [[caa, cab], [, cbb]] = outcome.covariance as [[number, number], [number, number]];
    expect(at.standardUncertainty ** 2).toBeCloseTo(caa + 6 * cab + 9 * cbb, 9);
    const squares = [...at.bySource.values()].reduce((sum, share) => sum + share * share, 0);
    expect(squares).toBeCloseTo(at.standardUncertainty ** 2, 9);
    expect([...at.bySource.keys()].sort()).toEqual(['points', 'slope']);
  });

  it('lets a robust residual that lies far off count for little', () => {
    const values = [10, 10.1, 9.9, 10.05, 9.95, 40];
    const knowledge = (robust: boolean): Knowledge<'datum'> => ({
      sources: values.map(() => 'datum'),
      robust: () => robust,
      residuals: ([x]) => values.map((value) => (x! - value) / 0.1),
    });
    expect(adjusted(knowledge(false), [10], [1e-4]).parameters[0]).toBeCloseTo(15, 6);
    // Cauchy's weight of the outlier is 1 / (1 + (300 / 2)^2): it draws the mean by about 30 / 22500 / 5.
    expect(adjusted(knowledge(true), [10], [1e-4], 200).parameters[0]).toBeCloseTo(10, 2);
  });

  it('refuses what leaves a parameter undetermined', () => {
    const outcome = adjust<'sum'>(
      { sources: ['sum', 'sum'], robust: plain, residuals: ([a, b]) => [a! + b! - 1, (a! + b! - 1.1) / 2] },
      [0, 0],
      [1e-4, 1e-4],
    );
    expect(outcome).toEqual({ ok: false, failure: { kind: 'ill-conditioned' } });
  });

  it('refuses residuals that are no numbers', () => {
    const outcome = adjust<'root'>(
      { sources: ['root'], robust: plain, residuals: ([a]) => [Math.sqrt(a!)] },
      [-1],
      [1e-4],
    );
    expect(outcome).toEqual({ ok: false, failure: { kind: 'ill-conditioned' } });
  });
});
