import type { LiveEstimate, LiveSight } from '../core/camera/live-sight.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import type { LiveFrame } from '../session/live.js';
import type { SightColours } from './draw-sight.js';
import { drawSight, viewInBox } from './draw-sight.js';
import { words } from './language.js';
import { formatNumber } from './numbers.js';

/** Takes an element of the screen, or null when it goes. */
type Place<Kind extends Element> = (element: Kind | null) => void;

/** The parts of the screen that change with every frame, and past React: drawing them costs a millisecond or two. */
export interface LiveScreen {
  /** what picture and marks lie in: it takes the proportions of the frames, also of a phone that is turned */
  readonly stage: Place<HTMLElement>;
  readonly picture: Place<HTMLCanvasElement>;
  readonly marks: Place<HTMLCanvasElement>;
  /** grows from 0 to 1 while everything is right and still */
  readonly stillness: Place<HTMLElement>;
  readonly distance: Place<HTMLElement>;
  readonly sureness: Place<HTMLElement>;
  readonly pd: Place<HTMLElement>;
  readonly frames: Place<HTMLElement>;
  /** Shows a frame, and what was found in this very frame over it; its bitmap is handed to the screen. */
  paint(frame: LiveFrame, stillShare: number): void;
}

/** Numbers that change more often cannot be read. Chosen. */
const READOUT_MS = 500;

/** A card that is lost for a moment takes the numbers away only after so long. Chosen. */
const LASTING_READOUT_MS = 1_500;

/** Drawing on more pixels costs more than it shows. */
const LARGEST_PIXEL_RATIO = 2;

export function createLiveScreen(): LiveScreen {
  const at: {
    stage: HTMLElement | null;
    picture: ImageBitmapRenderingContext | null;
    marks: { readonly context: CanvasRenderingContext2D; readonly colours: SightColours } | null;
    stillness: HTMLElement | null;
    distance: HTMLElement | null;
    sureness: HTMLElement | null;
    pd: HTMLElement | null;
    frames: HTMLElement | null;
  } = {
    stage: null,
    picture: null,
    marks: null,
    stillness: null,
    distance: null,
    sureness: null,
    pd: null,
    frames: null,
  };
  let ratio = 0;
  let writtenMs = -Infinity;
  let estimatedMs = -Infinity;

  const write = (estimate: LiveEstimate | null, atMs: number): void => {
    if (estimate !== null) estimatedMs = atMs;
    if (atMs - writtenMs < READOUT_MS || (estimate === null && atMs - estimatedMs < LASTING_READOUT_MS)) return;
    writtenMs = atMs;
    const texts = readoutOf(estimate);
    for (const name of ['distance', 'sureness', 'pd', 'frames'] as const) {
      const element = at[name];
      if (element !== null && element.textContent !== texts[name]) element.textContent = texts[name];
    }
  };

  return {
    stage: (element) => {
      at.stage = element;
      ratio = 0;
    },
    picture: (element) => {
      at.picture = element?.getContext('bitmaprenderer') ?? null;
    },
    marks: (element) => {
      const context = element?.getContext('2d') ?? null;
      at.marks = element === null || context === null ? null : { context, colours: coloursOf(element) };
    },
    stillness: (element) => {
      at.stillness = element;
    },
    distance: (element) => {
      at.distance = element;
    },
    sureness: (element) => {
      at.sureness = element;
    },
    pd: (element) => {
      at.pd = element;
    },
    frames: (element) => {
      at.frames = element;
    },
    paint: ({ bitmap, sight, takenMs }, stillShare) => {
      const { widthPx, heightPx } = sight;
      if (at.stage !== null && ratio !== widthPx / heightPx) {
        ratio = widthPx / heightPx;
        at.stage.style.setProperty('--ratio', String(ratio));
      }
      // Both canvases change in one task, so they come to the screen together.
      if (at.picture === null) bitmap.close();
      else at.picture.transferFromImageBitmap(bitmap);
      if (at.marks !== null) drawMarks(at.marks.context, sight, at.marks.colours);
      if (at.stillness !== null) at.stillness.style.transform = `scaleX(${stillShare})`;
      write(sight.estimate, takenMs);
    },
  };
}

function drawMarks(context: CanvasRenderingContext2D, sight: LiveSight, colours: SightColours): void {
  const { canvas } = context;
  const pixelRatio = Math.min(LARGEST_PIXEL_RATIO, devicePixelRatio);
  const [width, height] = [canvas.clientWidth, canvas.clientHeight].map((length) => Math.round(pixelRatio * length));
  if (width === undefined || height === undefined || width === 0 || height === 0) return;
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  drawSight(context, sight, viewInBox(sight, canvas, pixelRatio), colours);
}

function readoutOf(estimate: LiveEstimate | null): Readonly<Record<'distance' | 'sureness' | 'pd' | 'frames', string>> {
  const said = words.live;
  if (estimate === null) {
    return { distance: said.nothing, sureness: said.nothing, pd: said.nothing, frames: said.nothing };
  }
  const { distanceMm, frameCount, pdFarMm, standardUncertaintyMm } = estimate;
  return {
    distance: said.centimetres(formatNumber(distanceMm / 10, 0)),
    // As on the sheet: half the width of the 95 % interval.
    sureness: said.plusMinus(formatNumber(NORMAL_95 * standardUncertaintyMm, 1)),
    pd: said.millimetres(formatNumber(pdFarMm, 1)),
    frames: formatNumber(frameCount, 0),
  };
}

function coloursOf(element: HTMLElement): SightColours {
  const style = getComputedStyle(element);
  const colour = (name: string): string => style.getPropertyValue(name);
  return {
    edge: colour('--over-edge'),
    card: colour('--over-picture'),
    iris: colour('--over-iris'),
    line: colour('--over-line'),
  };
}
