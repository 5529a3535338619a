import { describe, expect, it } from 'vitest';
import type { Vector3 } from '../../src/core/geometry/vector.js';
import { seededRandom } from './seeded-random.js';
import { axesOfSyntheticHead, photograph } from './synthetic-face.js';
import {
  cardCornersOfFrame,
  courseOf,
  drawSweep,
  exampleSweep,
  featuresOfFrame,
  framesOfSweep,
  mirroredSweep,
  pupilsOfFrame,
  rotationCentresOfFrame,
} from './synthetic-sweep.js';

const apart = (a: Vector3, b: Vector3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Both centres of rotation and all corners of the card in one frame. */
const bodyOfFrame = (sweep: ReturnType<typeof exampleSweep>, frame: number): Vector3[] => {
  const { R, L } = rotationCentresOfFrame(sweep, frame);
  return [R, L, ...cardCornersOfFrame(sweep, frame)];
};

describe('the head of a synthetic sweep', () => {
  const sweep = drawSweep(seededRandom(5), 12);
  const first = bodyOfFrame(sweep, 0);

  it('keeps centres of rotation and card rigid to one another', () => {
    for (let frame = 1; frame < 12; frame++) {
      const body = bodyOfFrame(sweep, frame);
      first.forEach((a, i) =>
        first.slice(0, i).forEach((b, k) => expect(apart(body[i]!, body[k]!)).toBeCloseTo(apart(a, b), 9)),
      );
    }
  });

  it('moves before the camera', () => {
    for (let frame = 1; frame < 12; frame++) expect(apart(bodyOfFrame(sweep, frame)[0]!, first[0]!)).toBeGreaterThan(1);
  });

  it('has its centres of rotation as far apart as the PD for distance', () => {
    const { R, L } = rotationCentresOfFrame(sweep, 3);
    expect(apart(R, L)).toBeCloseTo(sweep.head.pdFarMm, 9);
  });

  it('holds the card as far before the eyes as it says', () => {
    const flat = exampleSweep();
    const { card } = flat.head;
    const { eyesMm, yawRad, pitchRad, rollRad } = flat.stances[2]!;
    const { z } = axesOfSyntheticHead(yawRad, pitchRad, rollRad);
    const corners = cardCornersOfFrame(flat, 2);
    const middle = [0, 1, 2].map((i) => corners.reduce((sum, corner) => sum + corner[i]!, 0) / 4 - eyesMm[i]!);
    const beforeMm = z[0] * middle[0]! + z[1] * middle[1]! + z[2] * middle[2]!;
    // The middle of the front: a thickness, foreshortened by turn and lean, before that of the back.
    const steepness = Math.hypot(Math.tan(card.turnRad), Math.tan(card.leanRad), 1);
    expect(beforeMm).toBeCloseTo(card.backMm[2] + card.thicknessMm / steepness, 9);
  });
});

describe('the eyes of a synthetic sweep', () => {
  const sweep = exampleSweep({ lookAtMm: [7, -12, 20] });

  it('look at one point from every frame, each from its own centre of rotation', () => {
    for (let frame = 0; frame < 12; frame++) {
      const centres = rotationCentresOfFrame(sweep, frame);
      const pupils = pupilsOfFrame(sweep, frame);
      for (const side of ['R', 'L'] as const) {
        const toTarget = apart(centres[side], sweep.lookAtMm);
        expect(apart(centres[side], pupils[side])).toBeCloseTo(10.5, 9);
        // On the line of sight: the two parts add up to the whole.
        expect(apart(pupils[side], sweep.lookAtMm)).toBeCloseTo(toTarget - 10.5, 9);
      }
    }
  });

  it('look elsewhere where told so, and only there', () => {
    const astray = exampleSweep({ elsewhere: [{ frame: 4, lookAtMm: [150, 0, 0] }] });
    const straight = exampleSweep();
    expect(pupilsOfFrame(astray, 3)).toEqual(pupilsOfFrame(straight, 3));
    // 150 mm aside at about half a metre turns an eye by 0.3: three millimetres of its pupil.
    expect(apart(pupilsOfFrame(astray, 4).R, pupilsOfFrame(straight, 4).R)).toBeGreaterThan(2.5);
  });
});

describe('framesOfSweep', () => {
  it('shows pupils and card where they are', () => {
    const sweep = exampleSweep();
    const { camera } = sweep.head;
    framesOfSweep(sweep).forEach(({ iris, card }, frame) => {
      const pupils = pupilsOfFrame(sweep, frame);
      for (const side of ['R', 'L'] as const) {
        const seen = photograph(camera, pupils[side]);
        expect(iris[side].centre.xPx).toBeCloseTo(seen.xPx, 9);
        expect(iris[side].centre.yPx).toBeCloseTo(seen.yPx, 9);
        expect(iris[side].radiusPx).toBeCloseTo(((11.71 / 2) * 1024) / pupils[side][2], 9);
      }
      cardCornersOfFrame(sweep, frame).forEach((corner, i) => {
        expect(card.corners[i]!.xPx).toBeCloseTo(photograph(camera, corner).xPx, 9);
        expect(card.corners[i]!.yPx).toBeCloseTo(photograph(camera, corner).yPx, 9);
      });
    });
  });

  it('moves the card at a slip and leaves the eyes', () => {
    const slipped = exampleSweep({ slip: { fromFrame: 5, shiftMm: [0, 3, 0] } });
    const still = exampleSweep();
    expect(featuresOfFrame(slipped, 4)).toEqual(featuresOfFrame(still, 4));
    expect(featuresOfFrame(slipped, 5).iris).toEqual(featuresOfFrame(still, 5).iris);
    expect(apart(cardCornersOfFrame(slipped, 5)[0], cardCornersOfFrame(still, 5)[0])).toBeCloseTo(3, 9);
  });

  it('half shuts the lids in a blink', () => {
    const opening = (frame: number, blinkFrames: number[]): number => {
      const { lids } = featuresOfFrame(exampleSweep({ blinkFrames }), frame);
      return lids.R.lower.yPx - lids.R.upper.yPx;
    };
    expect(opening(2, [2]) / opening(2, [])).toBeCloseTo(0.3, 2);
    expect(opening(3, [2])).toBe(opening(3, []));
  });

  it('deals out noise of the stated size', () => {
    const random = seededRandom(9);
    const still = { yawRad: 0, pitchRad: 0, rollRad: 0, distanceMm: 0, asideMm: 0 };
    const stances = courseOf(100, still);
    const sweep = drawSweep(random, 1);
    const corners = framesOfSweep({ ...sweep, stances }).map(({ card }) => card.corners[0].xPx);
    const mean = corners.reduce((sum, value) => sum + value, 0) / 100;
    const spread = Math.sqrt(corners.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 99);
    // Four standard errors of a spread of 100.
    expect(Math.abs(spread / 0.2 - 1)).toBeLessThan(4 / Math.sqrt(2 * 100));
  });
});

describe('mirroredSweep', () => {
  it('shows the mirror image with the sides named anew', () => {
    const sweep = exampleSweep({ lookAtMm: [7, -12, 20] });
    const [frames, mirrored] = [framesOfSweep(sweep), framesOfSweep(mirroredSweep(sweep))];
    frames.forEach(({ widthPx, iris, card, midline }, i) => {
      const other = mirrored[i]!;
      expect(other.iris.L.centre.xPx).toBeCloseTo(widthPx - iris.R.centre.xPx, 9);
      expect(other.iris.R.centre.yPx).toBeCloseTo(iris.L.centre.yPx, 9);
      expect(other.card.corners[1].xPx).toBeCloseTo(widthPx - card.corners[0].xPx, 9);
      expect(other.card.corners[2].yPx).toBeCloseTo(card.corners[3].yPx, 9);
      expect(other.midline.point.xPx).toBeCloseTo(widthPx - midline.point.xPx, 9);
    });
  });
});
