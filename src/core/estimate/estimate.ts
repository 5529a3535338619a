/**
 * Where the doubt of an estimate comes from. Each source is independent of the others, so that the squares of the lines
 * of a budget add up to the square of the combined standard uncertainty (JCGM 100:2008, 5.1.2).
 */
export const BUDGET_SOURCES = [
  /** the size of the card itself: manufacture, wear, the scale of a print */
  'card-size',
  /** where the card's edges or markers lie in the picture */
  'card-edges',
  /** where the iris edges lie in the picture */
  'iris-edges',
  /** where the lid margins lie in the picture */
  'lid-edges',
  /** how far the touched skin lies before the eyes */
  'contact-depth',
  /** field of view and distortion of the camera */
  'camera',
  /** how the head is turned */
  'head-pose',
  /** iris diameters differ between people; the weak second opinion on depth */
  'iris-size',
  /** where the eyes looked, and how far the pupil lies before the eye's centre of rotation */
  'gaze',
  /** where the bridge's midline lies */
  'midline',
  /** how well the fitted head stands for this head's outline */
  'head-shape',
  /** scatter between the frames of a burst */
  'between-frames',
] as const;

export type BudgetSource = (typeof BUDGET_SOURCES)[number];

/** One line of a budget: the share of a source in the standard uncertainty, in the unit of the estimate. */
export interface BudgetLine {
  readonly source: BudgetSource;
  readonly standardUncertainty: number;
}

/** What the camera says of one measurement. It cannot be made without an uncertainty. */
export interface Estimate {
  /** in `unit` */
  readonly value: number;
  /** one standard deviation, in `unit`; always positive */
  readonly standardUncertainty: number;
  /** lower and upper bound of the 95 % interval, in `unit` */
  readonly low: number;
  readonly high: number;
  readonly unit: EstimateUnit;
  /** largest share first; the squares add up to the square of `standardUncertainty` */
  readonly budget: readonly BudgetLine[];
}

export type EstimateUnit = 'mm' | 'deg';

/** The names of all that a picture is asked for. R and L are the wearer's. */
export type EstimateName = AlwaysEstimated | SometimesEstimated;

/** What every measured picture tells. */
export type AlwaysEstimated =
  /** binocular PD for distance: both eyes look far away */
  | 'pdFar'
  /** binocular PD as the picture shows it */
  | 'pdShown'
  /** binocular centration distance in the spectacle plane for the working distance */
  | 'pdNear'
  | 'monoPdR'
  | 'monoPdL'
  /** share of each eye in `pdNear` */
  | 'monoNearR'
  | 'monoNearL'
  | 'apertureR'
  | 'apertureL'
  | 'headWidth'
  | 'templeWidth'
  | 'irisDiameter'
  /** camera to the plane of the pupils */
  | 'distance'
  | 'headYaw'
  | 'headPitch'
  | 'headRoll';

/** What only some pictures tell: a pupil that can be told from its iris, a bridge that the card leaves free. */
export type SometimesEstimated =
  | 'pupilDiameterR'
  | 'pupilDiameterL'
  /** width of the nose 10 and 15 mm below its crest, indicative */
  | 'distanceBetweenRims10'
  | 'distanceBetweenRims15';

export type FaceEstimates = Readonly<Record<AlwaysEstimated, Estimate>> &
  Readonly<Partial<Record<SometimesEstimated, Estimate>>>;
