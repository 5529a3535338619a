import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import type { MeasurementId, ReadingName } from '../../src/core/catalogue/measurement.js';
import { noseWidthMm } from '../../src/core/crosscheck/nose-flanks.js';
import type { SeededRandom } from '../support/seeded-random.js';

/** The true values of one simulated wearer with a chosen frame: lengths in mm, angles in degrees. */
export type TrueFace = Readonly<Record<ReadingName, number>>;

/** ANSUR II 2012: interpupillary breadth and head breadth of men and women, mm, and their correlation within each sex. */
const SEXES = [
  { share: 0.5, pd: [64.016, 3.419], head: [154.33, 5.532], correlation: 0.306 },
  { share: 0.5, pd: [61.708, 3.622], head: [147.769, 5.192], correlation: 0.284 },
] as const;

/** From the spectacle plane to the eyes' centres of rotation, mm (textbooks; some take 25). */
const SPECTACLE_TO_ROTATION_MM = { mean: 27, standardDeviation: 1 } as const;

/**
 * One wearer drawn from published populations, by equations of this file: geometry is exact where the cross-check works with
 * straight lines, and sexes are drawn apart. What nobody published (how far sides differ, how frames are chosen) is chosen here
 * for itself and only roughly like the cross-check's own assumptions.
 *
 * @param workingDistanceMm the working distance that is really kept
 */
export function drawFace(random: SeededRandom, workingDistanceMm: number): TrueFace {
  const { normal, uniform } = random;
  const people = (id: MeasurementId): number => {
    const { mean, standardDeviation } = OUTSIDE_TABLES.population[id];
    return normal(mean, standardDeviation);
  };
  const halfDifference = (id: MeasurementId): number =>
    normal(0, OUTSIDE_TABLES.sideDifferences[id]?.standardDeviation ?? 0) / 2;
  const bothSides = (id: MeasurementId): readonly [number, number] => {
    const [middle, half] = [people(id), halfDifference(id)];
    return [middle + half, middle - half];
  };

  const sex = uniform() < SEXES[0].share ? SEXES[0] : SEXES[1];
  const [z, other] = [normal(0, 1), normal(0, 1)];
  const pdFar = sex.pd[0] + sex.pd[1] * z;
  const headWidth = sex.head[0] + sex.head[1] * (sex.correlation * z + Math.sqrt(1 - sex.correlation ** 2) * other);
  const beside = halfDifference('monocularPd');
  const [monoPdR, monoPdL] = [pdFar / 2 + beside, pdFar / 2 - beside];
  const rotationMm = normal(SPECTACLE_TO_ROTATION_MM.mean, SPECTACLE_TO_ROTATION_MM.standardDeviation);
  const nearRatio = workingDistanceMm / (workingDistanceMm + rotationMm);
  const [apertureR, apertureL] = bothSides('lidAperture');
  const [pupilDiameterR, pupilDiameterL] = bothSides('pupilDiameter');

  const apicalRadius = Math.max(people('apicalRadius'), 3);
  const [frontalAngleR, frontalAngleL] = bothSides('frontalAngle').map((deg) => Math.max(deg, 5)) as [number, number];
  // each flank has its own angle, so that the width is half of either nose; real flanks are not straight
  const bulgeMm = normal(0, 0.7);
  const rims = (belowMm: number): number =>
    (noseWidthMm(apicalRadius, frontalAngleR, belowMm) + noseWidthMm(apicalRadius, frontalAngleL, belowMm)) / 2 +
    bulgeMm +
    normal(0, 0.4);
  const eyeHigherMm = normal(0, 0.9);
  const crest = people('crestHeight');

  const [lengthToBendR, lengthToBendL] = bothSides('lengthToBend');
  const [lengthOfDropR, lengthOfDropL] = bothSides('lengthOfDrop');
  const toTangentMm = normal(5, 1.8);
  const earPointDifference = people('earPointDifference');
  const lean = people('angleOfSide');
  const tiltDeg = (Math.atan2(earPointDifference, lengthToBendR) * 180) / Math.PI;
  const [downwardAngleOfDropR, downwardAngleOfDropL] = bothSides('downwardAngleOfDrop');
  const [inwardAngleOfDropR, inwardAngleOfDropL] = bothSides('inwardAngleOfDrop');
  const [splayAngleR, splayAngleL] = bothSides('splayAngle');
  const [backVertexDistanceR, backVertexDistanceL] = bothSides('backVertexDistance');

  // A frame of the shop: whole millimetres, sides in steps of five; near the wearer's PD, but never made for it.
  const distanceBetweenLenses = Math.round(people('distanceBetweenLenses'));
  const boxLensWidth = Math.round(51 + 0.45 * (pdFar - 63) - 0.3 * (distanceBetweenLenses - 18) + normal(0, 2.2));
  const boxLensHeight = Math.round(people('boxLensHeight'));
  const wantedSide = (lengthToBendR + lengthToBendL + lengthOfDropR + lengthOfDropL) / 2;
  const fitting = boxLensHeight / 2 + 2 + normal(0, 2);
  return {
    pdFar,
    monoPdR,
    monoPdL,
    pdNear: pdFar * nearRatio,
    monoNearR: monoPdR * nearRatio,
    monoNearL: monoPdL * nearRatio,
    apertureR,
    apertureL,
    pupilDiameterR,
    pupilDiameterL,
    irisDiameter: people('irisDiameter'),
    headWidth,
    templeWidth: headWidth - Math.max(normal(20, 6), 1),
    apicalRadius,
    distanceBetweenRims10: rims(10),
    distanceBetweenRims15: rims(15),
    frontalAngleR,
    frontalAngleL,
    splayAngleR,
    splayAngleL,
    crestHeightR: crest - eyeHigherMm / 2 + normal(0, 0.3),
    crestHeightL: crest + eyeHigherMm / 2 + normal(0, 0.3),
    bridgeProjection: people('bridgeProjection'),
    lengthToBendR,
    lengthToBendL,
    lengthToTangentR: lengthToBendR - toTangentMm + normal(0, 0.7),
    lengthToTangentL: lengthToBendL - toTangentMm + normal(0, 0.7),
    lengthOfDropR,
    lengthOfDropL,
    angleOfSideR: lean - tiltDeg / 2 + normal(0, 1),
    angleOfSideL: lean + tiltDeg / 2 + normal(0, 1),
    downwardAngleOfDropR,
    downwardAngleOfDropL,
    inwardAngleOfDropR,
    inwardAngleOfDropL,
    earPointDifference,
    boxLensWidth,
    boxLensHeight,
    distanceBetweenLenses,
    overallSideLength: 5 * Math.round((wantedSide + normal(0, 1.5)) / 5),
    fittingHeightR: fitting + eyeHigherMm / 2 + normal(0, 0.3),
    fittingHeightL: fitting - eyeHigherMm / 2 + normal(0, 0.3),
    backVertexDistanceR,
    backVertexDistanceL,
    pantoscopicAngle: 5 + 0.4 * lean + normal(0, 2),
    faceFormAngle: people('faceFormAngle'),
  };
}
