import type { ImagePoint } from '../geometry/vector.js';
import { CHANNEL_WEIGHTS, CHANNELS, type RgbaImage } from './pixel-plane.js';

/** Luma and the two colour differences of `CHANNEL_WEIGHTS`, levels of 255. */
export type Colour = readonly [luma: number, blueDifference: number, redDifference: number];

/** A place on an eye in radii of its iris: along the line of the eyes to picture right, and below its centre. */
export interface EyePlace {
  readonly across: number;
  readonly below: number;
}

/** The picture in the axes of an eye: origin in the iris centre, the unit is the radius of the iris. */
export interface EyeAxes {
  readonly centre: ImagePoint;
  readonly radiusPx: number;
  /** direction from the wearer's right to the left eye in the picture */
  readonly rollRad: number;
}

/** A point of the picture in the axes of an eye. */
export function eyePlaceOf({ centre, radiusPx, rollRad }: EyeAxes, point: ImagePoint): EyePlace {
  const dx = (point.xPx - centre.xPx) / radiusPx;
  const dy = (point.yPx - centre.yPx) / radiusPx;
  const cosine = Math.cos(rollRad);
  const sine = Math.sin(rollRad);
  return { across: dx * cosine + dy * sine, below: -dx * sine + dy * cosine };
}

/** Writes the colour at a place of an eye into an array, as three numbers from `at` on. */
export type ColourSampler = (across: number, below: number, into: Float32Array, at: number) => void;

/** Samples a picture in the axes of an eye, bilinearly; beyond the rim the nearest pixel counts. */
export function colourSampler(image: RgbaImage, { centre, radiusPx, rollRad }: EyeAxes): ColourSampler {
  const { widthPx, heightPx, data } = image;
  const cosine = radiusPx * Math.cos(rollRad);
  const sine = radiusPx * Math.sin(rollRad);
  const right = widthPx > 1 ? 4 : 0;
  const down = heightPx > 1 ? 4 * widthPx : 0;
  const weights = CHANNELS.map((channel) => CHANNEL_WEIGHTS[channel]);
  return (across, below, into, at) => {
    const x = Math.min(Math.max(centre.xPx + across * cosine - below * sine - 0.5, 0), widthPx - 1);
    const y = Math.min(Math.max(centre.yPx + across * sine + below * cosine - 0.5, 0), heightPx - 1);
    const column = Math.min(Math.floor(x), Math.max(widthPx - 2, 0));
    const row = Math.min(Math.floor(y), Math.max(heightPx - 2, 0));
    const fx = x - column;
    const fy = y - row;
    const i = 4 * (row * widthPx + column);
    const level = (k: number): number => {
      const top = data[i + k]! + fx * (data[i + right + k]! - data[i + k]!);
      const bottom = data[i + down + k]! + fx * (data[i + down + right + k]! - data[i + down + k]!);
      return top + fy * (bottom - top);
    };
    const red = level(0);
    const green = level(1);
    const blue = level(2);
    for (let k = 0; k < 3; k++) {
      const [ofRed, ofGreen, ofBlue] = weights[k]!;
      into[at + k] = ofRed * red + ofGreen * green + ofBlue * blue;
    }
  };
}

/**
 * The surroundings of a lid margin, laid straight: column `j` stands at `across[j]`, its cell `k` at `offsetOf(k)` below where the landmarks
 * draw the margin.
 */
export interface LidStrip {
  readonly across: readonly number[];
  /** where the landmarks draw the margin in each column */
  readonly drawn: readonly number[];
  /** cells of a column, counted downwards */
  readonly cells: number;
  /** three numbers a cell, column by column */
  readonly colours: Float32Array;
  /** distance of each cell from the iris centre, radii */
  readonly distance: Float32Array;
}

/** Height of a cell, radii of the iris. */
export const CELL = 0.035;
/** How far a strip reaches above and below the drawn margin, radii. */
export const STRIP_REACH = 1.3;
const CELLS = Math.round((2 * STRIP_REACH) / CELL);

/** Where the middle of a cell lies below the drawn margin, radii. */
export function offsetOf(cell: number): number {
  return (cell + 0.5) * CELL - STRIP_REACH;
}

/** The cell boundary nearest to an offset from the drawn margin: the number of cells above it. */
export function cellsAbove(offset: number): number {
  return Math.round((offset + STRIP_REACH) / CELL);
}

/** Cuts the strip about a drawn margin, without highlights and lashes. */
export function cutLidStrip(
  sample: ColourSampler,
  across: readonly number[],
  drawnAt: (across: number) => number,
): LidStrip {
  const drawn = across.map(drawnAt);
  const colours = new Float32Array(3 * CELLS * across.length);
  const distance = new Float32Array(CELLS * across.length);
  across.forEach((a, j) => {
    for (let k = 0; k < CELLS; k++) {
      const below = drawn[j]! + offsetOf(k);
      distance[j * CELLS + k] = Math.hypot(a, below);
      sample(a, below, colours, 3 * (j * CELLS + k));
    }
  });
  const strip: LidStrip = { across, drawn, cells: CELLS, colours, distance };
  darkenHighlights(strip);
  thinOutLashes(strip);
  return strip;
}

/** Highlights are narrower than this many columns to either side; a lid is broader. */
const HIGHLIGHT_COLUMNS = 3;
/** Highlights lie on the iris, within this distance from its centre, radii. */
const HIGHLIGHT_DISTANCE = 0.97;

/** Puts the colour beside them in the place of what is bright and narrow on the iris: a morphological opening of the luma, row by row. */
function darkenHighlights({ across, cells, colours, distance }: LidStrip): void {
  const count = across.length;
  const lumaAt = (j: number, k: number): number => colours[3 * (j * cells + k)]!;
  const darkest = new Int32Array(count);
  const row = new Float32Array(3 * count);
  for (let k = 0; k < cells; k++) {
    for (let j = 0; j < count; j++) {
      let from = j;
      for (let i = Math.max(0, j - HIGHLIGHT_COLUMNS); i <= Math.min(count - 1, j + HIGHLIGHT_COLUMNS); i++) {
        if (lumaAt(i, k) < lumaAt(from, k)) from = i;
      }
      darkest[j] = from;
    }
    for (let j = 0; j < count; j++) {
      let from = darkest[j]!;
      for (let i = Math.max(0, j - HIGHLIGHT_COLUMNS); i <= Math.min(count - 1, j + HIGHLIGHT_COLUMNS); i++) {
        if (lumaAt(darkest[i]!, k) > lumaAt(from, k)) from = darkest[i]!;
      }
      const onIris = distance[j * cells + k]! < HIGHLIGHT_DISTANCE;
      const bright = lumaAt(j, k) - lumaAt(from, k) > HIGHLIGHT_LUMA;
      const source = 3 * ((onIris && bright ? from : j) * cells + k);
      for (let c = 0; c < 3; c++) row[3 * j + c] = colours[source + c]!;
    }
    for (let j = 0; j < count; j++) {
      for (let c = 0; c < 3; c++) colours[3 * (j * cells + k) + c] = row[3 * j + c]!;
    }
  }
}

/** So much brighter than its surroundings is a highlight, levels. */
const HIGHLIGHT_LUMA = 25;
/** Half the width of the median along the margin, columns. */
const MEDIAN_COLUMNS = 2;

/** A running median along the margin: lashes stand across it and are thin. */
function thinOutLashes({ across, cells, colours }: LidStrip): void {
  const count = across.length;
  const row = new Float32Array(count);
  const near = new Float64Array(2 * MEDIAN_COLUMNS + 1);
  for (let k = 0; k < cells; k++) {
    for (let c = 0; c < 3; c++) {
      for (let j = 0; j < count; j++) row[j] = colours[3 * (j * cells + k) + c]!;
      for (let j = 0; j < count; j++) {
        const reach = Math.min(MEDIAN_COLUMNS, j, count - 1 - j);
        for (let i = -reach; i <= reach; i++) insertSorted(near, i + reach, row[j + i]!);
        colours[3 * (j * cells + k) + c] = near[reach]!;
      }
    }
  }
}

/** Inserts a value into the first `count` values, which are sorted. */
function insertSorted(sorted: Float64Array, count: number, value: number): void {
  let at = count;
  while (at > 0 && sorted[at - 1]! > value) {
    sorted[at] = sorted[at - 1]!;
    at--;
  }
  sorted[at] = value;
}

/** The colour of a cell. */
export function colourOfCell({ cells, colours }: LidStrip, column: number, cell: number): Colour {
  const at = 3 * (column * cells + cell);
  return [colours[at]!, colours[at + 1]!, colours[at + 2]!];
}

/** Median of each channel by itself. Needs at least one colour. */
export function medianColour(colours: readonly Colour[]): Colour {
  const middle = (channel: 0 | 1 | 2): number => {
    const values = Float64Array.from(colours, (colour) => colour[channel]).sort();
    return values[values.length >> 1]!;
  };
  return [middle(0), middle(1), middle(2)];
}
