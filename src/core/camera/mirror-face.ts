import type { Landmark } from './features.js';
import type { CanonicalFace } from './head-pose.js';

/** The points on each iris edge that change places when a face is mirrored, beside the centres. */
const IRIS_MIRROR: readonly (readonly [number, number])[] = [
  [468, 473],
  [469, 476],
  [470, 475],
  [471, 474],
  [472, 477],
];

/** For each landmark the one that stands in its place in a mirrored picture; the mean face is symmetric to within rounding. */
export function mirrorIndices({ verticesMm }: CanonicalFace): readonly number[] {
  const indices = verticesMm.map((vertex) => {
    let mirror = 0;
    let least = Infinity;
    verticesMm.forEach((other, k) => {
      const apart = Math.hypot(other[0]! + vertex[0]!, other[1]! - vertex[1]!, other[2]! - vertex[2]!);
      if (apart < least) {
        least = apart;
        mirror = k;
      }
    });
    return mirror;
  });
  for (const [a, b] of IRIS_MIRROR) {
    indices[a] = b;
    indices[b] = a;
  }
  return indices;
}

/** The landmarks of a mirrored look at a face, given in pixels of the unmirrored picture, in the order of an unmirrored face. */
export function unmirrored(face: readonly Landmark[], indices: readonly number[]): readonly Landmark[] {
  return indices.map((index) => face[index]!);
}

/** Landmark by landmark the mean of several looks at the same face. */
export function meanOfLooks(looks: readonly (readonly Landmark[])[]): readonly Landmark[] {
  const share = 1 / looks.length;
  return (looks[0] ?? []).map((_, i) => {
    let xPx = 0;
    let yPx = 0;
    let depthPx = 0;
    for (const look of looks) {
      xPx += share * look[i]!.xPx;
      yPx += share * look[i]!.yPx;
      depthPx += share * look[i]!.depthPx;
    }
    return { xPx, yPx, depthPx };
  });
}
