/**
 * A normal random variable written as its mean plus a weighted sum of independent standard normal factors. Variables that
 * share factors are correlated; sums and multiples stay exact, so that a model of many correlated quantities is written down
 * equation by equation and its covariance follows.
 */
export interface LinearVariable {
  readonly mean: number;
  /** weight of each factor, by its number */
  readonly weights: ReadonlyMap<number, number>;
}

/** Hands out independent standard normal factors. */
export class Factors {
  private count = 0;

  /** A new independent variable with mean 0. */
  scatter(standardDeviation: number): LinearVariable {
    const factor = this.count;
    this.count += 1;
    return { mean: 0, weights: new Map([[factor, standardDeviation]]) };
  }
}

export function constant(mean: number): LinearVariable {
  return { mean, weights: new Map() };
}

export function sum(...terms: readonly LinearVariable[]): LinearVariable {
  const weights = new Map<number, number>();
  for (const term of terms) {
    for (const [factor, weight] of term.weights) weights.set(factor, (weights.get(factor) ?? 0) + weight);
  }
  return { mean: terms.reduce((total, term) => total + term.mean, 0), weights };
}

export function times(share: number, variable: LinearVariable): LinearVariable {
  return {
    mean: share * variable.mean,
    weights: new Map([...variable.weights].map(([factor, weight]) => [factor, share * weight])),
  };
}

/** The variable less its mean. */
export function centred(variable: LinearVariable): LinearVariable {
  return { mean: 0, weights: variable.weights };
}

export function covariance(a: LinearVariable, b: LinearVariable): number {
  let total = 0;
  for (const [factor, weight] of a.weights) total += weight * (b.weights.get(factor) ?? 0);
  return total;
}
