import { describe, expect, it } from 'vitest';
import { exampleSight } from '../../tests/support/example-sight.js';
import type { LiveSight } from '../core/camera/live-sight.js';
import { drawSight, viewInBox } from './draw-sight.js';

const COLOURS = { edge: 'dark', card: 'yellow', iris: 'blue', line: 'white' };

interface Drawn {
  readonly colour: string;
  readonly isDashed: boolean;
  readonly width: number;
  readonly from: readonly [x: number, y: number];
}

/** All that is stroked, in a canvas that draws nothing. */
function drawn(sight: LiveSight, scale = 1): readonly Drawn[] {
  const strokes: Drawn[] = [];
  let from: readonly [number, number] = [NaN, NaN];
  let isDashed = false;
  const context = {
    canvas: { width: 100, height: 100 },
    strokeStyle: '',
    lineWidth: 0,
    lineJoin: '',
    setTransform: () => undefined,
    clearRect: () => undefined,
    beginPath: () => undefined,
    lineTo: () => undefined,
    moveTo: (x: number, y: number) => {
      from = [x, y];
    },
    arc: (x: number, y: number) => {
      from = [x, y];
    },
    setLineDash: (dash: readonly number[]) => {
      isDashed = dash.length > 0;
    },
    stroke: () => {
      strokes.push({ colour: context.strokeStyle, isDashed, width: context.lineWidth, from });
    },
  };
  const view = { scale, leftPx: 10, topPx: 20, pixelRatio: 1 };
  drawSight(context as unknown as CanvasRenderingContext2D, sight, view, COLOURS);
  return strokes;
}

const lines = (sight: LiveSight, colour: string): readonly Drawn[] =>
  drawn(sight).filter((one) => one.colour === colour);

describe('drawSight', () => {
  it('draws every line over a wider dark one', () => {
    const all = drawn(exampleSight());
    const casings = all.filter(({ colour }) => colour === 'dark');
    expect(all.slice(0, casings.length)).toEqual(casings);
    expect(casings).toHaveLength(all.length / 2);
    expect(casings.every(({ isDashed }) => !isDashed)).toBe(true);
    expect(Math.min(...casings.map(({ width }) => width))).toBeGreaterThan(2 * (all.at(-1)?.width ?? Infinity));
  });

  it('places points of the frame on the canvas', () => {
    const { xPx, yPx } = exampleSight().face?.iris.R.centre ?? { xPx: NaN, yPx: NaN };
    const [right] = drawn(exampleSight(), 0.5).filter(({ colour }) => colour === 'blue');
    expect(right?.from).toEqual([10 + 0.5 * xPx, 20 + 0.5 * yPx]);
  });

  it('dashes what is only guessed: an iris of the landmarks, an edge of the card that is hardly seen, the midline', () => {
    expect(lines(exampleSight(), 'blue').map(({ isDashed }) => isDashed)).toEqual([false, false]);
    const { iris } = exampleSight().face ?? {};
    const guessed = exampleSight(
      iris === undefined ? {} : { face: { iris: { R: iris.R, L: { ...iris.L, source: 'landmarks' } } } },
    );
    expect(lines(guessed, 'blue').map(({ isDashed }) => isDashed)).toEqual([false, true]);
    const hidden = exampleSight({ card: { edgeSupport: [0.9, 0.3, 0.9, 0.9] } });
    expect(lines(hidden, 'yellow').map(({ isDashed }) => isDashed)).toEqual([false, true, false, false]);
    // four lids and the midline
    expect(lines(exampleSight(), 'white').map(({ isDashed }) => isDashed)).toEqual([false, false, false, false, true]);
  });

  it('draws nothing where nothing was found', () => {
    expect(drawn(exampleSight({ face: null, card: null }))).toEqual([]);
  });
});

describe('viewInBox', () => {
  it('fits a frame into a box, in the middle of what is left', () => {
    const frame = { widthPx: 1280, heightPx: 720 };
    expect(viewInBox(frame, { width: 640, height: 400 }, 2)).toEqual({
      scale: 0.5,
      leftPx: 0,
      topPx: 20,
      pixelRatio: 2,
    });
    expect(viewInBox(frame, { width: 800, height: 360 }, 1)).toEqual({
      scale: 0.5,
      leftPx: 80,
      topPx: 0,
      pixelRatio: 1,
    });
  });
});
