import type { ReadingName } from './measurement.js';

/** The places of one set of pupil distances: both eyes' together, and each eye's from the midline. */
export interface PupilDistances {
  readonly whole: ReadingName;
  readonly R: ReadingName;
  readonly L: ReadingName;
}

export const FAR_DISTANCES = { whole: 'pdFar', R: 'monoPdR', L: 'monoPdL' } as const satisfies PupilDistances;
export const NEAR_DISTANCES = { whole: 'pdNear', R: 'monoNearR', L: 'monoNearL' } as const satisfies PupilDistances;
