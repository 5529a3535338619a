import type { ReadingName } from '../catalogue/measurement.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { combineUncertainties } from '../statistics/uncertainty.js';
import type { BothSides, Side } from '../units/side.js';
import { SIDES } from '../units/side.js';
import type { AllowedPrism, CentrationStandard } from './centration-standards.js';
import { allowedPrism, imbalanceLimitsOf } from './centration-standards.js';
import { powerAlongD, strongestPowerD } from './lens-power.js';
import type { LensPower, Prescription, PrescribedPrism } from './prescription.js';
import type { LensShift, PrismBase } from './prism.js';
import { NO_SHIFT, baseOfWritten, pairPrism, prismOfShift, shiftInward, writtenPrism } from './prism.js';
import { actingPowerD } from './vertex-distance.js';

/** Two values for one place of the sheet: what is written, and what it may be instead. */
export interface ReadingDifference {
  readonly name: ReadingName;
  /** written less the other, in mm */
  readonly differenceMm: number;
  /** of the difference, one standard deviation; 0 where both values are taken as they stand. Doubts are taken as independent. */
  readonly standardUncertaintyMm: number;
}

/**
 * - `negligible`: it matters for nothing
 * - `within`: the standard allows it, but it takes a share that the workshop needs as well
 * - `beyond`: the spectacles would not keep to the standard
 * - `open`: the doubt of the difference reaches across a limit
 */
export type Verdict = 'negligible' | 'within' | 'beyond' | 'open';

/** An amount held against what is allowed, in the same unit. */
export interface Judged {
  /** never negative */
  readonly amount: number;
  /** ends of the 95 % interval; the same as `amount` for exact values */
  readonly low: number;
  readonly high: number;
  readonly allowed: number;
  /** amount by allowed */
  readonly share: number;
  readonly verdict: Verdict;
}

export interface JudgedPrism extends Judged {
  /** of both eyes together; up and down before the right eye. Which way if the other value is the true one. */
  readonly base: 'in' | 'out' | 'up' | 'down';
  readonly rule: AllowedPrism;
}

/** A part of a lens that has its own place before the eye. */
export interface JudgedPosition extends Judged {
  readonly part: 'fitting-point' | 'segments';
  readonly direction: 'horizontal' | 'vertical';
  /** null where it is the distance between both segments */
  readonly side: Side | null;
}

export interface JudgedPower extends Judged {
  readonly side: Side;
  /** the strongest principal power of the lens, D */
  readonly powerD: number;
  /** what it acts as less what it should, D */
  readonly changeD: number;
}

/**
 * Which lenses the prism is worked out for: the prescription as it stands, lenses for near (with the addition; only if such are made), or
 * the segments alone.
 */
export type LensPlane = 'distance' | 'near' | 'segments';

/** Why a difference does nothing that is worked out here. */
export type NoCostReason =
  /** no lens is made by it */
  | 'not-through-lenses'
  /** a progressive lens brings its own near inset */
  | 'inset-of-design'
  /** tilt changes the power of strong lenses a little; it is not worked out here */
  | 'tilt-not-worked-out';

export type Cost =
  | {
      readonly kind: 'prism';
      readonly names: readonly ReadingName[];
      readonly plane: LensPlane;
      readonly horizontal: JudgedPrism;
      readonly vertical: JudgedPrism;
      readonly positions: readonly JudgedPosition[];
      /** what each eye would look through, the prescribed prism included */
      readonly through: BothSides<PrescribedPrism>;
      readonly verdict: Verdict;
    }
  | {
      readonly kind: 'power';
      readonly names: readonly ReadingName[];
      readonly powers: readonly JudgedPower[];
      readonly verdict: Verdict;
    }
  | { readonly kind: 'none'; readonly names: readonly ReadingName[]; readonly reason: NoCostReason };

/** Chosen: what takes up to a quarter of what is allowed leaves the workshop enough. */
const NEGLIGIBLE_SHARE = 0.25;

/** Half of the step in which lenses are prescribed: what changes a lens by less would have been prescribed alike (chosen). */
export const POWER_CHANGE_LIMIT_D = 0.125;

/** Sums of binary fractions must not stand beyond a limit that they reach exactly. */
const ROUNDING = 1e-9;

type Shifts = BothSides<LensShift>;
type ShiftsOfReadings = { readonly [Name in ReadingName]?: Shifts };
type Effect = 'distance' | 'near' | 'vertex' | NoCostReason;

function both(inwardMm: number, upMm: number): Shifts {
  return { R: shiftInward('R', inwardMm, upMm), L: shiftInward('L', inwardMm, upMm) };
}

function ofOneEye(side: Side, inwardMm: number, upMm: number): Shifts {
  return { R: NO_SHIFT, L: NO_SHIFT, [side]: shiftInward(side, inwardMm, upMm) };
}

/**
 * Where the centres lie beside the pupils when a written value is larger by 1 mm than the true one. Of a distance between both eyes
 * nobody knows which eye is off: each takes half. From box sizes the decentration is worked out: too large by half.
 */
const DISTANCE_SHIFTS: ShiftsOfReadings = {
  pdFar: both(-0.5, 0),
  monoPdR: ofOneEye('R', -1, 0),
  monoPdL: ofOneEye('L', -1, 0),
  boxLensWidth: both(0.5, 0),
  boxLensHeight: both(0, -0.5),
  distanceBetweenLenses: both(0.5, 0),
  fittingHeightR: ofOneEye('R', 0, 1),
  fittingHeightL: ofOneEye('L', 0, 1),
};

const NEAR_SHIFTS: ShiftsOfReadings = {
  pdNear: both(-0.5, 0),
  monoNearR: ofOneEye('R', -1, 0),
  monoNearL: ofOneEye('L', -1, 0),
};

const NO_SHIFTS: Shifts = { R: NO_SHIFT, L: NO_SHIFT };

const VERTEX: readonly ReadingName[] = ['backVertexDistanceR', 'backVertexDistanceL'];
const TILT: readonly ReadingName[] = ['pantoscopicAngle', 'faceFormAngle'];

function effectOf(name: ReadingName): Effect {
  if (DISTANCE_SHIFTS[name] !== undefined) return 'distance';
  if (NEAR_SHIFTS[name] !== undefined) return 'near';
  if (VERTEX.includes(name)) return 'vertex';
  return TILT.includes(name) ? 'tilt-not-worked-out' : 'not-through-lenses';
}

/** A number that follows in proportion from the differences, with its standard uncertainty. */
function inProportion(
  differences: readonly ReadingDifference[],
  effect: (shifts: Shifts) => number,
): { readonly value: number; readonly standardUncertainty: number } {
  const parts = differences.map(({ name, differenceMm, standardUncertaintyMm }) => {
    const perMm = effect(DISTANCE_SHIFTS[name] ?? NEAR_SHIFTS[name] ?? NO_SHIFTS);
    return { value: perMm * differenceMm, standardUncertainty: Math.abs(perMm) * standardUncertaintyMm };
  });
  return {
    value: parts.reduce((sum, part) => sum + part.value, 0),
    standardUncertainty: combineUncertainties(parts.map((part) => part.standardUncertainty)),
  };
}

function judge(signed: number, standardUncertainty: number, allowed: number): Judged {
  const amount = Math.abs(signed);
  const low = Math.max(0, amount - NORMAL_95 * standardUncertainty);
  const high = amount + NORMAL_95 * standardUncertainty;
  const limit = allowed * (1 + ROUNDING) + ROUNDING;
  const verdict: Verdict =
    high <= NEGLIGIBLE_SHARE * limit ? 'negligible' : high <= limit ? 'within' : low > limit ? 'beyond' : 'open';
  return { amount, low, high, allowed, share: amount / allowed, verdict };
}

const SEVERITY: readonly Verdict[] = ['negligible', 'within', 'open', 'beyond'];

function worstOf(judged: readonly { readonly verdict: Verdict }[]): Verdict {
  const worst = Math.max(0, ...judged.map(({ verdict }) => SEVERITY.indexOf(verdict)));
  return SEVERITY[worst] ?? 'open';
}

function lensesOf(prescription: Prescription, plane: LensPlane): BothSides<LensPower> {
  const lens = (side: Side): LensPower => {
    const { sphereD, cylinderD, axisDeg, addD } = prescription[side];
    if (plane === 'segments') return { sphereD: addD, cylinderD: 0, axisDeg: 180 };
    return { sphereD: plane === 'near' ? sphereD + addD : sphereD, cylinderD, axisDeg };
  };
  return { R: lens('R'), L: lens('L') };
}

/**
 * What stands for the power of a pair along a meridian: the mean of both lenses' powers without their signs, because a shift of the pair
 * is shared by both. How the standards treat unequal lenses was not seen (chosen).
 */
function pairPowerD({ R, L }: BothSides<LensPower>, meridianDeg: number): number {
  return (Math.abs(powerAlongD(R, meridianDeg)) + Math.abs(powerAlongD(L, meridianDeg))) / 2;
}

function prismCost(
  prescription: Prescription,
  standard: CentrationStandard,
  differences: readonly ReadingDifference[],
  plane: LensPlane,
): Cost {
  const lenses = lensesOf(prescription, plane);
  const prismOf = (shifts: Shifts): BothSides<PrismBase> => ({
    R: prismOfShift(lenses.R, shifts.R),
    L: prismOfShift(lenses.L, shifts.L),
  });
  const limits = imbalanceLimitsOf(standard, prescription.lensKind);
  const ordered = (direction: 'horizontal' | 'vertical'): number =>
    Math.max(prescription.R.prism[direction].amount, prescription.L.prism[direction].amount);
  const across = inProportion(differences, (shifts) => pairPrism(prismOf(shifts)).baseIn);
  const along = inProportion(differences, (shifts) => pairPrism(prismOf(shifts)).upBeforeRight);
  const acrossRule = allowedPrism(limits.horizontal, pairPowerD(lenses, 180), ordered('horizontal'));
  const alongRule = allowedPrism(limits.vertical, pairPowerD(lenses, 90), ordered('vertical'));
  const horizontal: JudgedPrism = {
    ...judge(across.value, across.standardUncertainty, acrossRule.prism),
    base: across.value < 0 ? 'out' : 'in',
    rule: acrossRule,
  };
  const vertical: JudgedPrism = {
    ...judge(along.value, along.standardUncertainty, alongRule.prism),
    base: along.value < 0 ? 'down' : 'up',
    rule: alongRule,
  };
  const positions = judgedPositions(prescription, standard, differences, plane);
  const through = (side: Side): PrescribedPrism => {
    const prescribed = baseOfWritten(side, prescription[side].prism);
    const left = inProportion(differences, (shifts) => prismOf(shifts)[side].left).value;
    const up = inProportion(differences, (shifts) => prismOf(shifts)[side].up).value;
    return writtenPrism(side, { left: prescribed.left + left, up: prescribed.up + up });
  };
  return {
    kind: 'prism',
    names: differences.map(({ name }) => name),
    plane,
    horizontal,
    vertical,
    positions,
    through: { R: through('R'), L: through('L') },
    verdict: worstOf([horizontal, vertical, ...positions]),
  };
}

function judgedPositions(
  { lensKind }: Prescription,
  { position }: CentrationStandard,
  differences: readonly ReadingDifference[],
  plane: LensPlane,
): readonly JudgedPosition[] {
  const judged = (
    part: JudgedPosition['part'],
    direction: JudgedPosition['direction'],
    side: Side | null,
    allowedMm: number,
    effect: (shifts: Shifts) => number,
  ): readonly JudgedPosition[] => {
    const { value, standardUncertainty } = inProportion(differences, effect);
    return value === 0 && standardUncertainty === 0
      ? []
      : [{ ...judge(value, standardUncertainty, allowedMm), part, direction, side }];
  };
  if (lensKind === 'progressive' && plane === 'distance') {
    const { horizontalMm, verticalMm } = position.fittingPoint;
    return SIDES.flatMap((side) => [
      ...judged('fitting-point', 'horizontal', side, horizontalMm, (shifts) => shifts[side].leftMm),
      ...judged('fitting-point', 'vertical', side, verticalMm, (shifts) => shifts[side].upMm),
    ]);
  }
  if (lensKind !== 'multifocal' || position.segments === null) return [];
  const { distanceMm, heightMm } = position.segments;
  return plane === 'segments'
    ? judged('segments', 'horizontal', null, distanceMm, ({ R, L }) => R.leftMm - L.leftMm)
    : SIDES.flatMap((side) => judged('segments', 'vertical', side, heightMm, (shifts) => shifts[side].upMm));
}

function powerCost(prescription: Prescription, differences: readonly ReadingDifference[]): Cost {
  const powers = differences.map(({ name, differenceMm, standardUncertaintyMm }): JudgedPower => {
    const side: Side = name === 'backVertexDistanceR' ? 'R' : 'L';
    const powerD = strongestPowerD(prescription[side]);
    // What is written is believed: if the true distance is smaller, the lens sits nearer than it was made for.
    const changeOf = (mm: number): number => actingPowerD(powerD, -mm) - powerD;
    const changeD = changeOf(differenceMm);
    const perMm = changeOf(differenceMm + 0.5) - changeOf(differenceMm - 0.5);
    return {
      ...judge(changeD, Math.abs(perMm) * standardUncertaintyMm, POWER_CHANGE_LIMIT_D),
      side,
      powerD,
      changeD,
    };
  });
  return { kind: 'power', names: differences.map(({ name }) => name), powers, verdict: worstOf(powers) };
}

/**
 * What differences between two values of some readings mean for the wearer of this prescription, taken together: right and left of a
 * measurement belong into one call, two ways of writing the same thing (both eyes and each eye) do not.
 *
 * @returns one cost for each way in which they act; `none` for what does nothing, together with the reason
 */
export function costOfDifferences(
  prescription: Prescription,
  standard: CentrationStandard,
  differences: readonly ReadingDifference[],
): readonly Cost[] {
  const by = new Map<Effect, ReadingDifference[]>();
  for (const difference of differences) {
    const effect = effectOf(difference.name);
    const nearEffect = effect === 'near' && prescription.lensKind === 'progressive' ? 'inset-of-design' : effect;
    by.set(nearEffect, [...(by.get(nearEffect) ?? []), difference]);
  }
  return [...by].map(([effect, those]): Cost => {
    switch (effect) {
      case 'distance':
        return prismCost(prescription, standard, those, 'distance');
      case 'near':
        return prismCost(prescription, standard, those, prescription.lensKind === 'multifocal' ? 'segments' : 'near');
      case 'vertex':
        return powerCost(prescription, those);
      case 'not-through-lenses':
      case 'inset-of-design':
      case 'tilt-not-worked-out':
        return { kind: 'none', names: those.map(({ name }) => name), reason: effect };
    }
  });
}

/** What a difference of one reading means for the wearer of this prescription. */
export function costOfDifference(
  prescription: Prescription,
  standard: CentrationStandard,
  difference: ReadingDifference,
): Cost {
  const [cost] = costOfDifferences(prescription, standard, [difference]);
  return cost ?? { kind: 'none', names: [difference.name], reason: 'not-through-lenses' };
}

/**
 * Readings of both eyes together, and those of each eye that stand for the same way. What is written of both is shared by the lenses, but
 * nobody knows how.
 */
const EYES_OF_BOTH: { readonly [Name in ReadingName]?: BothSides<ReadingName> } = {
  pdFar: { R: 'monoPdR', L: 'monoPdL' },
  pdNear: { R: 'monoNearR', L: 'monoNearL' },
  boxLensWidth: { R: 'monoPdR', L: 'monoPdL' },
  distanceBetweenLenses: { R: 'monoPdR', L: 'monoPdL' },
};

/** How far a reading may be off. */
export interface ReadingRoom {
  /** mm; infinite for lenses without power along the direction */
  readonly mm: number;
  /** of a reading of both eyes, the eye that leaves less room; null where both leave the same, and for readings of one eye */
  readonly tighterEye: Side | null;
}

/**
 * How far one reading may be off until the first limit is reached; null where nothing depends on it.
 *
 * Of unequal eyes, the prism of a shared shift partly cancels between them, and the limit of the pair would let the stronger lens lie
 * farther off than its own reading may be. A reading of both eyes is therefore given at most twice the room of the tighter eye: half of its
 * error lies in each (chosen).
 */
export function roomOfReading(
  prescription: Prescription,
  standard: CentrationStandard,
  name: ReadingName,
): ReadingRoom | null {
  const mm = ownRoomMm(prescription, standard, name);
  const eyes = EYES_OF_BOTH[name];
  if (mm === null || eyes === undefined) return mm === null ? null : { mm, tighterEye: null };
  const roomOf = (side: Side): number => ownRoomMm(prescription, standard, eyes[side]) ?? Number.POSITIVE_INFINITY;
  const [R, L] = [roomOf('R'), roomOf('L')];
  // Infinite rooms are alike, though their difference is no number.
  const isAlike = R === L || Math.abs(R - L) <= ROUNDING;
  return { mm: Math.min(mm, 2 * R, 2 * L), tighterEye: isAlike ? null : R < L ? 'R' : 'L' };
}

function ownRoomMm(prescription: Prescription, standard: CentrationStandard, name: ReadingName): number | null {
  const cost = costOfDifference(prescription, standard, { name, differenceMm: 1, standardUncertaintyMm: 0 });
  switch (cost.kind) {
    case 'none':
      return null;
    case 'prism':
      return 1 / Math.max(cost.horizontal.share, cost.vertical.share, ...cost.positions.map(({ share }) => share));
    case 'power':
      return 1 / Math.max(...cost.powers.map(({ share }) => share));
  }
}
