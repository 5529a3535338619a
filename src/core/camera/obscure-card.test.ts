import { describe, expect, it } from 'vitest';
import { blankImage, insideOf, repainted } from '../../../tests/support/painted-picture.js';
import type { ImagePoint } from '../geometry/vector.js';
import type { FourCorners } from './features.js';
import { cropImage, obscureCard } from './obscure-card.js';
import type { RgbaImage } from './pixel-plane.js';

// Expected values follow from how the picture is painted here: a light card with dark letters on darker skin.

const SKIN = 120;
const LIGHT = 230;
const DARK = 20;

const point = (xPx: number, yPx: number): ImagePoint => ({ xPx, yPx });

/** 4 px a millimetre, level, its edges between pixels. */
const LEVEL: FourCorners<ImagePoint> = [point(30, 40), point(372, 40), point(372, 256), point(30, 256)];
/** turned and in perspective, about 3 px a millimetre */
const TILTED: FourCorners<ImagePoint> = [point(60, 30), point(330, 70), point(310, 240), point(45, 215)];

/** Bars of about 1.5 mm, as the strokes of large letters, all over the card and up to its edges. */
function picture(corners: FourCorners<ImagePoint>): RgbaImage {
  const isCard = insideOf(corners, 0);
  return repainted(blankImage(400, 300, SKIN), (at) => {
    if (!isCard(at)) return null;
    const isStroke = Math.floor(at.xPx / 6) % 2 === 0 && Math.floor(at.yPx / 10) % 3 > 0;
    const level = isStroke ? DARK : LIGHT;
    return [level, level - 10, level - 15, 255];
  });
}

function levelAt(image: RgbaImage, column: number, row: number): number {
  return image.data[(row * image.widthPx + column) * 4]!;
}

function obscured(image: RgbaImage, corners: FourCorners<ImagePoint>): RgbaImage {
  const result = obscureCard(image, corners);
  if (!result.ok) throw new Error(result.failure.kind);
  return result.value;
}

describe.each([
  { name: 'level', corners: LEVEL, pxPerMm: 4 },
  { name: 'tilted', corners: TILTED, pxPerMm: 3 },
])('a $name card', ({ corners, pxPerMm }) => {
  const before = picture(corners);
  const after = obscured(before, corners);

  it('has nothing left that could be read: no letter, and no part of one', () => {
    // The rim that stays is half a millimetre; the corners are round by 3.18 mm, so the sharp ones lie outside.
    const isFace = insideOf(corners, -0.5 * pxPerMm - 1);
    const isNearCorner = ({ xPx, yPx }: ImagePoint): boolean =>
      corners.some((corner) => Math.hypot(corner.xPx - xPx, corner.yPx - yPx) < 3.2 * 1.5 * pxPerMm);
    const levels = new Set<number>();
    let pixels = 0;
    for (let row = 0; row < after.heightPx; row++) {
      for (let column = 0; column < after.widthPx; column++) {
        const at = point(column + 0.5, row + 0.5);
        if (!isFace(at) || isNearCorner(at)) continue;
        pixels += 1;
        levels.add(levelAt(after, column, row));
      }
    }
    expect(pixels).toBeGreaterThan(30_000 * (pxPerMm / 4) ** 2);
    expect([...levels]).toHaveLength(1);
    // the mean of strokes (a third of the face) and what lies between them
    expect(Math.abs([...levels][0]! - (LIGHT - (LIGHT - DARK) / 3))).toBeLessThan(8);
  });

  it('keeps its edges, and all around it', () => {
    const isAround = insideOf(corners, -1);
    let changed = 0;
    for (let row = 0; row < after.heightPx; row++) {
      for (let column = 0; column < after.widthPx; column++) {
        if (isAround(point(column + 0.5, row + 0.5))) continue;
        if (levelAt(after, column, row) !== levelAt(before, column, row)) changed += 1;
      }
    }
    expect(changed).toBe(0);
  });
});

it('leaves the picture that it was given as it was', () => {
  const before = picture(LEVEL);
  const copy = new Uint8ClampedArray(before.data);
  obscured(before, LEVEL);
  expect(before.data.every((level, at) => level === copy[at])).toBe(true);
});

it('leaves the skin beyond the round corners', () => {
  const corners = LEVEL;
  const skin = repainted(picture(corners), ({ xPx, yPx }) => (xPx < 32 && yPx < 42 ? [200, 0, 0, 255] : null));
  // 1 px from the sharp corner is outside of an arc of 3.18 mm, which is 12.7 px here
  expect(levelAt(obscured(skin, corners), 31, 41)).toBe(200);
});

it('covers a card that is so small that the rim is wide in comparison', () => {
  const corners: FourCorners<ImagePoint> = [point(100, 100), point(134, 100), point(134, 122), point(100, 122)];
  const after = obscured(picture(corners), corners);
  const inner = [104, 110, 120, 130].flatMap((column) => [103, 110, 118].map((row) => levelAt(after, column, row)));
  expect(new Set(inner).size).toBe(1);
});

it('covers what of a card lies in the picture', () => {
  const corners: FourCorners<ImagePoint> = [point(-60, -40), point(282, -40), point(282, 176), point(-60, 176)];
  const after = obscured(picture(corners), corners);
  expect(levelAt(after, 0, 0)).toBe(levelAt(after, 200, 100));
});

it('refuses corners that are those of no card', () => {
  const [a, b, c, d] = LEVEL;
  const crossed = obscureCard(picture(LEVEL), [a, c, b, d]);
  expect(crossed).toEqual({ ok: false, failure: { kind: 'no-card-outline' } });
  const inLine = obscureCard(picture(LEVEL), [point(0, 0), point(10, 0), point(20, 0), point(30, 0)]);
  expect(inLine.ok).toBe(false);
});

it('crops a rectangle', () => {
  const image = picture(LEVEL);
  const part = cropImage(image, { leftPx: 20, topPx: 35, widthPx: 50, heightPx: 30 });
  expect(part).toMatchObject({ widthPx: 50, heightPx: 30 });
  expect(part.data).toHaveLength(50 * 30 * 4);
  expect(levelAt(part, 0, 0)).toBe(SKIN);
  expect(levelAt(part, 25, 12)).toBe(levelAt(image, 45, 47));
});
