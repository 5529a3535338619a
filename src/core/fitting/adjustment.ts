import { fail, succeed, type Result } from '../result.js';
import { invertSymmetric, multiplyMatrixVector, type IllConditioned } from './linear-system.js';

/**
 * One thing that is known: an observation or prior knowledge. Its residual is (predicted - known) / standard uncertainty,
 * so that it is without unit and of size one where the standard uncertainty is true.
 */
export interface Knowledge<Source extends string> {
  readonly source: Source;
  /** with a robust loss the weight of a residual far beyond its uncertainty fades (Cauchy's loss, scale 2) */
  readonly robust?: boolean;
  readonly residual: (parameters: readonly number[]) => number;
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

/** Derivatives by central differences; `steps` are small against the doubt of each parameter and large against rounding. */
function gradient(
  output: (parameters: readonly number[]) => number,
  at: readonly number[],
  steps: readonly number[],
): number[] {
  const shifted = [...at];
  return at.map((value, i) => {
    const step = steps[i]!;
    shifted[i] = value + step;
    const ahead = output(shifted);
    shifted[i] = value - step;
    const behind = output(shifted);
    shifted[i] = value;
    return (ahead - behind) / (2 * step);
  });
}

/**
 * Least squares with prior knowledge, by Levenberg-Marquardt (Levenberg 1944, Marquardt 1963) with iterative re-weighting
 * for robust residuals. Priors are knowledge like any other, which makes the outcome the mode of the posterior and the
 * covariance its curvature (the generalised form of JCGM 102:2011, 6).
 *
 * @param start first guess of the parameters
 * @param steps size of the steps for numeric derivatives, in the unit of each parameter
 * @returns the adjustment, or `ill-conditioned` where the knowledge does not determine the parameters
 */
export function adjust<Source extends string>(
  knowledge: readonly Knowledge<Source>[],
  start: readonly number[],
  steps: readonly number[],
  iterationLimit = 40,
): Result<Adjustment<Source>, IllConditioned> {
  const residualsAt = (x: readonly number[]): number[] => knowledge.map((item) => item.residual(x));
  const costOf = (residuals: readonly number[]): number =>
    residuals.reduce((sum, r, i) => {
      if (knowledge[i]!.robust !== true) return sum + r * r;
      return sum + CAUCHY_SCALE ** 2 * Math.log1p((r / CAUCHY_SCALE) ** 2);
    }, 0);
  const weightOf = (r: number, i: number): number =>
    knowledge[i]!.robust === true ? 1 / (1 + (r / CAUCHY_SCALE) ** 2) : 1;

  let x = [...start];
  let residuals = residualsAt(x);
  let cost = costOf(residuals);
  let damping = 1e-3;
  let iterations = 0;
  const normalMatrix = (jacobian: number[][], weights: readonly number[]): number[][] =>
    x.map((_, a) => x.map((__, b) => jacobian.reduce((sum, row, k) => sum + weights[k]! * row[a]! * row[b]!, 0)));

  for (; iterations < iterationLimit; iterations++) {
    if (!Number.isFinite(cost)) return fail({ kind: 'ill-conditioned' });
    const jacobian = knowledge.map((item) => gradient(item.residual, x, steps));
    const weights = residuals.map(weightOf);
    const normal = normalMatrix(jacobian, weights);
    const downhill = x.map((_, a) => -jacobian.reduce((sum, row, k) => sum + weights[k]! * row[a]! * residuals[k]!, 0));
    let improved = false;
    let relativeGain = 0;
    while (damping < 1e12) {
      const damped = normal.map((row, a) => row.map((value, b) => (a === b ? value * (1 + damping) : value)));
      const inverse = invertSymmetric(damped);
      if (inverse === null) {
        damping *= 10;
        continue;
      }
      const move = multiplyMatrixVector(inverse, downhill);
      const candidate = x.map((value, i) => value + move[i]!);
      const candidateResiduals = residualsAt(candidate);
      const candidateCost = costOf(candidateResiduals);
      if (candidateCost <= cost) {
        relativeGain = (cost - candidateCost) / Math.max(cost, 1e-12);
        x = candidate;
        residuals = candidateResiduals;
        cost = candidateCost;
        damping = Math.max(damping / 10, 1e-9);
        improved = true;
        break;
      }
      damping *= 10;
    }
    if (!improved || relativeGain < 1e-10) break;
  }

  const jacobian = knowledge.map((item) => gradient(item.residual, x, steps));
  const weights = residuals.map(weightOf);
  const covariance = invertSymmetric(normalMatrix(jacobian, weights));
  if (covariance === null) return fail({ kind: 'ill-conditioned' });

  const propagate = (output: (parameters: readonly number[]) => number): Propagation<Source> => {
    const sensitivity = multiplyMatrixVector(covariance, gradient(output, x, steps));
    const squares = new Map<Source, number>();
    knowledge.forEach((item, k) => {
      const row = jacobian[k]!;
      // A residual with weight w counts as knowledge with variance 1/w: (w J cov g)^2 / w.
      const influence = row.reduce((sum, value, i) => sum + value * sensitivity[i]!, 0);
      squares.set(item.source, (squares.get(item.source) ?? 0) + weights[k]! * influence * influence);
    });
    const bySource = new Map([...squares].map(([source, square]) => [source, Math.sqrt(square)]));
    const whole = Math.sqrt([...squares.values()].reduce((sum, square) => sum + square, 0));
    return { value: output(x), standardUncertainty: whole, bySource };
  };
  return succeed({ parameters: x, covariance, residuals, iterations, propagate });
}
