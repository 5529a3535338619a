import { describe, expect, it } from 'vitest';
import { develop, paint, stroke, type Canvas } from '../../../tests/support/painting.js';
import { cardInPicture, paintCard, paintFace, printedCard } from '../../../tests/support/painted-wearer.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import {
  chainScene,
  landmarksOfScene,
  perfectSeeing,
  type SyntheticScene,
} from '../../../tests/support/synthetic-face.js';
import { distancePx, type ImagePoint } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import type { FourCorners } from './features.js';
import { followFrame, movedWithFace, windowOfInterest, type FollowedFrame, type FrameWindow } from './follow-frame.js';
import { clipRectangle, type RgbaImage } from './pixel-plane.js';

const CARD = printedCard([236, 236, 232], [40, 70, 150]);

function sceneWith(changes: Partial<SyntheticScene>): SyntheticScene {
  const base = chainScene();
  return {
    ...base,
    camera: { widthPx: 640, heightPx: 480, focalPx: 720, centre: { xPx: 320, yPx: 240 }, k1: 0 },
    eyesMm: [0, 30, 420],
    card: { ...base.card, source: 'edges', thicknessMm: 0.76, backMm: [2, 52, 10] },
    ...changes,
  };
}

/** A head that goes aside, nearer, and leans, from frame to frame. */
const WALK: readonly SyntheticScene[] = Array.from({ length: 6 }, (_, i) =>
  sceneWith({ eyesMm: [2 * i, 30 - i, 420 - 3 * i], rollRad: degreesToRadians(0.8 * i), yawRad: degreesToRadians(i) }),
);

function photographed(
  scene: SyntheticScene,
  cover: (canvas: Canvas) => void = () => undefined,
  hasCard = true,
): RgbaImage {
  const canvas = paintFace(scene);
  if (hasCard) paintCard(canvas, cardInPicture(scene), CARD);
  cover(canvas);
  return develop(canvas, seededRandom(17), 3);
}

function cut(image: RgbaImage, scene: SyntheticScene, card: FourCorners<ImagePoint> | null): FrameWindow {
  const rectangle = windowOfInterest(image, landmarksOf(scene), card);
  if (rectangle === null) throw new Error('nothing of the face lies in the picture');
  const { leftPx, topPx, widthPx, heightPx } = rectangle;
  const data = new Uint8ClampedArray(4 * widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    const from = 4 * ((topPx + row) * image.widthPx + leftPx);
    data.set(image.data.subarray(from, from + 4 * widthPx), 4 * row * widthPx);
  }
  return { image: { widthPx, heightPx, data }, leftPx, topPx };
}

function landmarksOf(scene: SyntheticScene) {
  return landmarksOfScene(scene, perfectSeeing(scene));
}

function step(
  scene: SyntheticScene,
  before: FollowedFrame | null,
  image: RgbaImage,
  start: FourCorners<ImagePoint> | null = null,
) {
  const landmarks = landmarksOf(scene);
  const card = before?.card ? movedWithFace(before.card, before.landmarks, landmarks) : start;
  return followFrame(cut(image, scene, card), landmarks, before, card);
}

function farthestPx(found: FourCorners<ImagePoint>, truth: FourCorners<ImagePoint>): number {
  return Math.max(...found.map((corner, i) => distancePx(corner, truth[i]!)));
}

describe('following a card', () => {
  it('finds its corners in every frame of a head that moves', () => {
    let before: FollowedFrame | null = null;
    for (const scene of WALK) {
      const truth = cardInPicture(scene);
      const seen = step(scene, before, photographed(scene), truth);
      if (seen.card === null) throw new Error('the card was lost');
      expect(farthestPx(seen.card.corners, truth)).toBeLessThan(0.5);
      expect(seen.next.cardMissed).toBe(0);
      before = seen.next;
    }
  });

  it('forgets a card that was taken away, after a while, and none before', () => {
    const scene = WALK[0]!;
    let before = step(scene, null, photographed(scene), cardInPicture(scene)).next;
    const bare = photographed(scene, undefined, false);
    const kept: boolean[] = [];
    for (let frame = 0; frame < 9; frame++) {
      const seen = step(scene, before, bare);
      expect(seen.card).toBeNull();
      before = seen.next;
      kept.push(before.card !== null);
    }
    expect(kept[0]).toBe(true);
    expect(kept.at(-1)).toBe(false);
  });

  it('takes no dark line beside an edge for the edge', () => {
    const scene = WALK[0]!;
    const truth = cardInPicture(scene);
    const [, , c, d] = truth;
    const before = step(scene, null, photographed(scene), truth).next;
    // such as a collar, or the shadow of the card: darker than anything along the edge itself
    const aside = (point: ImagePoint): ImagePoint => ({ xPx: point.xPx, yPx: point.yPx + 6 });
    const lined = photographed(scene, (canvas) => {
      paint(canvas, stroke(aside(d), aside(c), 1.5), [10, 10, 10]);
    });
    const seen = step(scene, before, lined);
    if (seen.card !== null) expect(farthestPx(seen.card.corners, truth)).toBeLessThan(0.5);
    // and it goes on as soon as the line is gone
    const after = step(scene, seen.next, photographed(scene));
    expect(after.card === null ? Infinity : farthestPx(after.card.corners, truth)).toBeLessThan(0.5);
  });

  it('looks at no more than the face and the card', () => {
    const scene = WALK[0]!;
    const card = cardInPicture(scene);
    const image = { widthPx: 640, heightPx: 480 };
    const rectangle = windowOfInterest(image, landmarksOf(scene), card);
    if (rectangle === null) throw new Error('no window');
    for (const { xPx, yPx } of card) {
      expect(xPx).toBeGreaterThan(rectangle.leftPx);
      expect(xPx).toBeLessThan(rectangle.leftPx + rectangle.widthPx);
      expect(yPx).toBeGreaterThan(rectangle.topPx);
      expect(yPx).toBeLessThan(rectangle.topPx + rectangle.heightPx);
    }
    expect(rectangle.widthPx * rectangle.heightPx).toBeLessThan(0.35 * 640 * 480);
    expect(clipRectangle(image, rectangle)).toEqual(rectangle);
  });
});

describe('what is told of a face', () => {
  it('says how the head stands, how far the eyes are open, and how the light falls', () => {
    const scene = sceneWith({ yawRad: degreesToRadians(6), rollRad: degreesToRadians(-4) });
    const { face } = step(scene, null, photographed(scene), cardInPicture(scene));
    // the synthetic model overdoes the yaw by a ninth, as the landmark model does
    expect(Math.abs(face.yawDeg - 6)).toBeLessThan(3);
    // counter-clockwise in the picture is positive in the scene: the left eye then stands higher
    expect(Math.abs(face.rollDeg - 4)).toBeLessThan(1);
    expect(face.opening.R).toBeGreaterThan(0.5);
    expect(Math.abs(face.lightRatio - 1)).toBeLessThan(0.1);
    expect(face.whiteLevel).toBeGreaterThan(150);
    expect(face.lids.R.upper.length).toBe(9);
  });

  it('gives no iris of a covered eye as seen, and the landmarks in its place', () => {
    const scene = WALK[0]!;
    const landmarks = landmarksOf(scene);
    const image = photographed(scene);
    // both eyes painted over: skin everywhere
    const blank = { ...image, data: image.data.map((_, i) => [190, 135, 112, 255][i % 4]!) };
    const { iris, face } = followFrame(cut(blank, scene, null), landmarks, null, null);
    expect(iris).toEqual({ R: null, L: null });
    expect(face.iris.R.source).toBe('landmarks');
    expect(face.iris.R.softness).toBeNull();
  });
});
