import { describe, expect, it } from 'vitest';
import { develop, paint, stroke, type Canvas, type Rgb } from '../../../tests/support/painting.js';
import {
  cardInPicture,
  eyesOfScene,
  paintCard,
  paintFace,
  printedCard,
  type PaintedCard,
} from '../../../tests/support/painted-wearer.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { chainScene, type SyntheticScene } from '../../../tests/support/synthetic-face.js';
import { distancePx, midpointPx, type ImagePoint } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import { fitCardEdges } from './card-edges.js';
import { searchCard } from './card-search.js';
import type { FourCorners } from './features.js';
import { findCardByEdges, positionOfCard, shapeOfCard } from './find-card.js';

/** Where a card's edges are free, its corners lie this near to the truth. */
const FREE_PX = 0.3;
/** A finger over a part of an edge leaves its corners this near. */
const COVERED_PX = 1;
const NOISE = 3;

const WHITE_CARD = printedCard([236, 236, 232], [40, 70, 150]);
const DARK_CARD = printedCard([38, 44, 60], [190, 190, 185]);
const SKIN: Rgb = [190, 135, 112];

function sceneWith(changes: Partial<SyntheticScene>, card: Partial<SyntheticScene['card']>): SyntheticScene {
  const base = chainScene();
  return {
    ...base,
    camera: { widthPx: 640, heightPx: 480, focalPx: 720, centre: { xPx: 320, yPx: 240 }, k1: 0 },
    eyesMm: [0, 30, 420],
    ...changes,
    card: { ...base.card, source: 'edges', thicknessMm: 0.76, backMm: [2, 52, 10], ...card },
  };
}

const SQUARE = sceneWith({}, {});
const TILTED = sceneWith(
  { rollRad: degreesToRadians(6), yawRad: degreesToRadians(4) },
  { leanRad: degreesToRadians(13), rollRad: degreesToRadians(3), turnRad: degreesToRadians(-3) },
);
const LOW = sceneWith({ eyesMm: [0, -60, 420] }, { position: 'upper-lip', backMm: [0, -65, 20] });

/** A face with a card before it, and perhaps more on top. */
function picture(scene: SyntheticScene, card: PaintedCard, more: (canvas: Canvas) => void = () => undefined) {
  const canvas = paintFace(scene);
  paintCard(canvas, cardInPicture(scene), card);
  more(canvas);
  return develop(canvas, seededRandom(17), NOISE);
}

const TILTED_WHITE = picture(TILTED, WHITE_CARD);

function farthestPx(found: FourCorners<ImagePoint>, truth: FourCorners<ImagePoint>): number {
  return Math.max(...found.map((corner, i) => distancePx(corner, truth[i]!)));
}

describe('findCardByEdges', () => {
  it.each<readonly [string, SyntheticScene, PaintedCard]>([
    ['white, square to the camera', SQUARE, WHITE_CARD],
    ['dark, tilted and rolled', TILTED, DARK_CARD],
    ['dark, under the nose', LOW, DARK_CARD],
    ['plain, hardly lighter than skin but of another hue', TILTED, { colour: [150, 172, 205], prints: [] }],
  ])('finds the sharp corners of a card that is %s', (_, scene, card) => {
    const found = findCardByEdges(picture(scene, card), eyesOfScene(scene));
    if (!found.ok) throw new Error(JSON.stringify(found.failure));
    const { corners, support, edgeWidthPx } = found.value.fitted;
    expect(farthestPx(corners, cardInPicture(scene))).toBeLessThan(FREE_PX);
    expect(Math.min(...support)).toBeGreaterThan(0.8);
    expect(edgeWidthPx).toBeLessThan(4);
    for (const { covariance } of corners) {
      expect(Math.sqrt(covariance.xx)).toBeLessThan(0.5);
      expect(Math.sqrt(covariance.yy)).toBeLessThan(0.5);
    }
  });

  it('bears a finger over part of a short edge', () => {
    const truth = cardInPicture(TILTED);
    const edge = midpointPx(truth[1], midpointPx(truth[1], truth[2]));
    const finger = stroke({ xPx: edge.xPx + 80, yPx: edge.yPx + 25 }, { xPx: edge.xPx - 14, yPx: edge.yPx + 8 }, 17);
    const image = picture(TILTED, WHITE_CARD, (canvas) => paint(canvas, finger, SKIN));
    const found = findCardByEdges(image, eyesOfScene(TILTED));
    if (!found.ok) throw new Error(JSON.stringify(found.failure));
    expect(farthestPx(found.value.fitted.corners, truth)).toBeLessThan(COVERED_PX);
    // The covered edge is seen in part, the others nearly whole.
    expect(found.value.fitted.support[1]).toBeLessThan(0.8);
    expect(found.value.fitted.support[3]).toBeGreaterThan(0.8);
  });

  it('finds no card on a bare face', () => {
    const image = develop(paintFace(SQUARE), seededRandom(18), NOISE);
    expect(findCardByEdges(image, eyesOfScene(SQUARE))).toEqual({ ok: false, failure: { kind: 'no-card' } });
  });

  it('tells that there are two cards', () => {
    const scene = sceneWith({ eyesMm: [0, 0, 420] }, {});
    const below = sceneWith({ eyesMm: [0, 0, 420] }, { backMm: [0, -70, 12] });
    const image = picture(scene, WHITE_CARD, (canvas) => paintCard(canvas, cardInPicture(below), WHITE_CARD));
    expect(findCardByEdges(image, eyesOfScene(scene))).toEqual({ ok: false, failure: { kind: 'several-cards' } });
  });

  it('finds the same card in the mirrored picture', () => {
    const image = TILTED_WHITE;
    const mirrored = { ...image, data: new Uint8ClampedArray(image.data.length) };
    for (let y = 0; y < image.heightPx; y++) {
      for (let x = 0; x < image.widthPx; x++) {
        const from = 4 * (y * image.widthPx + x);
        mirrored.data.set(image.data.subarray(from, from + 4), 4 * (y * image.widthPx + image.widthPx - 1 - x));
      }
    }
    const eyes = eyesOfScene(TILTED);
    const flip = (point: ImagePoint): ImagePoint => ({ xPx: image.widthPx - point.xPx, yPx: point.yPx });
    const found = findCardByEdges(mirrored, {
      irisCentre: { R: flip(eyes.irisCentre.L), L: flip(eyes.irisCentre.R) },
      irisRadiusPx: { R: eyes.irisRadiusPx.L, L: eyes.irisRadiusPx.R },
      middle: flip(eyes.middle),
      spanPx: eyes.spanPx,
      rollRad: -eyes.rollRad,
    });
    if (!found.ok) throw new Error(JSON.stringify(found.failure));
    const [a, b, c, d] = cardInPicture(TILTED).map(flip);
    expect(farthestPx(found.value.fitted.corners, [b!, a!, d!, c!])).toBeLessThan(FREE_PX);
  });
});

describe('searchCard', () => {
  it('proposes a place near the card first', () => {
    const candidates = searchCard(TILTED_WHITE, eyesOfScene(TILTED), 3);
    expect(candidates.length).toBeLessThanOrEqual(3);
    const truth = cardInPicture(TILTED);
    const nearest = Math.min(...candidates.map(({ corners }) => farthestPx(corners, truth)));
    // A twelfth of the width: near enough for the lines of the sides to be sought.
    expect(nearest).toBeLessThan(distancePx(truth[0], truth[1]) / 12);
    const scores = candidates.map(({ score }) => score);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
  });
});

describe('fitCardEdges', () => {
  it('comes from a rough outline to the sharp corners', () => {
    const truth = cardInPicture(TILTED);
    const rough = truth.map(({ xPx, yPx }, i) => ({ xPx: xPx + (i % 2 === 0 ? 5 : -4), yPx: yPx + (i < 2 ? 4 : -5) }));
    const plain = picture(TILTED, { colour: [236, 236, 232], prints: [] });
    const fitted = fitCardEdges(plain, [rough[0]!, rough[1]!, rough[2]!, rough[3]!]);
    expect(fitted).not.toBeNull();
    expect(farthestPx(fitted!.corners, truth)).toBeLessThan(FREE_PX);
  });

  it('tells a blurred edge by its width', () => {
    const sharp = paintFace(SQUARE);
    paintCard(sharp, cardInPicture(SQUARE), WHITE_CARD);
    const soft = paintFace(SQUARE);
    paintCard(soft, cardInPicture(SQUARE), WHITE_CARD, 4);
    const widthOf = (canvas: Canvas): number =>
      fitCardEdges(develop(canvas, seededRandom(19), NOISE), cardInPicture(SQUARE))!.edgeWidthPx;
    expect(widthOf(soft)).toBeGreaterThan(2 * widthOf(sharp));
  });

  it('finds nothing on an even surface', () => {
    const even = { widthPx: 200, heightPx: 150, data: new Uint8ClampedArray(4 * 200 * 150).fill(128) };
    const corners: FourCorners<ImagePoint> = [
      { xPx: 40, yPx: 40 },
      { xPx: 160, yPx: 40 },
      { xPx: 160, yPx: 110 },
      { xPx: 40, yPx: 110 },
    ];
    expect(fitCardEdges(even, corners)).toBeNull();
  });
});

describe('shapeOfCard', () => {
  it.each([0, 12, 20])('reads that a card leans by %d degrees', (leanDeg) => {
    // A card before the eyes of an upright head: the angle between its normal and the camera's axis is its lean.
    const leaning = sceneWith({}, { leanRad: degreesToRadians(leanDeg), thicknessMm: 0 });
    // A camera of the field of view that is taken as typical, 1.15 rad.
    const camera = { ...leaning.camera, focalPx: 320 / Math.tan(1.15 / 2) };
    const shape = shapeOfCard(camera, cardInPicture({ ...leaning, camera }));
    expect(Math.abs(shape!.tiltDeg - leanDeg)).toBeLessThan(0.1);
    expect(shape!.residualPx).toBeLessThan(0.001);
  });

  it('knows a shape that no flat card has', () => {
    const [a, b, c, d] = cardInPicture(SQUARE);
    const bent = shapeOfCard(SQUARE.camera, [a, b, { xPx: c.xPx + 8, yPx: c.yPx + 8 }, d]);
    expect(bent!.residualPx).toBeGreaterThan(1);
  });

  it('is nothing for corners in line', () => {
    const inLine = [0, 1, 2, 3].map((i) => ({ xPx: 10 * i, yPx: 5 * i }));
    expect(shapeOfCard(SQUARE.camera, [inLine[0]!, inLine[1]!, inLine[2]!, inLine[3]!])).toBeNull();
  });
});

describe('positionOfCard', () => {
  it.each([
    ['forehead', SQUARE],
    ['upper-lip', LOW],
    ['chin', sceneWith({ eyesMm: [0, -60, 420] }, { position: 'chin', backMm: [0, -115, 12] })],
  ] as const)('names the %s', (position, scene) => {
    expect(positionOfCard(cardInPicture(scene), eyesOfScene(scene))).toBe(position);
  });

  it('names the same place on a head that leans', () => {
    const leaning = { ...LOW, rollRad: degreesToRadians(25) };
    expect(positionOfCard(cardInPicture(leaning), eyesOfScene(leaning))).toBe('upper-lip');
  });
});
