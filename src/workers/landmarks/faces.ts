import type { Landmark } from '../../core/camera/features.js';
import type { Region } from './search-regions.js';

/** One face: all landmarks in pixels of the picture. */
export type Face = readonly Landmark[];

/** The model's points on the irises of the wearer's right and left eye. */
const IRIS_CENTRES = { R: 468, L: 473 } as const;

/** Chosen: a face smaller than this share of the largest is a portrait on a card, or somebody far behind. */
const SMALL_FACE_SHARE = 0.4;

/** Landmarks relative to a region (0 to 1, depth in the scale of x) in pixels of the picture. */
export function landmarksInPicture(
  points: readonly { readonly x: number; readonly y: number; readonly z: number }[],
  region: Region,
): Face {
  return points.map((point) => ({
    xPx: region.xPx + point.x * region.widthPx,
    yPx: region.yPx + point.y * region.heightPx,
    depthPx: point.z * region.widthPx,
  }));
}

/** Distance between the irises, in pixels: the size of a face. */
export function eyeDistancePx(face: Face): number {
  const { R, L } = irises(face);
  return Math.hypot(L.xPx - R.xPx, L.yPx - R.yPx);
}

/** The faces that count, largest first: each once, though several regions show it, and none much smaller than the largest. */
export function distinctFaces(faces: readonly Face[]): readonly Face[] {
  const bySize = [...faces].sort((a, b) => eyeDistancePx(b) - eyeDistancePx(a));
  const kept: Face[] = [];
  for (const face of bySize) {
    const largest = kept[0] ?? face;
    if (eyeDistancePx(face) < SMALL_FACE_SHARE * eyeDistancePx(largest)) continue;
    if (kept.every((other) => !isSameFace(face, other))) kept.push(face);
  }
  return kept;
}

/** A square around the face, three times as wide as it: what the detector sees best. It may reach out of the picture. */
export function regionAround(face: Face): Region {
  const { R, L } = irises(face);
  // a face is about 2.3 times as wide as its eyes are apart
  const sidePx = 3 * 2.3 * eyeDistancePx(face);
  return {
    xPx: Math.round((R.xPx + L.xPx) / 2 - sidePx / 2),
    yPx: Math.round((R.yPx + L.yPx) / 2 - sidePx / 2),
    widthPx: Math.round(sidePx),
    heightPx: Math.round(sidePx),
  };
}

/** A square close around the face, nearly twice its larger side: what the landmark model sees best. It may reach out of the picture. */
export function closeAround(face: Face): Region {
  const xs = face.map(({ xPx }) => xPx);
  const ys = face.map(({ yPx }) => yPx);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const sidePx = 1.9 * Math.max(right - left, bottom - top);
  return { xPx: (left + right - sidePx) / 2, yPx: (top + bottom - sidePx) / 2, widthPx: sidePx, heightPx: sidePx };
}

/** Of several faces the one whose eyes are where those of the given face are, or null where none has them there. */
export function nearestFace(faces: readonly Face[], face: Face): Face | null {
  return faces.find((other) => isSameFace(other, face)) ?? null;
}

function isSameFace(a: Face, b: Face): boolean {
  const [first, second] = [irises(a), irises(b)];
  const dx = (first.R.xPx + first.L.xPx - second.R.xPx - second.L.xPx) / 2;
  const dy = (first.R.yPx + first.L.yPx - second.R.yPx - second.L.yPx) / 2;
  return Math.hypot(dx, dy) < Math.max(eyeDistancePx(a), eyeDistancePx(b));
}

function irises(face: Face): { readonly R: Landmark; readonly L: Landmark } {
  const R = face[IRIS_CENTRES.R];
  const L = face[IRIS_CENTRES.L];
  if (R === undefined || L === undefined)
    throw new Error(`A face has ${face.length} landmarks; those of the irises are missing`);
  return { R, L };
}
