import type { Catalogue } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import type { Estimate } from '../estimate/estimate.js';
import type { Gauge } from '../reading/gauge.js';
import type { Readings } from '../reading/reading.js';
import type { RelationId } from './relations.js';
import type { Slip } from './slip.js';

/** All that speaks for or against what is written. */
export interface Evidence {
  readonly readings: Readings;
  /** the camera's estimates that may be used: leave out those that are still covered; null without a picture */
  readonly estimates: { readonly [Name in ReadingName]?: Estimate } | null;
  readonly catalogue: Catalogue;
  /** spectacle plane to the near object, mm */
  readonly workingDistanceMm: number;
  /** all gauges that the readings may have been taken with: an amount that one of them needs may have been forgotten */
  readonly gauges: readonly Gauge[];
}

/** One or two slips that together explain what does not fit. */
export interface Explanation {
  readonly slips: readonly [Slip] | readonly [Slip, Slip];
  /** posterior probability, 0 to 1, of just this among all that could have happened, given chosen frequencies of slips */
  readonly probability: number;
}

/** What a reading was held against, and how far it is from what that says; in the unit of the measurement. */
export interface Conflict {
  /** the rule between readings, the camera, or what is usual among people */
  readonly with: RelationId | 'camera' | 'population';
  /** the readings that it joins, the suspected one first */
  readonly names: readonly ReadingName[];
  readonly expected: number;
  /** one standard deviation of written less expected, both doubts together */
  readonly standardUncertainty: number;
}

/** A reading that very likely does not belong where it stands. */
export interface Suspicion {
  /** the readings of which one or more are wrong, the most doubtful first */
  readonly names: readonly ReadingName[];
  /** posterior probability that something is wrong with them, 0 to 1 */
  readonly probability: number;
  /** what probably happened, most probable first; empty where no usual slip explains it: read again */
  readonly explanations: readonly Explanation[];
  /** what the first of `names` conflicts with most; null where nothing alone shows it */
  readonly conflict: Conflict | null;
  /** what all else says that the first of `names` should be; null where nothing else says much */
  readonly expected: { readonly value: number; readonly standardUncertainty: number } | null;
}

/** The most probable true value of a place, from all that is written and not suspected, and from the camera. */
export interface ReconciledValue {
  readonly value: number;
  readonly standardUncertainty: number;
}

export interface Reconciliation {
  /** most probable first; empty where all fits */
  readonly suspicions: readonly Suspicion[];
  /** for every reading that is in */
  readonly values: { readonly [Name in ReadingName]?: ReconciledValue };
  /** posterior probability for each reading that it is wrong, 0 to 1 */
  readonly doubts: { readonly [Name in ReadingName]?: number };
}

/** Signature of `reconcile`, so that screens can be tried without it. */
export type Reconcile = (evidence: Evidence) => Reconciliation;
