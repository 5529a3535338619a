import type { CardPosition, CardSource } from '../camera/features.js';
import { REFERENCE_CARD } from '../camera/reference-card.js';
import type { BudgetSource, Estimate, EstimateName } from './estimate.js';
import { PRINTED_SIZE_UNCERTAINTY } from './held-card.js';

/** Something that the reader or the wearer can do to make a number surer. */
export type RemedyKind =
  /** a sweep in place of one picture */
  | 'take-sweep'
  /** a profile of the camera */
  | 'make-profile'
  /** from about 40 cm, `NEAR_DISTANCE_MM` */
  | 'come-nearer'
  /** the card on the forehead, not on the lip or chin */
  | 'card-on-forehead'
  /** lower on the forehead, just above the brows */
  | 'card-nearer-eyes'
  /** a bought card, which is cut more exactly than a print is scaled */
  | 'use-bought-card'
  /** this eye's lid marks under the loupe */
  | 'place-lids-by-hand'
  | 'place-midline-by-hand'
  /** once more in the same way, and the mean of both */
  | 'repeat';

export interface Remedy {
  readonly kind: RemedyKind;
  /** what the estimate's standard uncertainty would be after it, in the unit of the estimate */
  readonly standardUncertainty: number;
}

/** What the remedies depend on besides the budget. */
export interface RemedyContext {
  readonly name: EstimateName;
  readonly isSweep: boolean;
  /** a camera profile counted for this picture */
  readonly hasProfile: boolean;
  readonly cardSource: CardSource;
  readonly cardPosition: CardPosition;
  /** middle of the card to the middle between the eyes, along the face, mm */
  readonly cardToEyesMm: number;
  /** camera to the plane of the pupils, mm */
  readonly distanceMm: number;
  /** what a hand's marks would leave of the doubt of this eye's lid marks, as a share; null where a hand set them, or cannot */
  readonly lidsByHandShare: number | null;
  /** the same of the midline */
  readonly midlineByHandShare: number | null;
}

/** Whoever comes nearer than this with a webcam looks down on it, or is out of its focus. Chosen. */
export const NEAR_DISTANCE_MM = 400;
/** A remedy that gains less than this share is not worth a word. Chosen. */
export const LEAST_GAIN = 0.1;

type BySource = Readonly<Partial<Record<BudgetSource, number>>>;

/** What a remedy leaves of the sources; those that are not named stay as they are. */
type Effect =
  /** as shares of their standard uncertainties */
  | { readonly kind: 'shares'; readonly shares: BySource }
  /** whatever they were before, in mm */
  | { readonly kind: 'left'; readonly leftMm: BySource };

const shares = (bySource: BySource): Effect => ({ kind: 'shares', shares: bySource });

type EstimateGroup = 'pd' | 'mono' | 'aperture' | 'width' | 'other';

const GROUPS: Readonly<Record<EstimateName, EstimateGroup>> = {
  pdFar: 'pd',
  pdShown: 'pd',
  pdNear: 'pd',
  monoPdR: 'mono',
  monoPdL: 'mono',
  monoNearR: 'mono',
  monoNearL: 'mono',
  apertureR: 'aperture',
  apertureL: 'aperture',
  headWidth: 'width',
  templeWidth: 'width',
  irisDiameter: 'other',
  distance: 'other',
  headYaw: 'other',
  headPitch: 'other',
  headRoll: 'other',
  pupilDiameterR: 'other',
  pupilDiameterL: 'other',
  distanceBetweenRims10: 'other',
  distanceBetweenRims15: 'other',
};

/** Whether the camera knows something by this name. */
export function isEstimateName(name: string): name is EstimateName {
  return Object.hasOwn(GROUPS, name);
}

/**
 * What a sweep leaves of the sources, mm: its own budget in place of the picture's. Measured: eight rendered sweeps without a profile at
 * 1.5 to 2.7 px/mm, root mean square. A sweep finds the depth of the eyes from how card and eyes move against each other, so that nothing of the
 * contact, the mean face and its pose is left in a PD. What is wrong in all frames alike (lid margins, ratios of the head's widths) stays, and
 * the size of the card. Null where no sweep was measured.
 */
const SWEEP_LEAVES_MM: Readonly<Record<EstimateGroup, BySource | null>> = {
  pd: {
    'iris-edges': 0.08,
    'card-edges': 0.07,
    gaze: 0.055,
    camera: 0.035,
    'head-pose': 0.02,
    'iris-size': 0.01,
    'head-shape': 0.01,
    'contact-depth': 0.01,
  },
  mono: {
    midline: 0.3,
    gaze: 0.2,
    'card-edges': 0.14,
    'iris-edges': 0.1,
    'head-shape': 0.09,
    'head-pose': 0.05,
    camera: 0.04,
    'iris-size': 0.01,
    'contact-depth': 0.01,
  },
  aperture: {
    'lid-edges': 0.24,
    'card-edges': 0.01,
    'head-shape': 0.01,
    'head-pose': 0.01,
    'contact-depth': 0.01,
    'iris-size': 0.01,
    camera: 0.01,
  },
  width: {
    'card-edges': 0.32,
    'iris-edges': 0.2,
    gaze: 0.17,
    camera: 0.11,
    'head-pose': 0.08,
    'iris-size': 0.03,
    'contact-depth': 0.02,
  },
  other: null,
};

/**
 * What a profile leaves of a picture's sources: of the camera what a profile's own doubt (some 0.2 %) is to 13 % of field of view, and
 * of the card's edges less, since they no longer have to tell the field of view as well. Measured on the same rendered pictures.
 */
const PROFILE_SHARES: BySource = { camera: 0.05, 'card-edges': 0.4 };
/** The same of a sweep, which finds most of the field of view by itself. Measured on the same sweeps. */
const PROFILE_SHARES_OF_SWEEP: Readonly<Record<EstimateGroup, BySource>> = {
  pd: { camera: 0.4, 'card-edges': 0.5 },
  mono: { camera: 0.3 },
  aperture: { camera: 0.7, 'card-edges': 0.5 },
  width: { camera: 0.5, 'card-edges': 0.2 },
  other: { camera: 0.5 },
};

/** Of pictures with the card on the forehead over those with it elsewhere, 16 rendered pictures each. Measured. */
const FOREHEAD_SHARES: Readonly<Record<Exclude<CardPosition, 'forehead'>, BySource>> = {
  'upper-lip': { 'head-pose': 0.75, 'head-shape': 1.2, 'card-edges': 0.8, camera: 0.7 },
  chin: { 'head-pose': 0.8, 'head-shape': 0.75, 'contact-depth': 1.3, 'card-edges': 1.3, camera: 1.4 },
};

/** A card whose lower edge lies 18 mm above the eyes, just above the brows: its middle, mm (the lowest place in the scans' contact depths). */
const LOWEST_ON_FOREHEAD_MM = 18 + REFERENCE_CARD.heightMm / 2;

/** The mean of two measurements leaves this of what differs from one to the other. */
const OF_TWO = Math.SQRT1_2;

/** What each remedy would do; null where it does not apply. */
const REMEDIES: Readonly<Record<RemedyKind, (context: RemedyContext) => Effect | null>> = {
  'take-sweep': ({ isSweep, name }) => {
    const leftMm = SWEEP_LEAVES_MM[GROUPS[name]];
    return isSweep || leftMm === null ? null : { kind: 'left', leftMm };
  },
  'make-profile': ({ hasProfile, isSweep, name }) => {
    if (hasProfile) return null;
    return shares(isSweep ? PROFILE_SHARES_OF_SWEEP[GROUPS[name]] : PROFILE_SHARES);
  },
  // Edges of the card and marks of a hand are as sure as pixels are small; what else is found of a face is as sure as the face is large, and
  // stays in mm. In one picture a millimetre of depth counts for more from near (own geometry: PD times depth over distance).
  'come-nearer': ({ distanceMm, isSweep, lidsByHandShare }) => {
    const nearer = NEAR_DISTANCE_MM / distanceMm;
    if (nearer >= 1) return null;
    const depth = isSweep ? 1 : 1 / nearer;
    return shares({
      'card-edges': nearer,
      'lid-edges': lidsByHandShare === null && !isSweep ? nearer : 1,
      'contact-depth': depth,
      'head-shape': depth,
      'head-pose': depth,
      gaze: depth,
    });
  },
  'card-on-forehead': ({ cardPosition, isSweep }) =>
    isSweep || cardPosition === 'forehead' ? null : shares(FOREHEAD_SHARES[cardPosition]),
  // How far a nod of the head shifts the card's depth against the eyes' grows with the height between them (own geometry).
  'card-nearer-eyes': ({ cardPosition, cardToEyesMm, isSweep }) =>
    isSweep || cardPosition !== 'forehead' || cardToEyesMm <= LOWEST_ON_FOREHEAD_MM
      ? null
      : shares({ 'head-pose': LOWEST_ON_FOREHEAD_MM / cardToEyesMm }),
  // Measured on rendered sweeps as well: the edges of both cards are found alike.
  'use-bought-card': ({ cardSource }) =>
    cardSource === 'markers'
      ? shares({ 'card-size': REFERENCE_CARD.relativeSizeUncertainty / PRINTED_SIZE_UNCERTAINTY })
      : null,
  'place-lids-by-hand': ({ lidsByHandShare }) =>
    lidsByHandShare === null ? null : shares({ 'lid-edges': lidsByHandShare }),
  'place-midline-by-hand': ({ midlineByHandShare }) =>
    midlineByHandShare === null ? null : shares({ midline: midlineByHandShare }),
  // What belongs to the face, the card and the camera is the same the second time. Iris edges and lid margins count among it: the
  // doubt of them is mostly how far the edge as found lies beside the true one. Chosen.
  repeat: () => shares({ 'card-edges': OF_TWO, gaze: OF_TWO, 'between-frames': OF_TWO }),
};

/** The remedies, in the order in which one of equals is named. */
export const REMEDY_KINDS = Object.keys(REMEDIES) as readonly RemedyKind[];

/**
 * What the standard uncertainty of an estimate would be after a remedy, in the unit of the estimate; null where the remedy does not apply.
 *
 * The remedy shrinks or replaces the sources that `REMEDIES` names, and the squares of what is left of the lines add up. Where a remedy shrinks no more
 * than what is known beforehand this is an upper bound: with the weights of the adjustment unchanged the variance is exactly that
 * sum, and the adjustment would choose better ones.
 */
export function uncertaintyAfter(kind: RemedyKind, estimate: Estimate, context: RemedyContext): number | null {
  const effect = REMEDIES[kind](context);
  if (effect === null) return null;
  if (effect.kind === 'shares') {
    return Math.hypot(...estimate.budget.map((line) => line.standardUncertainty * (effect.shares[line.source] ?? 1)));
  }
  const { leftMm } = effect;
  const untouched = estimate.budget.filter(({ source }) => leftMm[source] === undefined);
  return Math.hypot(...untouched.map((line) => line.standardUncertainty), ...Object.values(leftMm));
}

/** The one thing that would make an estimate surer by the most; null where nothing gains more than a tenth. */
export function mostHelpful(estimate: Estimate, context: RemedyContext): Remedy | null {
  let best: Remedy | null = null;
  let least = (1 - LEAST_GAIN) * estimate.standardUncertainty;
  for (const kind of REMEDY_KINDS) {
    const standardUncertainty = uncertaintyAfter(kind, estimate, context);
    if (standardUncertainty === null || standardUncertainty >= least) continue;
    least = standardUncertainty;
    best = { kind, standardUncertainty };
  }
  return best;
}
