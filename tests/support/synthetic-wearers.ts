import contactDepth from '../../calibration/contact-depth.json' with { type: 'json' };
import type { CardPosition } from '../../src/core/camera/features.js';
import type { SeededRandom } from './seeded-random.js';
import {
  chainScene,
  LANDMARK_PITCH_BIAS_RAD,
  LANDMARK_YAW_GAIN,
  type SyntheticScene,
  type SyntheticSeeing,
} from './synthetic-face.js';

const DEGREE = Math.PI / 180;

/** What the measuring says it knows of wearers, cameras and landmarks, as it says it: means and standard deviations. */
const KNOWN = {
  irisMm: [11.71, 0.42],
  logFocalSd: 0.13,
  k1Sd: 0.06,
  uprightRad: 6 * DEGREE,
  cardTurnRad: 4 * DEGREE,
  holdingMm: 3.5,
  eyeDepthMm: 0.7,
  rotationToPupilMm: [10.5, 0.5],
  relativeVergence: 0.05,
  landmarkYawRad: 1.5 * DEGREE,
  landmarkPitchRad: 5 * DEGREE,
  landmarkRollRad: 1 * DEGREE,
  landmarkGapMm: { forehead: 8, 'upper-lip': 12, chin: 9 },
  relativeCardSize: 0.125 / 85.6 / Math.sqrt(3),
  headOverSpan: [1.022, 0.028],
  templeOverSpan: [0.82, 0.05],
} as const;

/** Middle of the card above the pupils, mm: a little further than the heights of the regions in contact-depth.json. */
const CARD_HEIGHT_MM: Readonly<Record<CardPosition, number>> = { forehead: 55, 'upper-lip': -70, chin: -95 };

export interface SyntheticWearer {
  readonly scene: SyntheticScene;
  readonly seeing: SyntheticSeeing;
}

/**
 * A wearer before an unknown camera, drawn from what the measuring says it knows beforehand. What it claims not to know (PD, distance,
 * place in the picture, lean of the card) is either drawn broadly, or fixed for draws around one and the same scene.
 */
export function drawWearer(random: SeededRandom, position: CardPosition, sameScene = false): SyntheticWearer {
  const { normal, uniform } = random;
  const between = (low: number, high: number): number => {
    const share = uniform();
    return sameScene ? (low + high) / 2 : low + (high - low) * share;
  };
  const base = chainScene();
  const contact = contactDepth.regions[position];
  const size = normal(1, KNOWN.relativeCardSize);
  const yawRad = normal(0, KNOWN.uprightRad);
  const pitchRad = normal(0, KNOWN.uprightRad);
  const rollRad = between(-8, 8) * DEGREE;
  const eyesMm = [between(-60, 60), between(-50, 50), between(380, 640)] as const;
  const rotationToPupilMm = normal(...KNOWN.rotationToPupilMm);
  const scene: SyntheticScene = {
    ...base,
    camera: {
      widthPx: 1280,
      heightPx: 720,
      focalPx: 0.8 * 1280 * Math.exp(normal(0, KNOWN.logFocalSd)),
      centre: { xPx: 640, yPx: 360 },
      k1: normal(0, KNOWN.k1Sd),
    },
    eyesMm,
    yawRad,
    pitchRad,
    rollRad,
    pdFarMm: sameScene ? 63.3 : normal(63.3, 3.7),
    bridgeLeftMm: between(-1.5, 1.5),
    irisMm: normal(...KNOWN.irisMm),
    leftEyeForwardMm: normal(0, KNOWN.eyeDepthMm),
    rotationToPupilMm,
    fixationMm: (eyesMm[2] + rotationToPupilMm) / (1 + normal(0, KNOWN.relativeVergence)),
    headOverSpan: normal(...KNOWN.headOverSpan),
    templeOverSpan: normal(...KNOWN.templeOverSpan),
    card: {
      source: 'edges',
      position,
      widthMm: 85.6 * size,
      heightMm: 53.98 * size,
      thicknessMm: 0.76,
      backMm: [
        between(-5, 5),
        CARD_HEIGHT_MM[position] + between(-5, 5),
        normal(contact.meanMm, Math.hypot(contact.sdMm, KNOWN.holdingMm)),
      ],
      turnRad: normal(0, KNOWN.cardTurnRad),
      leanRad: between(-6, 14) * DEGREE,
      rollRad: between(-5, 5) * DEGREE,
    },
  };
  const seeing: SyntheticSeeing = {
    cornerPx: 0.2,
    irisShare: 0.015,
    irisRadiusShare: 0.02,
    lidPx: 1,
    midlinePx: 1.5,
    outlinePx: 3,
    landmarkYawRad: LANDMARK_YAW_GAIN * (yawRad + normal(0, KNOWN.landmarkYawRad)),
    landmarkPitchRad: pitchRad + normal(0, KNOWN.landmarkPitchRad) + LANDMARK_PITCH_BIAS_RAD[position],
    landmarkRollRad: rollRad + normal(0, KNOWN.landmarkRollRad),
    landmarkGapMm: normal(0, KNOWN.landmarkGapMm[position]),
    deviate: () => normal(0, 1),
  };
  return { scene, seeing };
}
