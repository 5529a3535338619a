import { BOARD } from '../core/camera/board.js';
import { cameraFromFieldOfView, project, type Camera } from '../core/camera/pinhole.js';
import type { BoardPosition } from '../core/camera/profile-quality.js';
import type { Pose } from '../core/geometry/pose.js';
import { toCamera } from '../core/geometry/pose.js';
import { rotationFromVector } from '../core/geometry/rotation.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { multiplyVector } from '../core/geometry/vector.js';
import { degreesToRadians } from '../core/units/angle.js';

interface Placing {
  /** length of the long side over the width of the picture, if it lay flat */
  readonly sizeShare: number;
  /** where the middle of the sheet comes to lie, over width and height of the picture */
  readonly at: readonly [xShare: number, yShare: number];
  /** about the camera's x (positive: upper side nearer), y (positive: right side nearer) and z (clockwise) axes */
  readonly turnDeg: readonly [aboutX: number, aboutY: number, aboutZ: number];
}

const flat = (sizeShare: number, xShare: number, yShare: number): Placing => ({
  sizeShare,
  at: [xShare, yShare],
  turnDeg: [0, 0, 0],
});

/** Chosen: what each position asks for, exaggerated enough that a hand that is a little off still shows it. */
const PLACINGS: Readonly<Record<BoardPosition, Placing>> = {
  middle: flat(0.38, 0.5, 0.5),
  nearer: flat(0.56, 0.5, 0.5),
  farther: flat(0.25, 0.5, 0.5),
  'left-top': flat(0.38, 0.22, 0.26),
  'right-top': flat(0.38, 0.78, 0.26),
  'right-bottom': flat(0.38, 0.78, 0.74),
  'left-bottom': flat(0.38, 0.22, 0.74),
  'tilted-left': { sizeShare: 0.4, at: [0.5, 0.5], turnDeg: [0, -32, 0] },
  'tilted-right': { sizeShare: 0.4, at: [0.5, 0.5], turnDeg: [0, 32, 0] },
  'tilted-top': { sizeShare: 0.4, at: [0.5, 0.5], turnDeg: [32, 0, 0] },
  'tilted-bottom': { sizeShare: 0.4, at: [0.5, 0.5], turnDeg: [-32, 0, 0] },
  upright: { sizeShare: 0.36, at: [0.5, 0.5], turnDeg: [0, 0, 90] },
};

/** A camera as most webcams are. Only a guide is drawn with it: it need not be the camera in use. */
function usualCamera(widthPx: number, heightPx: number): Camera {
  return cameraFromFieldOfView(widthPx, heightPx, degreesToRadians(66));
}

/** Where the sheet would stand before a usual camera to show a position: sheet frame (see `boardCornerMm`) to camera frame. */
export function poseOfPosition(position: BoardPosition, widthPx: number, heightPx: number): Pose {
  const camera = usualCamera(widthPx, heightPx);
  const { sizeShare, at, turnDeg } = PLACINGS[position];
  const lengthMm = BOARD.columns * BOARD.squareMm;
  const depthMm = (lengthMm * camera.fx) / (sizeShare * widthPx);
  const middleMm = [
    (((at[0] - 0.5) * widthPx) / camera.fx) * depthMm,
    (((at[1] - 0.5) * heightPx) / camera.fy) * depthMm,
    depthMm,
  ] as const;
  const [x, y, z] = turnDeg.map(degreesToRadians);
  const rotation = rotationFromVector([x ?? 0, y ?? 0, z ?? 0]);
  const offset = multiplyVector(rotation, [lengthMm / 2, (BOARD.rows * BOARD.squareMm) / 2, 0]);
  return {
    rotation,
    translationMm: [middleMm[0] - offset[0], middleMm[1] - offset[1], middleMm[2] - offset[2]],
  };
}

/** The outline of the board's pattern where it is asked for, clockwise from its own top left; pixels of the unmirrored picture. */
export function outlineOfPosition(position: BoardPosition, widthPx: number, heightPx: number): readonly ImagePoint[] {
  const camera = usualCamera(widthPx, heightPx);
  const pose = poseOfPosition(position, widthPx, heightPx);
  const [rightMm, bottomMm] = [BOARD.columns * BOARD.squareMm, BOARD.rows * BOARD.squareMm];
  return (
    [
      [0, 0, 0],
      [rightMm, 0, 0],
      [rightMm, bottomMm, 0],
      [0, bottomMm, 0],
    ] as const
  ).map((corner) => project(camera, toCamera(pose, corner)));
}
