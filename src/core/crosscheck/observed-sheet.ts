import type { ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import { NEAR_DISTANCES } from '../catalogue/pupil-distances.js';
import { invertSymmetric, logDeterminant, multiplyMatrixVector } from '../fitting/linear-system.js';
import { invariant } from '../result.js';
import type { FaceModel } from './face-model.js';
import type { Evidence } from './reconciliation.js';

type Matrix = readonly (readonly number[])[];

/**
 * The readings and the camera's values as one normal random vector: how far each is from its mean (`residual`), the inverse of
 * their covariance (`precision`, S^-1 with S = what scatters among people plus each one's own doubt), and their product
 * `weighted` = S^-1 residual. All that is asked of a hypothesis follows from these without inverting anything again.
 *
 * Every reading has the place of its name in all vectors, and the camera's value of it the same place behind all readings;
 * where nothing was observed stand zeros.
 */
export interface ObservedSheet {
  /** the places where something was read by hand */
  readonly handPlaces: readonly number[];
  /** the places of the camera's values */
  readonly cameraPlaces: readonly number[];
  readonly residual: Float64Array;
  readonly weighted: Float64Array;
  readonly precision: readonly Float64Array[];
  /** variance of each value for a given true one */
  readonly ownVariance: Float64Array;
}

const PLACES: ReadonlyMap<ReadingName, number> = new Map(READING_NAMES.map((name, place) => [name, place]));

/** The place of a reading in the vectors of a sheet. */
export function placeOf(name: ReadingName): number {
  return PLACES.get(name)!;
}

/** The name of what stands at a place, whether it is the hand's or the camera's. */
export function nameAt(place: number): ReadingName {
  return READING_NAMES[place % READING_NAMES.length]!;
}

/**
 * The places of the camera's values. Its near distances follow from its far ones: these carry all that it says, without saying it
 * twice.
 */
export const CAMERA_PLACES: readonly number[] = READING_NAMES.flatMap((name, place) =>
  Object.values<ReadingName>(NEAR_DISTANCES).includes(name) ? [] : [READING_NAMES.length + place],
);

/** The vector of all that was observed. */
export function observeSheet({ readings, estimates }: Evidence, model: FaceModel): ObservedSheet {
  const handPlaces = READING_NAMES.filter((name) => readings[name] !== undefined).map(placeOf);
  const hasBothEyes = estimates?.monoPdR !== undefined && estimates.monoPdL !== undefined;
  const cameraPlaces = CAMERA_PLACES.filter((place) => {
    const name = nameAt(place);
    return estimates?.[name] !== undefined && !(name === 'pdFar' && hasBothEyes);
  });
  const among = READING_NAMES.length;
  const size = 2 * among;
  const nothing = new Float64Array(size);
  const [residual, weighted, ownVariance] = [nothing.slice(), nothing.slice(), nothing.slice()];
  for (const place of [...handPlaces, ...cameraPlaces]) {
    const one = place < among ? readings[nameAt(place)] : estimates?.[nameAt(place)];
    invariant(one !== undefined, `${nameAt(place)} was observed`);
    residual[place] = one.value - model.means[nameAt(place)];
    ownVariance[place] = one.standardUncertainty ** 2;
  }
  const shared = hasBothEyes ? sharedByEyes(estimates) : 0;
  const precision = new Array<Float64Array>(size).fill(nothing);
  const observed = new Set([...handPlaces, ...cameraPlaces]);
  // What has nothing to do with one another is inverted apart.
  for (const block of model.blocks) {
    const places = [...block, ...block.map((place) => among + place)].filter((place) => observed.has(place));
    const matrix = places.map((a) => places.map((b) => model.covariance[a % among]![b % among]!));
    places.forEach((place, i) => (matrix[i]![i]! += ownVariance[place]!));
    const [i, j] = [places.indexOf(among + placeOf('monoPdR')), places.indexOf(among + placeOf('monoPdL'))];
    if (i >= 0 && j >= 0) {
      matrix[i]![j]! += shared;
      matrix[j]![i]! += shared;
    }
    const inverse = invertSymmetric(matrix);
    invariant(inverse !== null, 'a covariance with own doubts in it is positive definite');
    inverse.forEach((row, k) => {
      const spread = new Float64Array(size);
      row.forEach((value, l) => {
        spread[places[l]!] = value;
        weighted[places[k]!]! += value * residual[places[l]!]!;
      });
      precision[places[k]!] = spread;
    });
  }
  return { handPlaces, cameraPlaces, residual, weighted, precision, ownVariance };
}

/**
 * Covariance of what the camera says of both eyes: u(R + L)² = u(R)² + u(L)² + 2 cov(R, L), so that the doubt of their sum tells
 * how their own hang together.
 */
function sharedByEyes({ pdFar, monoPdR, monoPdL }: NonNullable<Evidence['estimates']>): number {
  if (pdFar === undefined || monoPdR === undefined || monoPdL === undefined) return 0;
  return sharedDoubt(
    pdFar.standardUncertainty ** 2,
    monoPdR.standardUncertainty ** 2,
    monoPdL.standardUncertainty ** 2,
  );
}

/** The covariance of two values, from their variances and that of their sum. */
export function sharedDoubt(ofSum: number, varianceR: number, varianceL: number): number {
  const limit = 0.98 * Math.sqrt(varianceR * varianceL);
  return Math.min(Math.max((ofSum - varianceR - varianceL) / 2, -limit), limit);
}

/** The same sheet with other values in some places: `changes` are added to the residuals. Nothing is inverted again. */
export function withChanges(sheet: ObservedSheet, changes: readonly Change[]): ObservedSheet {
  const residual = sheet.residual.slice();
  const weighted = sheet.weighted.slice();
  for (const { place, by } of changes) {
    residual[place]! += by;
    const row = sheet.precision[place]!;
    for (let i = 0; i < row.length; i += 1) weighted[i]! += by * row[i]!;
  }
  return { ...sheet, residual, weighted };
}

/** What is added to the value at a place. */
export interface Change {
  readonly place: number;
  readonly by: number;
}

/**
 * Natural logarithm of how much likelier the sheet is with the changes than as it stands:
 * -½ (r + d)ᵀ W (r + d) + ½ rᵀ W r = -dᵀ W r - ½ dᵀ W d.
 */
export function gainOfChanges(sheet: ObservedSheet, changes: readonly Change[]): number {
  const { weighted, precision } = sheet;
  let gain = 0;
  for (let a = 0; a < changes.length; a += 1) {
    const { place, by } = changes[a]!;
    gain -= by * weighted[place]! + 0.5 * by * by * precision[place]![place]!;
    for (let b = 0; b < a; b += 1) {
      const other = changes[b]!;
      gain -= by * other.by * precision[place]![other.place]!;
    }
  }
  return gain;
}

/** The same for one change. */
export function gainOfChange({ weighted, precision }: ObservedSheet, { place, by }: Change): number {
  return -by * weighted[place]! - 0.5 * by * by * precision[place]![place]!;
}

/** What all other values say of those at `places`: how far these are off, and with which covariance. */
export interface Prediction {
  /** written less predicted, in the order of `places` */
  readonly off: readonly number[];
  /** covariance of written less predicted */
  readonly covariance: Matrix;
  /** natural logarithm of the probability density of what stands there, given all others */
  readonly logDensity: number;
}

/**
 * The values at some places, predicted from all others. For a block B of a normal vector the rest leaves it the covariance
 * (W_BB)^-1, and what is written lies (W_BB)^-1 (W r)_B off the prediction (partitioned inverse).
 */
export function predictFromOthers({ weighted, precision }: ObservedSheet, places: readonly number[]): Prediction {
  const block = places.map((a) => places.map((b) => precision[a]![b]!));
  const covariance = invertSymmetric(block);
  invariant(covariance !== null, 'a part of a precision is positive definite');
  const pulls = places.map((place) => weighted[place]!);
  const off = multiplyMatrixVector(covariance, pulls);
  const distance = off.reduce((total, one, i) => total + one * pulls[i]!, 0);
  return {
    off,
    covariance,
    logDensity: -0.5 * (distance + places.length * Math.log(2 * Math.PI) - logDeterminant(block)),
  };
}

/** The sheet with the values at these places put where all others expect them, so that they say nothing any more. */
export function leftOut(sheet: ObservedSheet, places: readonly number[]): ObservedSheet {
  const { off } = predictFromOthers(sheet, places);
  return withChanges(
    sheet,
    places.map((place, i): Change => ({ place, by: -off[i]! })),
  );
}
