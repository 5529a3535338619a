import { describe, expect, it } from 'vitest';
import {
  develop,
  intersectionOf,
  paint,
  paintBackground,
  skinAt,
  type Rgb,
  type Shape,
} from '../../../tests/support/painting.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import type { ImagePoint } from '../geometry/vector.js';
import { findSkinEdge } from './head-outline.js';
import type { RgbaImage } from './pixel-plane.js';

const WIDTH_PX = 480;
const HEIGHT_PX = 320;
const MIDDLE: ImagePoint = { xPx: 243.2, yPx: 158.7 };
/** Pixels of one unit: the landmarks lie 140 units apart. */
const UNIT_PX = 2.2;
const WALL: Rgb = [96, 104, 112];
const HAIR: Rgb = [40, 32, 28];

interface PaintedHead {
  /** how far out the skin ends above the ears, and how far below the landmarks the ears begin, in units */
  readonly out: { readonly R: number; readonly L: number };
  readonly earTop: number;
  readonly rollRad: number;
  readonly brightness: number;
  /** hair beside the head above the ears, and perhaps over them */
  readonly hair: 'none' | 'above' | 'over';
  /** something laid over the picture at the end */
  readonly over: { readonly shape: Shape; readonly colour: Rgb } | null;
}

const HEAD: PaintedHead = {
  out: { R: 69.3, L: 70.6 },
  earTop: 3,
  rollRad: 0,
  brightness: 0.9,
  hair: 'none',
  over: null,
};

/** Coordinates along the head: to the picture's right and down, in units. */
function upright(rollRad: number, x: number, y: number): { across: number; down: number } {
  const [dx, dy] = [(x - MIDDLE.xPx) / UNIT_PX, (y - MIDDLE.yPx) / UNIT_PX];
  return {
    across: dx * Math.cos(rollRad) + dy * Math.sin(rollRad),
    down: dy * Math.cos(rollRad) - dx * Math.sin(rollRad),
  };
}

/** A head with straight sides, and ears that stand out below a height. */
function painted(change: Partial<PaintedHead> = {}): RgbaImage {
  const { out, earTop, rollRad, brightness, hair, over } = { ...HEAD, ...change };
  const between =
    (from: number, to: number, top: number, bottom: number): Shape =>
    (x, y) => {
      const { across, down } = upright(rollRad, x, y);
      return UNIT_PX * Math.max(from - across, across - to, top - down, down - bottom);
    };
  const canvas = paintBackground(WIDTH_PX, HEIGHT_PX, () => WALL);
  const hairEnd = hair === 'over' ? 60 : earTop;
  if (hair !== 'none') paint(canvas, between(-85, 85, -200, hairEnd), HAIR);
  const skin = skinAt(brightness);
  paint(canvas, between(-out.R, out.L, -200, 200), skin);
  if (hair !== 'over') {
    paint(canvas, intersectionOf(between(-out.R - 11, out.L + 11, earTop, earTop + 50)), skin);
  }
  if (over !== null) paint(canvas, over.shape, over.colour);
  return develop(canvas, seededRandom(71), 2.5);
}

function find(change: Partial<PaintedHead> = {}) {
  const rollRad = change.rollRad ?? 0;
  const at = (side: 1 | -1): ImagePoint => ({
    xPx: MIDDLE.xPx + side * 70 * UNIT_PX * Math.cos(rollRad),
    yPx: MIDDLE.yPx + side * 70 * UNIT_PX * Math.sin(rollRad),
  });
  return findSkinEdge(painted(change), { head: { R: at(-1), L: at(1) }, rollRad });
}

const outOf = (point: ImagePoint, rollRad = 0): number => Math.abs(upright(rollRad, point.xPx, point.yPx).across);
const downOf = (point: ImagePoint, rollRad = 0): number => upright(rollRad, point.xPx, point.yPx).down;

describe('findSkinEdge', () => {
  it.each([
    ['against a wall', {}],
    ['against hair', { hair: 'above' }],
    ['in a tilted picture', { rollRad: 0.12 }],
    ['of dark skin', { brightness: 0.3 }],
    ['of a narrow head with low ears', { out: { R: 65.2, L: 65.8 }, earTop: 14 }],
    ['of a wide head with high ears', { out: { R: 72.9, L: 71.4 }, earTop: -9 }],
  ] as const)('finds where the skin ends above the ears, %s', (_, change: Partial<PaintedHead>) => {
    const edge = find(change)!;
    const { out, earTop, rollRad } = { ...HEAD, ...change };
    for (const side of ['R', 'L'] as const) {
      expect(Math.abs(outOf(edge[side], rollRad) - out[side])).toBeLessThan(0.2);
      expect(Math.abs(downOf(edge[side], rollRad) - earTop)).toBeLessThan(2.5);
    }
    expect(edge.uncertaintyPx).toBeCloseTo(0.5 * UNIT_PX, 6);
  });

  it.each([
    ['hair that lies over the ears', { hair: 'over' }],
    ['a hand before one side', { over: { shape: (x: number) => x - 110, colour: [190, 142, 118] } }],
    ['sides that stand unlike far out', { out: { R: 65, L: 73 } }],
    ['a distance that no head has', { out: { R: 62.5, L: 62.5 } }],
    ['a wall in the colour of the skin', { over: { shape: () => -100, colour: [188, 140, 117] } }],
  ] as const)('finds nothing with %s', (_, change) => {
    expect(find(change as Partial<PaintedHead>)).toBeNull();
  });

  it('finds nothing where the picture cuts one side off', () => {
    const image = painted();
    const at = (side: 1 | -1): ImagePoint => ({ xPx: MIDDLE.xPx + side * 70 * UNIT_PX, yPx: MIDDLE.yPx });
    const seed = { head: { R: at(-1), L: at(1) }, rollRad: 0 };
    expect(findSkinEdge(image, seed)).not.toBeNull();
    // Up to one unit outside the edge on the right; rows are copied without what lies beyond.
    const keptPx = Math.round(MIDDLE.xPx + (HEAD.out.L + 1) * UNIT_PX);
    const data = new Uint8ClampedArray(keptPx * HEIGHT_PX * 4);
    for (let row = 0; row < HEIGHT_PX; row++) {
      data.set(image.data.subarray(row * WIDTH_PX * 4, (row * WIDTH_PX + keptPx) * 4), row * keptPx * 4);
    }
    expect(findSkinEdge({ widthPx: keptPx, heightPx: HEIGHT_PX, data }, seed)).toBeNull();
  });
});
