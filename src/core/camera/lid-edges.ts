import { pointAlong, perpendicularDown } from '../geometry/image-direction.js';
import { LANDMARK, landmarkAt } from './face-landmarks.js';
import type { IrisObservation, Landmark, LidObservation } from './features.js';
import { CHANNELS, clipRectangle, cutPlane, sample, type PixelPlane, type RgbaImage } from './pixel-plane.js';
import { median } from '../statistics/robust.js';
import type { Side } from '../units/side.js';

/** Half the width of the strip around the vertical that is looked at, as a share of the iris radius. */
const STRIP_SHARE = 0.55;
/** How near to its landmark a margin is sought, as a share of the iris radius: the lower lid's landmarks are the better ones. */
const UPPER_NEARNESS = 0.22;
const LOWER_NEARNESS = 0.14;
/** A step this large, as a share of the largest, ends the eye: what lies beyond it is lid and crease. */
const FIRST_STEP_SHARE = 0.5;

/**
 * Lid margins on the vertical of the head through the pupil's centre. The landmarks tell about where they are; the margin itself is
 * the steepest change, in the mixture of channels that tells this skin from this eye best, near there.
 *
 * @param rollRad direction from the wearer's right to the left eye in the picture
 */
export function fitLidEdges(
  image: RgbaImage,
  landmarks: readonly Landmark[],
  iris: IrisObservation,
  side: Side,
  rollRad: number,
): LidObservation {
  const down = perpendicularDown(rollRad);
  const along = (index: number): number => {
    const landmark = landmarkAt(landmarks, index);
    return (landmark.xPx - iris.centre.xPx) * down.xPx + (landmark.yPx - iris.centre.yPx) * down.yPx;
  };
  const upperSeed =
    marginOnVertical(landmarks, LANDMARK.upperLidMargin[side], iris, rollRad) ?? along(LANDMARK.upperLid[side]);
  const lowerSeed =
    marginOnVertical(landmarks, LANDMARK.lowerLidMargin[side], iris, rollRad) ?? along(LANDMARK.lowerLid[side]);
  const upper = refineMargin(image, iris, down, upperSeed, -1);
  const lower = refineMargin(image, iris, down, lowerSeed, 1);
  return {
    upper: pointAlong(iris.centre, down, upper),
    lower: pointAlong(iris.centre, down, lower),
    uncertaintyPx: 0.08 * iris.radiusPx + 0.28,
    source: 'edges',
  };
}

/** Where the polyline of a lid's landmarks crosses the vertical through the pupil, as distance below the centre, px. */
function marginOnVertical(
  landmarks: readonly Landmark[],
  indices: readonly number[],
  iris: IrisObservation,
  rollRad: number,
): number | null {
  const cosine = Math.cos(rollRad);
  const sine = Math.sin(rollRad);
  const turned = indices.map((index) => {
    const landmark = landmarkAt(landmarks, index);
    const dx = landmark.xPx - iris.centre.xPx;
    const dy = landmark.yPx - iris.centre.yPx;
    return { across: dx * cosine + dy * sine, below: -dx * sine + dy * cosine };
  });
  for (let i = 0; i + 1 < turned.length; i++) {
    const a = turned[i]!;
    const b = turned[i + 1]!;
    if (a.across * b.across > 0 || a.across === b.across) continue;
    const share = a.across / (a.across - b.across);
    return a.below + share * (b.below - a.below);
  }
  return null;
}

/** The steepest change near a seed, along the vertical; `outward` is -1 for the upper lid and 1 for the lower. */
function refineMargin(
  image: RgbaImage,
  iris: IrisObservation,
  down: { readonly xPx: number; readonly yPx: number },
  seed: number,
  outward: 1 | -1,
): number {
  const radius = iris.radiusPx;
  const reach = 2.4 * radius;
  const rectangle = clipRectangle(image, {
    leftPx: iris.centre.xPx - reach,
    topPx: iris.centre.yPx - reach,
    widthPx: 2 * reach,
    heightPx: 2 * reach,
  });
  if (rectangle === null) return seed;
  const planes = CHANNELS.map((channel) => cutPlane(image, rectangle, channel));
  const spacing = Math.min(0.25, 0.04 * radius);
  const distance = outward * seed;
  const first = Math.max(0.3 * radius, distance - 0.45 * radius);
  const last = distance + 0.4 * radius;
  const count = Math.max(12, Math.ceil((last - first) / spacing));
  const profiles = planes.map((plane) =>
    profileAcross(plane, iris, rectangle, down, outward, first, spacing, count, radius),
  );
  const lag = Math.max(1, Math.round(Math.max(0.6, 0.07 * radius) / spacing));
  let best = 0;
  let at = 0;
  // What distinguishes skin from eye here: the difference of both ends, channel by channel.
  const contrast = profiles.map((profile) => meanOf(profile, count - 2 * lag, count) - meanOf(profile, 0, 2 * lag));
  const strength = Math.hypot(...contrast);
  if (strength < 4) return seed;
  const steps = new Float32Array(count);
  for (let k = lag; k < count - lag; k++) {
    let step = 0;
    profiles.forEach((profile, c) => (step += (contrast[c]! / strength) * (profile[k + lag]! - profile[k - lag]!)));
    const away = (first + k * spacing - distance) / ((outward > 0 ? LOWER_NEARNESS : UPPER_NEARNESS) * radius);
    steps[k] = Math.max(0, step) * Math.exp(-(away * away) / 2);
    if (steps[k]! > best) {
      best = steps[k]!;
      at = k;
    }
  }
  if (best <= 0) return seed;
  for (let k = lag; k < at; k++) {
    if (steps[k]! >= FIRST_STEP_SHARE * best && steps[k]! >= steps[k - 1]! && steps[k]! > steps[k + 1]!) {
      at = k;
      break;
    }
  }
  best = steps[at]!;
  let weight = 0;
  let moment = 0;
  for (let k = Math.max(lag, at - 2 * lag); k <= Math.min(count - lag - 1, at + 2 * lag); k++) {
    const over = Math.max(0, steps[k]! - 0.4 * best);
    weight += over;
    moment += over * k;
  }
  return outward * (first + (moment / weight) * spacing);
}

function profileAcross(
  plane: PixelPlane,
  iris: IrisObservation,
  rectangle: { readonly leftPx: number; readonly topPx: number },
  down: { readonly xPx: number; readonly yPx: number },
  outward: number,
  first: number,
  spacing: number,
  count: number,
  radius: number,
): Float32Array {
  const profile = new Float32Array(count);
  const x0 = iris.centre.xPx - rectangle.leftPx;
  const y0 = iris.centre.yPx - rectangle.topPx;
  for (let k = 0; k < count; k++) {
    const distance = outward * (first + k * spacing);
    // The median over a strip, so that a highlight or a lash beside the vertical does not count.
    const strip: number[] = [];
    for (let side = -4; side <= 4; side++) {
      const across = (side / 4) * STRIP_SHARE * radius;
      strip.push(
        sample(plane, x0 + down.xPx * distance + down.yPx * across, y0 + down.yPx * distance - down.xPx * across),
      );
    }
    profile[k] = median(strip);
  }
  return profile;
}

function meanOf(values: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum / (to - from);
}
