import { distancePx, type ImagePoint } from '../geometry/vector.js';
import type { Side } from '../units/side.js';
import { LANDMARK, landmarkAt } from './face-landmarks.js';
import type { BridgeObservation, FourCorners, Landmark } from './features.js';

type Shares = readonly (readonly [landmark: number, share: number])[];

/**
 * Where the pads of a frame rest: in one frontal plane, 5 mm behind the crest of the bridge, 10 and 15 mm below it. The crest is the
 * deepest point of the midline between the eyes, landmark 168 of the canonical face (calibration/canonical-face.json). The points
 * lie between landmarks of the flanks, in these shares, so that the canonical face has them at (10.1, -10) and (12.5, -15) mm.
 */
const FLANKS: readonly { readonly belowCrestMm: 10 | 15; readonly R: Shares; readonly L: Shares }[] = [
  {
    belowCrestMm: 10,
    R: [
      [245, 0.765],
      [188, 0.235],
    ],
    L: [
      [465, 0.765],
      [412, 0.235],
    ],
  },
  {
    belowCrestMm: 15,
    R: [
      [188, 0.231],
      [174, 0.059],
      [128, 0.579],
      [114, 0.131],
    ],
    L: [
      [412, 0.231],
      [399, 0.059],
      [357, 0.579],
      [343, 0.131],
    ],
  },
];

/** Doubt of a flank across it, mm: landmarks slide along a surface without marks. Chosen, generously: there is no truth to tune it on. */
const UNCERTAINTY_MM = 1.5;
/** Mean distance of the pupils, to turn millimetres into pixels (Dodgson 2004: 63 mm). */
const TYPICAL_PD_MM = 63;
/** A card hides what lies nearer to it than this, as a share of the distance of the pupils. Chosen: landmarks guess what is hidden. */
const CLEARANCE_SHARE = 0.04;

/**
 * The flanks of the nose at two levels below the crest, as the landmarks lay them. Indicative: the levels are those of the mean
 * face's scale, and nothing in the picture itself is measured here.
 */
export function bridgeFromLandmarks(landmarks: readonly Landmark[]): readonly BridgeObservation[] {
  const spanPx = distancePx(landmarkAt(landmarks, LANDMARK.irisCentre.R), landmarkAt(landmarks, LANDMARK.irisCentre.L));
  const mean = (shares: Shares): ImagePoint => {
    let xPx = 0;
    let yPx = 0;
    for (const [index, share] of shares) {
      const landmark = landmarkAt(landmarks, index);
      xPx += share * landmark.xPx;
      yPx += share * landmark.yPx;
    }
    return { xPx, yPx };
  };
  return FLANKS.map(({ belowCrestMm, R, L }) => ({
    belowCrestMm,
    R: mean(R),
    L: mean(L),
    uncertaintyPx: (UNCERTAINTY_MM / TYPICAL_PD_MM) * spanPx,
  }));
}

/** Those levels of the bridge of which the card hides neither flank. */
export function bridgeBesideCard(
  bridge: readonly BridgeObservation[],
  corners: FourCorners<ImagePoint>,
  spanPx: number,
): readonly BridgeObservation[] {
  const hidden = (level: BridgeObservation, side: Side): boolean =>
    isWithinMargin(level[side], corners, CLEARANCE_SHARE * spanPx);
  return bridge.filter((level) => !hidden(level, 'R') && !hidden(level, 'L'));
}

/** Whether a point lies in a convex quadrilateral, corners clockwise as seen, or within a margin of it (of each side's line). */
function isWithinMargin({ xPx, yPx }: ImagePoint, corners: FourCorners<ImagePoint>, marginPx: number): boolean {
  return corners.every((from, i) => {
    const to = corners[(i + 1) % 4]!;
    const [dx, dy] = [to.xPx - from.xPx, to.yPx - from.yPx];
    const inside = (dx * (yPx - from.yPx) - dy * (xPx - from.xPx)) / Math.hypot(dx, dy);
    return inside > -marginPx;
  });
}
