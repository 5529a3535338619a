import { fail, succeed, type Result } from '../result.js';
import { derivatives } from './derivatives.js';
import { invertSymmetric, multiplyMatrixVector, type IllConditioned } from './linear-system.js';

/**
 * All that is known: observations and prior knowledge alike. Each residual is (predicted - known) / standard uncertainty, so
 * that it is without unit and of size one where the standard uncertainty is true.
 */
export interface Knowledge<Source extends string> {
  /** one entry for each residual */
  readonly sources: readonly Source[];
  /** with a robust loss the weight of a residual far beyond its uncertainty fades (Cauchy's loss, scale 2) */
  readonly robust: (index: number) => boolean;
  readonly residuals: (parameters: readonly number[]) => number[];
}

/** The outcome of an adjustment: parameters, their covariance, and what every source contributed to it. */
export interface Adjustment<Source extends string> {
  readonly parameters: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** residuals in the order of the knowledge, each over its own standard uncertainty */
  readonly residuals: readonly number[];
  readonly iterations: number;
  /**
   * Standard uncertainty of a function of the parameters, split by source: the root of the sum of squares is the whole.
   * For independent knowledge with weight one, cov = sum over k of (dx/dk)(dx/dk)^T, which is what is split here.
   */
  readonly propagate: (output: (parameters: readonly number[]) => number) => Propagation<Source>;
}

export interface Propagation<Source extends string> {
  readonly value: number;
  readonly standardUncertainty: number;
  readonly bySource: ReadonlyMap<Source, number>;
}

const CAUCHY_SCALE = 2;

/** What a residual that may be an outlier costs: Cauchy's loss. */
export function robustCost(residual: number): number {
  return CAUCHY_SCALE ** 2 * Math.log1p((residual / CAUCHY_SCALE) ** 2);
}

/** What such a residual still weighs, 0 to 1. */
export function robustWeight(residual: number): number {
  return 1 / (1 + (residual / CAUCHY_SCALE) ** 2);
}

/** J^T W J of a Jacobian by rows. */
function normalMatrix(jacobian: readonly Float64Array[], weights: readonly number[], size: number): number[][] {
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  jacobian.forEach((row, k) => {
    for (let a = 0; a < size; a++) {
      const weighted = weights[k]! * row[a]!;
      if (weighted === 0) continue;
      for (let b = 0; b <= a; b++) normal[a]![b]! += weighted * row[b]!;
    }
  });
  for (let a = 0; a < size; a++) for (let b = 0; b < a; b++) normal[b]![a] = normal[a]![b]!;
  return normal;
}

/**
 * Least squares with prior knowledge, by Levenberg-Marquardt (Levenberg 1944, Marquardt 1963) with iterative re-weighting
 * for robust residuals. Priors are knowledge like any other, which makes the outcome the mode of the posterior and the
 * covariance its curvature (the generalised form of JCGM 102:2011, 6).
 *
 * @param start first guess of the parameters
 * @param steps size of the steps for numeric derivatives, in the unit of each parameter: small against its doubt, large against
 *   rounding
 * @returns the adjustment, or `ill-conditioned` where the knowledge does not determine the parameters
 */
export function adjust<Source extends string>(
  knowledge: Knowledge<Source>,
  start: readonly number[],
  steps: readonly number[],
  iterationLimit = 40,
): Result<Adjustment<Source>, IllConditioned> {
  const size = start.length;
  const costOf = (residuals: readonly number[]): number =>
    residuals.reduce((sum, r, i) => sum + (knowledge.robust(i) ? robustCost(r) : r * r), 0);
  const weightOf = (r: number, i: number): number => (knowledge.robust(i) ? robustWeight(r) : 1);

  let x = [...start];
  let residuals = knowledge.residuals(x);
  let cost = costOf(residuals);
  let damping = 1e-3;
  let iterations = 0;
  for (; iterations < iterationLimit; iterations++) {
    if (!Number.isFinite(cost)) return fail({ kind: 'ill-conditioned' });
    const jacobian = derivatives(knowledge.residuals, x, steps);
    const weights = residuals.map(weightOf);
    const normal = normalMatrix(jacobian, weights, size);
    const downhill = new Array<number>(size).fill(0);
    jacobian.forEach((row, k) => row.forEach((value, a) => (downhill[a]! -= weights[k]! * value * residuals[k]!)));
    let relativeGain = 0;
    let improved = false;
    while (!improved && damping < 1e12) {
      const damped = normal.map((row, a) => row.map((value, b) => (a === b ? value * (1 + damping) : value)));
      const inverse = invertSymmetric(damped);
      if (inverse !== null) {
        const move = multiplyMatrixVector(inverse, downhill);
        const candidate = x.map((value, i) => value + move[i]!);
        const candidateResiduals = knowledge.residuals(candidate);
        const candidateCost = costOf(candidateResiduals);
        if (candidateCost <= cost) {
          relativeGain = (cost - candidateCost) / Math.max(cost, 1e-12);
          x = candidate;
          residuals = candidateResiduals;
          cost = candidateCost;
          improved = true;
        }
      }
      damping = improved ? Math.max(damping / 10, 1e-9) : damping * 10;
    }
    if (!improved || relativeGain < 1e-9) break;
  }

  const jacobian = derivatives(knowledge.residuals, x, steps);
  const weights = residuals.map(weightOf);
  const covariance = invertSymmetric(normalMatrix(jacobian, weights, size));
  if (covariance === null) return fail({ kind: 'ill-conditioned' });

  const propagate = (output: (parameters: readonly number[]) => number): Propagation<Source> => {
    const slope = derivatives((parameters) => [output(parameters)], x, steps)[0]!;
    const sensitivity = multiplyMatrixVector(covariance, slope);
    const squares = new Map<Source, number>();
    knowledge.sources.forEach((source, k) => {
      // A residual with weight w counts as knowledge with variance 1/w: (w J cov g)^2 / w.
      const influence = jacobian[k]!.reduce((sum, value, i) => sum + value * sensitivity[i]!, 0);
      squares.set(source, (squares.get(source) ?? 0) + weights[k]! * influence * influence);
    });
    const bySource = new Map([...squares].map(([source, square]) => [source, Math.sqrt(square)]));
    const whole = Math.sqrt([...squares.values()].reduce((sum, square) => sum + square, 0));
    return { value: output(x), standardUncertainty: whole, bySource };
  };
  return succeed({ parameters: x, covariance, residuals, iterations, propagate });
}
