import { followFrame, movedWithFace, type FollowedFrame, type FrameWindow } from '../camera/follow-frame.js';
import { positionOfCard } from '../camera/find-card.js';
import { eyesFromLandmarks } from '../camera/face-landmarks.js';
import type { FourCorners, Landmark } from '../camera/features.js';
import type { LiveCard, LiveEstimate, LiveSight } from '../camera/live-sight.js';
import type { HeadAngles } from '../camera/head-pose.js';
import { distancePx, type ImagePoint } from '../geometry/vector.js';
import { degreesToRadians, radiansToDegrees } from '../units/angle.js';
import type { MeasuringSettings } from './face-estimates.js';
import {
  averaged,
  estimateFromFrame,
  uncertaintyOfMeanMm,
  type FrameEstimate,
  type RunningEstimate,
} from './live-estimate.js';
import type { FaceKnowledge } from './prior-knowledge.js';

/** What of the frames so far helps with the next one. */
export interface LiveMemory {
  readonly followed: FollowedFrame;
  readonly running: RunningEstimate | null;
}

/** A search that finds the card further from where it was followed than this share of its width is right, and the following was not. Chosen. */
const ELSEWHERE_SHARE = 0.02;

/** Where a search found the card, in a frame that lies some frames back. */
export interface SearchedCard {
  readonly corners: FourCorners<ImagePoint>;
  /** of that frame */
  readonly landmarks: readonly Landmark[];
}

/** Where the card should be in a frame. */
export interface ExpectedCard {
  /** null where none is followed, and none was found */
  readonly corners: FourCorners<ImagePoint> | null;
  /** it is not where it was followed: what was averaged so far was of another place */
  readonly isHeldAnew: boolean;
}

/** Where the card should be now, from where it was in the frame before, and from a search where one has just ended. */
export function expectedCard(
  before: LiveMemory | null,
  searched: SearchedCard | null,
  landmarks: readonly Landmark[],
): ExpectedCard {
  const last = before?.followed ?? null;
  const followed = last?.card ? movedWithFace(last.card, last.landmarks, landmarks) : null;
  if (searched === null) return { corners: followed, isHeldAnew: false };
  const found = movedWithFace(searched.corners, searched.landmarks, landmarks);
  if (followed === null) return { corners: found, isHeldAnew: true };
  const apartPx = Math.max(...found.map((corner, i) => distancePx(corner, followed[i]!)));
  const isElsewhere = apartPx > ELSEWHERE_SHARE * distancePx(found[0], found[1]);
  return isElsewhere ? { corners: found, isHeldAnew: true } : { corners: followed, isHeldAnew: false };
}

/**
 * All that is told of one frame, and what helps with the next.
 *
 * @param frame size of the whole frame
 * @param window the part of it that `windowOfInterest` named
 * @param landmarks in pixels of the frame
 * @param expected what `expectedCard` says
 */
export function stepLive(
  frame: { readonly widthPx: number; readonly heightPx: number },
  window: FrameWindow,
  landmarks: readonly Landmark[],
  before: LiveMemory | null,
  expected: ExpectedCard,
  settings: MeasuringSettings,
  known: FaceKnowledge,
): { readonly sight: LiveSight; readonly memory: LiveMemory } {
  const { face, iris, card: fitted, next } = followFrame(window, landmarks, before?.followed ?? null, expected.corners);
  const eyes = eyesFromLandmarks(landmarks);
  const position = fitted && positionOfCard(fitted.corners, eyes);
  const angles: HeadAngles = {
    yawRad: degreesToRadians(face.yawDeg),
    pitchRad: degreesToRadians(face.nodDeg),
    // counter-clockwise in the picture
    rollRad: -eyes.rollRad,
  };
  const estimate: FrameEstimate | null =
    fitted === null || position === null || iris.R === null || iris.L === null
      ? null
      : estimateFromFrame(frame, { card: fitted, position, iris: { R: iris.R, L: iris.L }, angles }, settings, known);
  const kept = expected.isHeldAnew || next.card === null ? null : (before?.running ?? null);
  const running = estimate === null ? kept : averaged(kept, estimate);

  const liveCard: LiveCard | null =
    fitted === null || position === null
      ? null
      : {
          corners: fitted.corners,
          edgeSupport: fitted.support,
          edgeWidthPx: fitted.edgeWidthPx,
          tiltDeg: estimate?.tiltDeg ?? null,
          slantDeg: radiansToDegrees(slantRad(fitted.corners) - eyes.rollRad),
          position,
        };
  const liveEstimate: LiveEstimate | null =
    estimate === null || running === null
      ? null
      : {
          pdFarMm: running.pdFarMm,
          standardUncertaintyMm: uncertaintyOfMeanMm(running, estimate),
          distanceMm: estimate.distanceMm,
          pixelsPerMm: estimate.pixelsPerMm,
          frameCount: running.frameCount,
        };
  const { widthPx, heightPx } = frame;
  return {
    sight: { widthPx, heightPx, face, card: liveCard, estimate: liveEstimate },
    memory: { followed: next, running },
  };
}

/** Direction of a card's upper and lower edges in the picture, radians; positive where the right end in the picture is lower. */
function slantRad([topLeft, topRight, bottomRight, bottomLeft]: FourCorners<ImagePoint>): number {
  return Math.atan2(
    topRight.yPx - topLeft.yPx + bottomRight.yPx - bottomLeft.yPx,
    topRight.xPx - topLeft.xPx + bottomRight.xPx - bottomLeft.xPx,
  );
}
