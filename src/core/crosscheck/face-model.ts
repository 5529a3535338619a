import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementById } from '../catalogue/catalogue.js';
import type { MeasurementId, ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import { nearCentrationDistanceMm } from '../estimate/gaze.js';
import { rectangularUncertainty } from '../statistics/uncertainty.js';
import { radiansToDegrees } from '../units/angle.js';
import type { LinearVariable } from './linear-variable.js';
import { centred, constant, covariance, Factors, sum, times } from './linear-variable.js';
import { noseWidthMm } from './nose-flanks.js';
import type { RelationId } from './relations.js';

/** How the true values of all measurements scatter among people and hang together: one normal distribution. */
export interface FaceModel {
  readonly means: Readonly<Record<ReadingName, number>>;
  /** covariance of two true values, in the product of their units; rows and columns in the order of READING_NAMES */
  readonly covariance: readonly (readonly number[])[];
  /** places of READING_NAMES that have something to do with one another, directly or through others; each in one block */
  readonly blocks: readonly (readonly number[])[];
  /** the block of each place */
  readonly blockAt: readonly number[];
  readonly relations: readonly LinearRelation[];
}

/** A rule between true values: the sum of all shares times values is about `constant`. */
export interface LinearRelation {
  readonly id: RelationId;
  readonly shares: { readonly [Name in ReadingName]?: number };
  readonly constant: number;
}

/** Correlation of interpupillary and head breadth, men 0.306 and women 0.284 (computed on ANSUR II 2012). */
const HEAD_AND_PD = 0.295;

/**
 * How far the true working distance may lie from the one that was set, as a share of it; any within is equally likely. Chosen:
 * 400 mm stands for 320 to 480, which moves a near distance of 59 by three quarters of a millimetre either way.
 */
const WORKING_DISTANCE_SHARE = 0.2;

/** What is left between near and far beside the working distance, mm. Chosen: eyes converge a little unevenly. */
const NEAR_SCATTER_MM = 0.2;

/** Real noses are no circles with straight flanks, mm (chosen): both widths together, and each by itself. */
const NOSE_SHAPE_MM = { common: 0.8, own: 0.5 } as const;

/** How far temples follow the head. Chosen so that 3 in 1000 are not narrower, as bony faces are (ANSUR II: 4 in 1000). */
const TEMPLES_FOLLOW_HEAD = 0.75;

/** The share of the difference between two crest heights, or two fitting heights, that is the eyes' own height. Chosen. */
const HEIGHT_SHARE = 0.75;

/** From the tangent to the bend, mm, and how it scatters between people and between sides. Chosen: the curve over the ear. */
const TANGENT_TO_BEND_SCATTER_MM = { common: 2, own: 0.8 } as const;

/** Sides are stocked in steps of 5 mm and the drop is bent to suit, mm. Chosen. */
const OVERALL_SIDE_SCATTER_MM = 2.5;

/** How far frames follow the face that they were chosen for. Chosen: boxed centres come within about 3.6 mm of 6 mm beyond the PD. */
const FRAME = {
  widthFollowsPd: 0.4,
  widthFollowsBridge: -0.3,
  fittingFollowsHeight: 0.4,
  leanFollowsSides: 0.4,
} as const;

/** A table of records may have a working distance for each; this many are kept. */
const MOST_MODELS = 50;

const MODELS = new WeakMap<Catalogue, Map<number, FaceModel>>();

/** The distribution for a catalogue and a working distance (spectacle plane to the near object, mm); made once for each. */
export function faceModel(catalogue: Catalogue, workingDistanceMm: number): FaceModel {
  const known = MODELS.get(catalogue) ?? new Map<number, FaceModel>();
  MODELS.set(catalogue, known);
  const before = known.get(workingDistanceMm);
  if (before !== undefined) return before;
  if (known.size >= MOST_MODELS) known.clear();
  const model = makeFaceModel(catalogue, workingDistanceMm);
  known.set(workingDistanceMm, model);
  return model;
}

function makeFaceModel(catalogue: Catalogue, workingDistanceMm: number): FaceModel {
  const factors = new Factors();
  const population = (id: MeasurementId) => measurementById(catalogue, id).population;
  const meanOf = (id: MeasurementId): number => population(id).mean;
  /** what is missing to the published spread once `explained` is in */
  const rest = (id: MeasurementId, explained: LinearVariable): LinearVariable => {
    const missing = population(id).standardDeviation ** 2 - covariance(explained, explained);
    return factors.scatter(Math.sqrt(Math.max(missing, 0)));
  };
  const alone = (id: MeasurementId): LinearVariable =>
    sum(constant(meanOf(id)), factors.scatter(population(id).standardDeviation));
  const sideSpread = (id: MeasurementId): number =>
    measurementById(catalogue, id).sideDifference?.standardDeviation ?? 0;
  /** both sides from their common value and what right is more than left */
  const apart = (common: LinearVariable, difference: LinearVariable) => ({
    R: sum(common, times(0.5, difference)),
    L: sum(common, times(-0.5, difference)),
  });
  const bothSides = (id: MeasurementId, difference = factors.scatter(sideSpread(id)), explained = constant(0)) =>
    apart(sum(constant(meanOf(id)), explained, rest(id, sum(explained, times(0.5, difference)))), difference);

  const head = alone('headWidth');
  const pdOfHead = times(
    (HEAD_AND_PD * population('binocularPd').standardDeviation) / population('headWidth').standardDeviation,
    centred(head),
  );
  const pd = sum(constant(meanOf('binocularPd')), pdOfHead, rest('binocularPd', pdOfHead));
  const mono = apart(times(0.5, pd), factors.scatter(sideSpread('monocularPd')));

  const ratio = nearCentrationDistanceMm(1, workingDistanceMm);
  // d ratio / d ln W = ratio (1 - ratio), by differentiating W / (W + s)
  const nearSwing = ratio * (1 - ratio);
  const workingScatter = factors.scatter(rectangularUncertainty(WORKING_DISTANCE_SHARE));
  const near = (far: LinearVariable): LinearVariable =>
    sum(times(ratio, far), times(far.mean * nearSwing, workingScatter));
  const monoNear = {
    R: sum(near(mono.R), factors.scatter(NEAR_SCATTER_MM)),
    L: sum(near(mono.L), factors.scatter(NEAR_SCATTER_MM)),
  };

  const temples = times(TEMPLES_FOLLOW_HEAD, centred(head));
  const radius = alone('apicalRadius');
  const frontal = bothSides('frontalAngle');
  const frontalMean = times(0.5, sum(frontal.R, frontal.L));
  const flanks = ([10, 15] as const).map((belowMm) => flankSlopes(radius.mean, frontalMean.mean, belowMm));
  const noseShape = factors.scatter(NOSE_SHAPE_MM.common);
  const [rims10, rims15] = flanks.map(({ widthMm, perRadius, perDeg }) =>
    sum(
      constant(widthMm),
      times(perRadius, centred(radius)),
      times(perDeg, centred(frontalMean)),
      noseShape,
      factors.scatter(NOSE_SHAPE_MM.own),
    ),
  ) as [LinearVariable, LinearVariable];

  // The eyes' heights: where the right eye stands higher, its lower lid comes nearer to the crest and its pupil higher in the lens.
  const rightEyeHigher = factors.scatter(1);
  const byEyes = (id: MeasurementId, sign: 1 | -1): LinearVariable =>
    sum(
      times(sign * Math.sqrt(HEIGHT_SHARE) * sideSpread(id), rightEyeHigher),
      factors.scatter(Math.sqrt(1 - HEIGHT_SHARE) * sideSpread(id)),
    );
  const crest = bothSides('crestHeight', byEyes('crestHeight', -1));
  const boxHeight = alone('boxLensHeight');
  const fitting = bothSides(
    'fittingHeight',
    byEyes('fittingHeight', 1),
    times(FRAME.fittingFollowsHeight, centred(boxHeight)),
  );

  const bend = bothSides('lengthToBend');
  const beforeBend = sum(
    constant(meanOf('lengthToBend') - meanOf('lengthToTangent')),
    factors.scatter(TANGENT_TO_BEND_SCATTER_MM.common),
  );
  const tangent = (toBend: LinearVariable): LinearVariable =>
    sum(toBend, times(-1, beforeBend), factors.scatter(TANGENT_TO_BEND_SCATTER_MM.own));
  const drop = bothSides('lengthOfDrop');
  const overall = sum(times(0.5, sum(bend.R, bend.L, drop.R, drop.L)), factors.scatter(OVERALL_SIDE_SCATTER_MM));

  const rightEarHigher = alone('earPointDifference');
  // A side that ends higher by d slopes less by atan(d / length to bend).
  const degPerMm = radiansToDegrees(1 / meanOf('lengthToBend'));
  const sideTilt = times(-degPerMm, rightEarHigher);
  const ownTilt = Math.max(sideSpread('angleOfSide') ** 2 - covariance(sideTilt, sideTilt), 0);
  const angle = bothSides('angleOfSide', sum(sideTilt, factors.scatter(Math.sqrt(ownTilt))));
  const leanOfSides = times(FRAME.leanFollowsSides / 2, centred(sum(angle.R, angle.L)));

  const bridge = alone('distanceBetweenLenses');
  const boxFollows = sum(times(FRAME.widthFollowsPd, centred(pd)), times(FRAME.widthFollowsBridge, centred(bridge)));
  const aperture = bothSides('lidAperture');
  const pupil = bothSides('pupilDiameter');
  const splay = bothSides('splayAngle');
  const downward = bothSides('downwardAngleOfDrop');
  const inward = bothSides('inwardAngleOfDrop');
  const vertex = bothSides('backVertexDistance');

  const variables: Readonly<Record<ReadingName, LinearVariable>> = {
    pdFar: pd,
    monoPdR: mono.R,
    monoPdL: mono.L,
    pdNear: sum(near(pd), factors.scatter(NEAR_SCATTER_MM)),
    monoNearR: monoNear.R,
    monoNearL: monoNear.L,
    apertureR: aperture.R,
    apertureL: aperture.L,
    pupilDiameterR: pupil.R,
    pupilDiameterL: pupil.L,
    irisDiameter: alone('irisDiameter'),
    headWidth: head,
    templeWidth: sum(constant(meanOf('templeWidth')), temples, rest('templeWidth', temples)),
    apicalRadius: radius,
    distanceBetweenRims10: rims10,
    distanceBetweenRims15: rims15,
    frontalAngleR: frontal.R,
    frontalAngleL: frontal.L,
    splayAngleR: splay.R,
    splayAngleL: splay.L,
    crestHeightR: crest.R,
    crestHeightL: crest.L,
    bridgeProjection: alone('bridgeProjection'),
    lengthToBendR: bend.R,
    lengthToBendL: bend.L,
    lengthToTangentR: tangent(bend.R),
    lengthToTangentL: tangent(bend.L),
    lengthOfDropR: drop.R,
    lengthOfDropL: drop.L,
    angleOfSideR: angle.R,
    angleOfSideL: angle.L,
    downwardAngleOfDropR: downward.R,
    downwardAngleOfDropL: downward.L,
    inwardAngleOfDropR: inward.R,
    inwardAngleOfDropL: inward.L,
    earPointDifference: rightEarHigher,
    boxLensWidth: sum(constant(meanOf('boxLensWidth')), boxFollows, rest('boxLensWidth', boxFollows)),
    boxLensHeight: boxHeight,
    distanceBetweenLenses: bridge,
    overallSideLength: overall,
    fittingHeightR: fitting.R,
    fittingHeightL: fitting.L,
    backVertexDistanceR: vertex.R,
    backVertexDistanceL: vertex.L,
    pantoscopicAngle: sum(constant(meanOf('pantoscopicAngle')), leanOfSides, rest('pantoscopicAngle', leanOfSides)),
    faceFormAngle: alone('faceFormAngle'),
  };
  const means = Object.fromEntries(READING_NAMES.map((name) => [name, variables[name].mean])) as Record<
    ReadingName,
    number
  >;
  const all = READING_NAMES.map((name) => variables[name]);
  const matrix = all.map((a) => all.map((b) => covariance(a, b)));
  const blocks = connectedBlocks(matrix);
  return {
    means,
    covariance: matrix,
    blocks,
    blockAt: READING_NAMES.map((_, place) => blocks.findIndex((block) => block.includes(place))),
    relations: linearRelations(catalogue, ratio, flanks, degPerMm, means),
  };
}

function connectedBlocks(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const blocks: number[][] = [];
  const seen = new Set<number>();
  matrix.forEach((_, start) => {
    if (seen.has(start)) return;
    const block = [start];
    seen.add(start);
    // the block grows while it is gone through
    for (const place of block) {
      matrix[place]!.forEach((value, other) => {
        if (value === 0 || seen.has(other)) return;
        seen.add(other);
        block.push(other);
      });
    }
    blocks.push(block);
  });
  return blocks;
}

/** Width of the mean nose and how it follows its radius (mm per mm) and its frontal angle (mm per degree). */
function flankSlopes(radiusMm: number, angleDeg: number, belowMm: number) {
  const widthMm = noseWidthMm(radiusMm, angleDeg, belowMm);
  return {
    widthMm,
    perRadius: noseWidthMm(radiusMm + 0.5, angleDeg, belowMm) - noseWidthMm(radiusMm - 0.5, angleDeg, belowMm),
    perDeg: noseWidthMm(radiusMm, angleDeg + 0.5, belowMm) - noseWidthMm(radiusMm, angleDeg - 0.5, belowMm),
  };
}

/** The rules in which two or more readings can be seen to contradict one another, to say what does not fit. */
function linearRelations(
  catalogue: Catalogue,
  nearRatio: number,
  flanks: readonly { readonly perRadius: number; readonly perDeg: number }[],
  degPerMm: number,
  means: Readonly<Record<ReadingName, number>>,
): readonly LinearRelation[] {
  const [ten, fifteen] = flanks as [(typeof flanks)[0], (typeof flanks)[0]];
  const shares: readonly Omit<LinearRelation, 'constant'>[] = [
    { id: 'eyes-sum', shares: { pdFar: 1, monoPdR: -1, monoPdL: -1 } },
    { id: 'near-eyes-sum', shares: { pdNear: 1, monoNearR: -1, monoNearL: -1 } },
    { id: 'near-from-far', shares: { pdNear: 1, pdFar: -nearRatio } },
    { id: 'near-from-far', shares: { monoNearR: 1, monoPdR: -nearRatio } },
    { id: 'near-from-far', shares: { monoNearL: 1, monoPdL: -nearRatio } },
    {
      id: 'nose-flanks',
      shares: {
        distanceBetweenRims10: 1,
        apicalRadius: -ten.perRadius,
        frontalAngleR: -ten.perDeg / 2,
        frontalAngleL: -ten.perDeg / 2,
      },
    },
    {
      id: 'nose-flanks',
      shares: {
        distanceBetweenRims15: 1,
        apicalRadius: -fifteen.perRadius,
        frontalAngleR: -fifteen.perDeg / 2,
        frontalAngleL: -fifteen.perDeg / 2,
      },
    },
    {
      id: 'nose-flanks',
      shares: {
        distanceBetweenRims15: 1,
        distanceBetweenRims10: -1,
        frontalAngleR: -(fifteen.perDeg - ten.perDeg) / 2,
        frontalAngleL: -(fifteen.perDeg - ten.perDeg) / 2,
      },
    },
    {
      id: 'side-sum',
      shares: {
        overallSideLength: 1,
        lengthToBendR: -0.5,
        lengthToBendL: -0.5,
        lengthOfDropR: -0.5,
        lengthOfDropL: -0.5,
      },
    },
    { id: 'tangent-before-bend', shares: { lengthToTangentR: 1, lengthToBendR: -1 } },
    { id: 'tangent-before-bend', shares: { lengthToTangentL: 1, lengthToBendL: -1 } },
    { id: 'temples-in-head', shares: { templeWidth: 1, headWidth: -1 } },
    { id: 'frame-around-pd', shares: { boxLensWidth: 1, distanceBetweenLenses: 1, pdFar: -1 } },
    { id: 'eye-heights', shares: { crestHeightR: 1, crestHeightL: -1, fittingHeightR: 1, fittingHeightL: -1 } },
    { id: 'ear-heights', shares: { angleOfSideR: 1, angleOfSideL: -1, earPointDifference: degPerMm } },
    {
      id: 'lean-of-front',
      shares: {
        pantoscopicAngle: 1,
        angleOfSideR: -FRAME.leanFollowsSides / 2,
        angleOfSideL: -FRAME.leanFollowsSides / 2,
      },
    },
  ];
  const alike = catalogue.flatMap(({ fields }): readonly Omit<LinearRelation, 'constant'>[] => {
    const [right, left] = fields;
    return right === undefined || left === undefined
      ? []
      : [{ id: 'sides-alike', shares: { [right.name]: 1, [left.name]: -1 } }];
  });
  return [...shares, ...alike].map((relation) => ({
    ...relation,
    constant: (Object.entries(relation.shares) as [ReadingName, number][]).reduce(
      (total, [name, share]) => total + share * means[name],
      0,
    ),
  }));
}
