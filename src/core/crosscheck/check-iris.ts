import type { PopulationSpread } from '../catalogue/measurement.js';
import type { Estimate } from '../estimate/estimate.js';
import { NORMAL_95 } from '../statistics/normal.js';

/** Whether the iris that the card's scale gives is one that people have; if not, doubt the scale of the whole picture. */
export interface IrisCheck {
  readonly kind: 'usual' | 'unusual';
  /** distance from the mean in standard deviations of people and estimate together */
  readonly zScore: number;
}

/**
 * Compares the estimated iris diameter with its spread among adults. It differs so little between people that a wrong card or a
 * scaled print shows, but only beyond about 7 %. One wearer in twenty is unusual without any fault.
 */
export function checkIris(estimate: Estimate, population: PopulationSpread): IrisCheck {
  const spread = Math.hypot(population.standardDeviation, estimate.standardUncertainty);
  const zScore = (estimate.value - population.mean) / spread;
  return { kind: Math.abs(zScore) <= NORMAL_95 ? 'usual' : 'unusual', zScore };
}
