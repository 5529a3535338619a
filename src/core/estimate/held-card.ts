import type { CardObservation, CardPosition } from '../camera/features.js';
import { axesOfHead } from '../camera/head-axes.js';
import type { HeadAngles } from '../camera/head-pose.js';
import type { PlanarPose } from '../camera/planar-pose.js';
import { REFERENCE_CARD } from '../camera/reference-card.js';
import { dot, scale, transpose } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import { HOLDING_SD_MM, PITCH_BIAS, YAW_GAIN, type FaceKnowledge } from './prior-knowledge.js';

/** Doubt of a print's scale after its line was measured, relative: 0.3 of 150 mm. Chosen. */
export const PRINTED_SIZE_UNCERTAINTY = 0.002;

/** What is known of a card in the hand before it is looked at. */
export interface HeldCard {
  /** true size over that of ID-1, with its relative standard uncertainty */
  readonly size: number;
  readonly sizeUncertainty: number;
  /** from the face that the picture shows to the one that touches the skin; paper has none */
  readonly thicknessMm: number;
  /** how far its middle lies before the pupils, with its standard uncertainty */
  readonly contactMm: number;
  readonly contactSdMm: number;
}

/** Markers are only on the printed card: its scale counts whenever they are seen. */
export function heldCard(
  { source, position }: CardObservation,
  printScale: number,
  { contactDepth }: FaceKnowledge,
): HeldCard {
  const { meanMm, sdMm } = contactDepth.regions[position];
  const contact = { contactMm: meanMm, contactSdMm: Math.hypot(sdMm, HOLDING_SD_MM) };
  if (source === 'markers') {
    return { size: printScale, sizeUncertainty: PRINTED_SIZE_UNCERTAINTY, thicknessMm: 0, ...contact };
  }
  const { relativeSizeUncertainty, thicknessMm } = REFERENCE_CARD;
  return { size: 1, sizeUncertainty: relativeSizeUncertainty, thicknessMm, ...contact };
}

/** The angles of a head as the mean face tells them, freed of what that fit gets wrong on average. */
export function withoutFitBias({ yawRad, pitchRad, rollRad }: HeadAngles, position: CardPosition): HeadAngles {
  return { yawRad: YAW_GAIN * yawRad, pitchRad: pitchRad - PITCH_BIAS[position], rollRad };
}

/** Of both poses of the card the one that a card held against this face can have. */
export function chooseCardPose(poses: readonly [PlanarPose, PlanarPose], head: HeadAngles): PlanarPose {
  const { forward, left, up } = axesOfHead(head);
  const cost = ({ pose, residualPx }: PlanarPose): number => {
    // The card's z points into the face.
    const normal = scale(transpose(pose.rotation)[2], -1);
    const turn = Math.atan2(dot(normal, left), dot(normal, forward));
    const lean = Math.atan2(dot(normal, up), dot(normal, forward));
    return (turn / degreesToRadians(8)) ** 2 + (lean / degreesToRadians(20)) ** 2 + (residualPx / 0.3) ** 2;
  };
  return cost(poses[0]) <= cost(poses[1]) ? poses[0] : poses[1];
}
