import { adjust, type Knowledge } from '../fitting/adjustment.js';
import { rotationFromVector } from '../geometry/rotation.js';
import { isWithin } from '../geometry/outline.js';
import type { ImagePoint, Matrix3, Vector3 } from '../geometry/vector.js';
import type { FourCorners, Landmark } from './features.js';
import type { Camera } from './pinhole.js';

/** The metric mean face on which landmarks are mapped: head frame axes, its own origin, mm. */
export interface CanonicalFace {
  readonly verticesMm: readonly (readonly number[])[];
}

/** How the head is turned towards the camera, radians. Positive yaw: face to picture right; pitch: face down; roll: anticlockwise. */
export interface HeadAngles {
  readonly yawRad: number;
  readonly pitchRad: number;
  readonly rollRad: number;
}

/** Only every third vertex of one half is used, and its mirror image: neighbours say the same, and both sides must weigh alike. */
const STRIDE = 3;

/** Which vertices of the mean face are laid onto landmarks. */
export function choosePoseVertices(face: CanonicalFace): readonly number[] {
  const { verticesMm } = face;
  const chosen = new Set<number>();
  verticesMm.forEach((vertex, i) => {
    if (vertex[0]! < 0 || i % STRIDE !== 0) return;
    let mirror = i;
    let least = Infinity;
    verticesMm.forEach((other, k) => {
      const apart = Math.hypot(other[0]! + vertex[0]!, other[1]! - vertex[1]!, other[2]! - vertex[2]!);
      if (apart < least) {
        least = apart;
        mirror = k;
      }
    });
    chosen.add(i).add(mirror);
  });
  return [...chosen];
}

/**
 * Head angles from the mean face laid onto the landmarks through the camera, robustly. Landmarks under the card are left out:
 * there the landmark model guesses. Null where the fit fails.
 *
 * @param vertices the vertices to be used; see `choosePoseVertices`
 */
export function fitHeadPose(
  camera: Camera,
  face: CanonicalFace,
  landmarks: readonly Landmark[],
  card: FourCorners<ImagePoint>,
  vertices: readonly number[] = choosePoseVertices(face),
): HeadAngles | null {
  const points: { readonly body: Vector3; readonly px: Landmark }[] = [];
  for (const i of vertices) {
    const landmark = landmarks[i];
    const vertex = face.verticesMm[i];
    if (landmark === undefined || vertex === undefined || isWithin(card, landmark)) continue;
    points.push({ body: [vertex[0]!, vertex[1]!, vertex[2]!], px: landmark });
  }
  if (points.length < 30) return null;
  const xs = points.map((point) => point.px.xPx);
  const spanPx = Math.max(...xs) - Math.min(...xs);
  const bodyXs = points.map((point) => point.body[0]);
  const depthMm = (camera.fx * (Math.max(...bodyXs) - Math.min(...bodyXs))) / spanPx;
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const start = [
    0,
    0,
    0,
    ((mean(xs) - camera.cx) / camera.fx) * depthMm,
    (-(mean(points.map((point) => point.px.yPx)) - camera.cy) / camera.fy) * depthMm,
    depthMm,
  ];
  // Landmarks scatter by about a hundredth of the face's width.
  const scatterPx = 0.01 * spanPx;
  const knowledge: Knowledge<'landmark'> = {
    sources: new Array<'landmark'>(2 * points.length).fill('landmark'),
    robust: () => true,
    residuals: (x) => {
      const r = rotationFromVector([x[0]!, x[1]!, x[2]!]);
      const out = new Array<number>(2 * points.length);
      points.forEach(({ body: [bx, by, bz], px }, i) => {
        // Head frame: y up, z towards the viewer; the camera's y points down and its z away.
        const depth = x[5]! - (r[2][0] * bx + r[2][1] * by + r[2][2] * bz);
        const across = (r[0][0] * bx + r[0][1] * by + r[0][2] * bz + x[3]!) / depth;
        const up = (r[1][0] * bx + r[1][1] * by + r[1][2] * bz + x[4]!) / depth;
        out[2 * i] = (camera.fx * across + camera.cx - px.xPx) / scatterPx;
        out[2 * i + 1] = (camera.cy - camera.fy * up - px.yPx) / scatterPx;
      });
      return out;
    },
  };
  const outcome = adjust(knowledge, start, [1e-5, 1e-5, 1e-5, 1e-3, 1e-3, 1e-3], 8);
  if (!outcome.ok) return null;
  const [rx, ry, rz] = outcome.value.parameters;
  return anglesOfHead(rotationFromVector([rx!, ry!, rz!]));
}

/** Rotation of the head in axes x right, y up, z towards the viewer: Ry(yaw) Rx(pitch) Rz(roll). */
export function rotationOfHead({ yawRad, pitchRad, rollRad }: HeadAngles): Matrix3 {
  const [cy, sy] = [Math.cos(yawRad), Math.sin(yawRad)];
  const [cp, sp] = [Math.cos(pitchRad), Math.sin(pitchRad)];
  const [cr, sr] = [Math.cos(rollRad), Math.sin(rollRad)];
  return [
    [cy * cr + sy * sp * sr, -cy * sr + sy * sp * cr, sy * cp],
    [cp * sr, cp * cr, -sp],
    [-sy * cr + cy * sp * sr, sy * sr + cy * sp * cr, cy * cp],
  ];
}

/** The inverse of `rotationOfHead`. */
export function anglesOfHead(r: Matrix3): HeadAngles {
  return {
    yawRad: Math.atan2(r[0][2], r[2][2]),
    pitchRad: -Math.asin(Math.min(1, Math.max(-1, r[1][2]))),
    rollRad: Math.atan2(r[1][0], r[1][1]),
  };
}
