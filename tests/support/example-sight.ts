import type { LiveCard, LiveFace, LiveSight } from '../../src/core/camera/live-sight.js';
import type { ImagePoint } from '../../src/core/geometry/vector.js';
import type { BothSides } from '../../src/core/units/side.js';

const WIDTH_PX = 1280;
const HEIGHT_PX = 720;
/** of a wearer with a PD of 62 mm, half a metre before a webcam of 1280 pixels */
const PIXELS_PER_MM = 2;
const EYES_PX: BothSides<ImagePoint> = { R: { xPx: 578, yPx: 400 }, L: { xPx: 702, yPx: 400 } };

/** How a frame differs from one with which nothing is wrong. */
export interface SightChange {
  readonly pixelsPerMm?: number;
  /** the whole face, moved across the picture, px */
  readonly movedPx?: number;
  readonly face?: Partial<LiveFace> | null;
  readonly card?: Partial<LiveCard> | null;
}

/** What a running camera sees of a wearer who does everything right, or all but what is said. Made up. */
export function exampleSight(change: SightChange = {}): LiveSight {
  const { pixelsPerMm = PIXELS_PER_MM, movedPx = 0 } = change;
  const zoom = pixelsPerMm / PIXELS_PER_MM;
  const at = (xPx: number, yPx: number): ImagePoint => ({
    xPx: WIDTH_PX / 2 + zoom * (xPx - WIDTH_PX / 2) + movedPx,
    yPx: HEIGHT_PX / 2 + zoom * (yPx - HEIGHT_PX / 2),
  });
  const irisOf = ({ xPx, yPx }: ImagePoint): LiveFace['iris']['R'] => ({
    centre: at(xPx, yPx),
    radiusPx: 5.85 * pixelsPerMm,
    uncertaintyPx: 0.1,
    source: 'edges',
    softness: 0.2,
  });
  const lidsOf = ({ xPx, yPx }: ImagePoint): LiveFace['lids']['R'] => ({
    upper: [at(xPx - 28, yPx + 1), at(xPx - 12, yPx - 8), at(xPx + 12, yPx - 8), at(xPx + 28, yPx + 1)],
    lower: [at(xPx - 28, yPx + 1), at(xPx - 12, yPx + 9), at(xPx + 12, yPx + 9), at(xPx + 28, yPx + 1)],
  });
  const topLeft = at(500, 210);
  const bottomRight = at(780, 480);
  const face: LiveFace = {
    iris: { R: irisOf(EYES_PX.R), L: irisOf(EYES_PX.L) },
    lids: { R: lidsOf(EYES_PX.R), L: lidsOf(EYES_PX.L) },
    midline: [at(640, 350), at(640, 460)],
    bounds: {
      leftPx: topLeft.xPx,
      topPx: topLeft.yPx,
      widthPx: bottomRight.xPx - topLeft.xPx,
      heightPx: bottomRight.yPx - topLeft.yPx,
    },
    yawDeg: 0,
    nodDeg: 0,
    rollDeg: 0,
    opening: { R: 0.75, L: 0.75 },
    whiteLevel: 170,
    lightRatio: 1,
    ...change.face,
  };
  const card: LiveCard = {
    corners: [at(552, 240), at(728, 240), at(728, 350), at(552, 350)],
    edgeSupport: [0.95, 0.95, 0.95, 0.95],
    edgeWidthPx: 2,
    tiltDeg: 10,
    slantDeg: 0,
    position: 'forehead',
    ...change.card,
  };
  const isWhole = change.face !== null && change.card !== null;
  return {
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
    face: change.face === null ? null : face,
    card: change.card === null ? null : card,
    estimate: isWhole
      ? {
          pdFarMm: 63.2,
          standardUncertaintyMm: 0.7,
          distanceMm: 1000 / pixelsPerMm,
          pixelsPerMm,
          frameCount: 12,
        }
      : null,
  };
}
