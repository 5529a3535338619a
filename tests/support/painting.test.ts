import { describe, expect, it } from 'vitest';
import {
  develop,
  disc,
  intersectionOf,
  paint,
  paintBackground,
  rectangleInPlane,
  stroke,
  type Canvas,
} from './painting.js';
import { seededRandom } from './seeded-random.js';

const BLACK = () => [0, 0, 0] as const;
const WHITE = [255, 255, 255] as const;

function level(canvas: Canvas, column: number, row: number): number {
  return canvas.levels[3 * (row * canvas.widthPx + column)]!;
}

function totalOf(canvas: Canvas): number {
  let sum = 0;
  for (let i = 0; i < canvas.levels.length; i += 3) sum += canvas.levels[i]! / 255;
  return sum;
}

describe('paint', () => {
  it('covers the area of a disc, and its centre of light is the disc’s', () => {
    const canvas = paintBackground(60, 60, BLACK);
    paint(canvas, disc({ xPx: 31.3, yPx: 28.8 }, 12.5), WHITE);
    // pi r^2; a blurred curved rim adds pi sigma^2.
    expect(Math.abs(totalOf(canvas) - Math.PI * (12.5 ** 2 + 0.36))).toBeLessThan(1);
    let moment = 0;
    for (let y = 0; y < 60; y++) for (let x = 0; x < 60; x++) moment += ((x + 0.5) * level(canvas, x, y)) / 255;
    expect(Math.abs(moment / totalOf(canvas) - 31.3)).toBeLessThan(0.005);
  });

  it('lays half its colour on pixels cut in half', () => {
    const canvas = paintBackground(20, 20, BLACK);
    paint(canvas, (x) => x - 10.5, WHITE);
    expect(level(canvas, 10, 3)).toBeCloseTo(127.5, 3);
    expect(level(canvas, 5, 3)).toBeCloseTo(255, 3);
    expect(level(canvas, 15, 3)).toBeCloseTo(0, 3);
  });
});

describe('shapes', () => {
  it('give distances from a stroke, an intersection, and a round rectangle in a scaled plane', () => {
    const line = stroke({ xPx: 0, yPx: 0 }, { xPx: 10, yPx: 0 }, 2);
    expect(line(5, 5)).toBeCloseTo(3, 12);
    expect(line(13, 4)).toBeCloseTo(3, 12);
    const both = intersectionOf(disc({ xPx: 0, yPx: 0 }, 5), disc({ xPx: 6, yPx: 0 }, 5));
    expect(both(3, 0)).toBeCloseTo(-2, 12);
    expect(both(-4, 0)).toBeCloseTo(5, 12);
    // Four pixels per millimetre: 85.6 x 53.98 mm around the origin.
    const card = rectangleInPlane((x, y) => ({ x: x / 4, y: y / 4 }), 42.8, 26.99, 3.18);
    expect(card(4 * 43.8, 0)).toBeCloseTo(4, 6);
    expect(card(0, -4 * 25.99)).toBeCloseTo(-4, 6);
    // The round corner: its middle lies (sqrt 2 - 1) r inside of the sharp one.
    expect(card(4 * 42.8, 4 * 26.99)).toBeCloseTo(4 * 3.18 * (Math.SQRT2 - 1), 1);
  });
});

describe('develop', () => {
  it('rounds to bytes and adds noise of the wanted size', () => {
    const canvas = paintBackground(100, 100, () => [120, 90, 60]);
    const { data } = develop(canvas, seededRandom(3), 4);
    const reds = Array.from({ length: 10_000 }, (_, i) => data[4 * i]!);
    const mean = reds.reduce((sum, red) => sum + red, 0) / reds.length;
    const sd = Math.sqrt(reds.reduce((sum, red) => sum + (red - mean) ** 2, 0) / reds.length);
    expect(Math.abs(mean - 120)).toBeLessThan(0.3);
    expect(Math.abs(sd - 4)).toBeLessThan(0.2);
    expect(data[3]).toBe(255);
  });
});
