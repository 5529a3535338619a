import type { PictureFailure } from '../core/camera/failure.js';
import type { PictureFeatures } from '../core/camera/features.js';
import type {
  AlwaysEstimated,
  BudgetLine,
  Estimate,
  FaceEstimates,
  SometimesEstimated,
} from '../core/estimate/estimate.js';
import { BUDGET_SOURCES } from '../core/estimate/estimate.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { SweepAdvice, SweepFailure, SweepMeasurement } from '../core/estimate/sweep.js';
import type { Check } from './checks.js';
import { isCount, isOneOfShapes, isPositive, listOf, oneOf, orNull, shape } from './checks.js';
import type { CancelledReply, CancelMessage, FaultReply, Message, ProgressMessage } from './message.js';
import { isFiniteNumber, isMessage, parseCommonReply } from './message.js';
import { isMeasuringSettings } from './parse-measuring-settings.js';
import { isPictureFailure } from './parse-picture-failure.js';
import { parsePictureFeatures } from './parse-picture-features.js';

/** Chosen: a sweep takes some 40 frames; three times as many are still adjusted in a few seconds. */
export const SWEEP_FRAME_LIMIT = 120;

/** The landmark model gives 478; another bundle may give more, but not without end. */
const LANDMARK_LIMIT = 1000;

/** Measures a sweep; answered with `sweep-measured` or `sweep-failed`. At most `SWEEP_FRAME_LIMIT` frames, in the order in which they were taken. */
export interface MeasureSweepRequest extends Message {
  readonly kind: 'measure-sweep';
  readonly frames: readonly PictureFeatures[];
  readonly settings: MeasuringSettings;
}

export type SweepRequest = MeasureSweepRequest;
export type ToSweepWorker = SweepRequest | CancelMessage;

export interface SweepMeasuredReply extends Message {
  readonly kind: 'sweep-measured';
  readonly measurement: SweepMeasurement;
  readonly workMs: number;
}

/** The frames gave no estimates. */
export interface SweepFailedReply extends Message {
  readonly kind: 'sweep-failed';
  readonly failure: SweepFailure;
  readonly workMs: number;
}

export type SweepReply = SweepMeasuredReply | SweepFailedReply | CancelledReply | FaultReply;
export type FromSweepWorker = SweepReply | ProgressMessage;

/** What the worker was sent; null where it is no message of this protocol. */
export function parseToSweepWorker(value: unknown): ToSweepWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  switch (value['kind']) {
    case 'cancel':
      return { v, id, kind: 'cancel' };
    case 'measure-sweep': {
      const { frames, settings } = value as { frames?: unknown; settings?: unknown };
      return areFrames(frames) && isMeasuringSettings(settings)
        ? { v, id, kind: 'measure-sweep', frames, settings }
        : null;
    }
    default:
      return null;
  }
}

/** What the worker sent; null where it is no message of this protocol. */
export function parseFromSweepWorker(value: unknown): FromSweepWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  const { workMs, measurement, failure } = value as { workMs?: unknown; measurement?: unknown; failure?: unknown };
  switch (value['kind']) {
    case 'sweep-measured':
      return isFiniteNumber(workMs) && isSweepMeasurement(measurement)
        ? { v, id, kind: 'sweep-measured', measurement, workMs }
        : null;
    case 'sweep-failed':
      return isFiniteNumber(workMs) && isSweepFailure(failure)
        ? { v, id, kind: 'sweep-failed', failure, workMs }
        : null;
    default:
      return parseCommonReply(value);
  }
}

function areFrames(value: unknown): value is readonly PictureFeatures[] {
  return (
    Array.isArray(value) &&
    value.length <= SWEEP_FRAME_LIMIT &&
    value.every((frame) => (parsePictureFeatures(frame)?.landmarks.length ?? Infinity) <= LANDMARK_LIMIT)
  );
}

const isEstimate = shape<Estimate>({
  value: isFiniteNumber,
  standardUncertainty: isPositive,
  low: isFiniteNumber,
  high: isFiniteNumber,
  unit: oneOf('mm', 'deg'),
  budget: listOf(
    shape<BudgetLine>({
      source: oneOf(...BUDGET_SOURCES),
      standardUncertainty: isFiniteNumber,
    }),
  ),
});

const isAlwaysEstimated = shape<Readonly<Record<AlwaysEstimated, Estimate>>>({
  pdFar: isEstimate,
  pdShown: isEstimate,
  pdNear: isEstimate,
  monoPdR: isEstimate,
  monoPdL: isEstimate,
  monoNearR: isEstimate,
  monoNearL: isEstimate,
  apertureR: isEstimate,
  apertureL: isEstimate,
  headWidth: isEstimate,
  templeWidth: isEstimate,
  irisDiameter: isEstimate,
  distance: isEstimate,
  headYaw: isEstimate,
  headPitch: isEstimate,
  headRoll: isEstimate,
});

const SOMETIMES_ESTIMATED: Readonly<Record<SometimesEstimated, true>> = {
  pupilDiameterR: true,
  pupilDiameterL: true,
  distanceBetweenRims10: true,
  distanceBetweenRims15: true,
};

const areFaceEstimates: Check<FaceEstimates> = (value): value is FaceEstimates =>
  isAlwaysEstimated(value) && areOthersEstimates(value);

function areOthersEstimates(value: object): boolean {
  const members: ReadonlyMap<string, unknown> = new Map(Object.entries(value));
  return Object.keys(SOMETIMES_ESTIMATED).every((name) => !members.has(name) || isEstimate(members.get(name)));
}

function atMost<Entry>(check: Check<Entry>): Check<readonly Entry[]> {
  const isList = listOf(check);
  return (value): value is readonly Entry[] => isList(value) && value.length <= SWEEP_FRAME_LIMIT;
}

const isMeasurement = shape<SweepMeasurement>({
  estimates: areFaceEstimates,
  pixelsPerMm: isPositive,
  advice: listOf(
    isOneOfShapes<SweepAdvice>({
      'turn-further': { rangeDeg: isFiniteNumber, usefulDeg: isFiniteNumber },
      'lean-more': { ratio: isFiniteNumber, usefulRatio: isFiniteNumber },
      'more-frames': { used: isCount, useful: isCount },
      'card-slipped': { fromFrame: isCount },
      'come-nearer': { pixelsPerMm: isFiniteNumber },
      'eyes-elsewhere': {},
    }),
  ),
  fates: atMost(oneOf('used', 'slipped', 'misfit')),
  framesUsed: isCount,
  slippedFromFrame: orNull(isCount),
  yawsDeg: atMost(orNull(isFiniteNumber)),
  distancesMm: atMost(orNull(isFiniteNumber)),
});

/** One fate, one angle and one distance for each frame. */
function isSweepMeasurement(value: unknown): value is SweepMeasurement {
  return (
    isMeasurement(value) &&
    value.yawsDeg.length === value.fates.length &&
    value.distancesMm.length === value.fates.length &&
    value.framesUsed <= value.fates.length
  );
}

const isFailureOfSweeps = isOneOfShapes<Exclude<SweepFailure, PictureFailure>>({
  'too-few-frames': { usable: isCount, needed: isCount },
  'card-not-still': { longestRun: isCount, needed: isCount },
  'frames-of-different-size': {},
});

function isSweepFailure(value: unknown): value is SweepFailure {
  return isFailureOfSweeps(value) || isPictureFailure(value);
}
