import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import { develop } from '../../../tests/support/painting.js';
import { cardInPicture, paintCard, paintFace, printedCard } from '../../../tests/support/painted-wearer.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import {
  chainScene,
  landmarksOfScene,
  perfectSeeing,
  type SyntheticScene,
} from '../../../tests/support/synthetic-face.js';
import { applyHomography, homographyFromFourPoints } from '../geometry/homography.js';
import { distancePx, midpointPx, type ImagePoint } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import { LANDMARK } from './face-landmarks.js';
import type { FourCorners, Landmark } from './features.js';
import { findFeatures, type FoundMarker, type RgbaImage } from './find-features.js';

const NO_MARKERS = () => [];

/** A wearer at 420 mm before a small picture; the card is some 150 px wide. */
const SCENE: SyntheticScene = {
  ...chainScene(),
  camera: { widthPx: 640, heightPx: 480, focalPx: 900, centre: { xPx: 320, yPx: 240 }, k1: 0 },
  eyesMm: [0, 35, 420],
  lidsMm: { R: { upper: 3.6, lower: 4.4 }, L: { upper: 3.6, lower: 4.4 } },
  card: { ...chainScene().card, source: 'edges', thicknessMm: 0.76, backMm: [2, 52, 10], leanRad: 0.12 },
};

const LANDMARKS = landmarksOfScene(SCENE, { ...perfectSeeing(SCENE), landmarkPitchRad: 0 });

function photo(brightness: number, blurPx?: number): RgbaImage {
  const canvas = paintFace(SCENE, brightness);
  const colour = 236 * brightness;
  const card = printedCard([colour, colour, colour], [40 * brightness, 70 * brightness, 150 * brightness]);
  paintCard(canvas, cardInPicture(SCENE), card, blurPx);
  return develop(canvas, seededRandom(61), 2);
}

const GOOD = photo(1);

function failureOf(image: RgbaImage, landmarks: readonly Landmark[], markers: readonly FoundMarker[] = []) {
  const outcome = findFeatures(image, landmarks, () => markers);
  return outcome.ok ? null : outcome.failure.failure;
}

/** Landmarks of the same face with one landmark moved. */
function moved(changes: Readonly<Record<number, ImagePoint>>): Landmark[] {
  return LANDMARKS.map((landmark, i) => ({ ...landmark, ...changes[i] }));
}

/** Corners of the four markers on the scene's card, 16 mm wide and 4 mm from its edges, as a finder gives them. */
function markersOnCard(scene: SyntheticScene = SCENE): FoundMarker[] {
  const [w, h] = [42.8, 26.99];
  const found = homographyFromFourPoints(
    [
      { x: -w, y: -h },
      { x: w, y: -h },
      { x: w, y: h },
      { x: -w, y: h },
    ],
    cardInPicture(scene).map(({ xPx, yPx }) => ({ x: xPx, y: yPx })),
  );
  if (!found.ok) throw new Error(found.failure.kind);
  const at = (x: number, y: number): ImagePoint => {
    const seen = applyHomography(found.value, { x, y });
    return { xPx: seen.x, yPx: seen.y };
  };
  return [
    [-w + 4, -h + 4],
    [w - 20, -h + 4],
    [w - 20, h - 20],
    [-w + 4, h - 20],
  ].map(([x, y], id) => ({
    id,
    cornersPx: [at(x!, y!), at(x! + 16, y!), at(x! + 16, y! + 16), at(x!, y! + 16)],
  }));
}

function farthestPx(found: FourCorners<ImagePoint>, truth: FourCorners<ImagePoint>): number {
  return Math.max(...found.map((corner, i) => distancePx(corner, truth[i]!)));
}

describe('findFeatures', () => {
  it('finds card, irises, lids, midline and outline of a painted wearer', () => {
    const outcome = findFeatures(GOOD, LANDMARKS, NO_MARKERS);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
    const { card, iris, lids, midline, outline, landmarks, widthPx, heightPx } = outcome.value;
    expect([widthPx, heightPx, landmarks]).toEqual([640, 480, LANDMARKS]);
    expect(card).toMatchObject({ source: 'edges', position: 'forehead' });
    expect(farthestPx(card.corners, cardInPicture(SCENE))).toBeLessThan(0.4);
    // 900 px over 420 mm: irises 25 px wide, lids 7.7 px above and 9.4 px below.
    const scalePx = 900 / 420;
    for (const side of ['R', 'L'] as const) {
      const truth = LANDMARKS[LANDMARK.irisCentre[side]]!;
      expect(Math.abs(iris[side].centre.xPx - truth.xPx)).toBeLessThan(0.2);
      expect(Math.abs(iris[side].radiusPx / ((scalePx * 11.71) / 2) - 1)).toBeLessThan(0.08);
      expect(Math.abs(lids[side].upper.yPx - truth.yPx + 3.6 * scalePx)).toBeLessThan(1);
      expect(Math.abs(lids[side].lower.yPx - truth.yPx - 4.4 * scalePx)).toBeLessThan(1);
    }
    expect(midline.source).toBe('landmarks');
    expect(distancePx(midline.point, midpointPx(iris.R.centre, iris.L.centre))).toBeLessThan(0.5);
    // A card on the forehead leaves the whole nose free; at 900 px over some 420 mm.
    expect(outcome.value.bridge.map(({ belowCrestMm }) => belowCrestMm)).toEqual([10, 15]);
    for (const { R, L } of outcome.value.bridge) {
      expect(L.xPx - R.xPx).toBeGreaterThan(18 * scalePx);
      expect(L.xPx - R.xPx).toBeLessThan(28 * scalePx);
    }
    // The mean face's sides of the head lie evenly beside its middle.
    expect((outline.head.R.xPx + outline.head.L.xPx) / 2).toBeCloseTo(320, 3);
    const behindMm = 31 - canonicalFace.verticesMm[127]![2]!;
    const acrossMm = 2 * canonicalFace.verticesMm[356]![0]!;
    expect(outline.head.L.xPx - outline.head.R.xPx).toBeCloseTo((900 * acrossMm) / (420 + behindMm), 3);
  });

  it('takes the corners from markers, also of a card held upside down', () => {
    const markers = markersOnCard();
    for (const found of [markers, markers.slice(0, 2)]) {
      const outcome = findFeatures(GOOD, LANDMARKS, () => found);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
      expect(outcome.value.card.source).toBe('markers');
      expect(farthestPx(outcome.value.card.corners, cardInPicture(SCENE))).toBeLessThan(0.01);
    }
    const turned = markers.map(({ id, cornersPx: [a, b, c, d] }) => ({
      id: (id + 2) % 4,
      cornersPx: [c, d, a, b] as const,
    }));
    const outcome = findFeatures(GOOD, LANDMARKS, () => turned);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
    expect(farthestPx(outcome.value.card.corners, cardInPicture(SCENE))).toBeLessThan(0.01);
  });

  it('doubts corners from two markers more than from four', () => {
    const varianceOf = (markers: readonly FoundMarker[]): number => {
      const outcome = findFeatures(GOOD, LANDMARKS, () => markers);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
      return outcome.value.card.corners[0].covariance.xx;
    };
    expect(varianceOf(markersOnCard().slice(0, 2))).toBeGreaterThan(1.9 * varianceOf(markersOnCard()));
  });

  it('refuses a marker that is there twice', () => {
    const [first, second] = markersOnCard();
    expect(failureOf(GOOD, LANDMARKS, [first!, { ...second!, id: 0 }])).toEqual({ kind: 'several-cards' });
  });

  it('refuses markers that lie on a card tilted too far', () => {
    // On the axis of a camera of the field of view that is taken as typical, 1.15 rad.
    const tilted: SyntheticScene = {
      ...SCENE,
      camera: { ...SCENE.camera, focalPx: 320 / Math.tan(1.15 / 2) },
      eyesMm: [0, 52, 300],
      card: { ...SCENE.card, backMm: [0, 52, 10], leanRad: degreesToRadians(35) },
    };
    const failure = failureOf(GOOD, LANDMARKS, markersOnCard(tilted));
    expect(failure).toMatchObject({ kind: 'card-tilted', limitDeg: 25 });
    // The nearer of two poses counts: never more than the truth.
    expect(failure?.kind === 'card-tilted' && failure.tiltDeg).toBeLessThan(36);
  });

  it('refuses a picture that is too dark', () => {
    expect(failureOf(photo(0.12), LANDMARKS)).toMatchObject({ kind: 'too-dark', limitLevel: 38 });
  });

  it('refuses a card out of focus', () => {
    expect(failureOf(photo(1, 4.5), LANDMARKS)?.kind).toBe('blurred');
  });

  it.each([
    ['R', ['R']],
    ['both', ['R', 'L']],
  ] as const)('refuses closed eyes, %s', (side, closed) => {
    const changes = Object.fromEntries(
      closed.map((eye) => [LANDMARK.upperLid[eye], LANDMARKS[LANDMARK.lowerLid[eye]]!]),
    );
    expect(failureOf(GOOD, moved(changes))).toEqual({ kind: 'eyes-closed', side });
  });

  it('refuses a face with under 0.8 pixels per millimetre', () => {
    const far = LANDMARKS.map(({ xPx, yPx, depthPx }) => ({
      xPx: 320 + 0.3 * (xPx - 320),
      yPx: 165 + 0.3 * (yPx - 165),
      depthPx,
    }));
    const failure = failureOf(GOOD, far);
    // Mean of both irises: 0.3 times 900 / 420.
    expect(failure?.kind).toBe('too-far');
    expect(failure?.kind === 'too-far' && failure.pixelsPerMm).toBeCloseTo((0.3 * 900) / 420, 2);
  });

  it('refuses eyes without an iris edge', () => {
    const skin = develop(paintFace({ ...SCENE, irisMm: 0.1 }), seededRandom(62), 2);
    expect(failureOf(skin, LANDMARKS)).toEqual({ kind: 'iris-not-found', side: 'both' });
  });

  it('gives nothing where more than the card is wrong', () => {
    for (const image of [photo(0.12), photo(1, 4.5)]) {
      expect(findFeatures(image, LANDMARKS, NO_MARKERS)).toMatchObject({ ok: false, failure: { partial: null } });
    }
  });

  it('lays a guessed card of the right size and proportions over the eyes', () => {
    const bare = develop(paintFace(SCENE), seededRandom(63), 2);
    const outcome = findFeatures(bare, LANDMARKS, NO_MARKERS);
    if (outcome.ok) throw new Error('There is no card to be found.');
    expect(outcome.failure.failure).toEqual({ kind: 'no-card' });
    if (outcome.failure.partial === null) throw new Error('Only the card is missing.');
    const { card, iris } = outcome.failure.partial;
    expect(card).toMatchObject({ source: 'hand', position: 'forehead', edgeSupport: [0, 0, 0, 0] });
    const [a, b, , d] = card.corners;
    expect(distancePx(a, b) / distancePx(a, d)).toBeCloseTo(85.6 / 53.98, 1);
    // 85.6 mm beside a PD of about 62 mm.
    const truth = cardInPicture(SCENE);
    expect(Math.abs(distancePx(a, b) / distancePx(truth[0], truth[1]) - 1)).toBeLessThan(0.1);
    expect(d.yPx).toBeLessThan(iris.R.centre.yPx);
  });
});
