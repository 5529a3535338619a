import { medianColour, type Colour, type ColourSampler } from './eye-strip.js';

/** The colours of one eye and of the skin about it, as they are in this picture. */
export interface EyeColours {
  readonly white: Colour;
  readonly iris: Colour;
  readonly upperSkin: Colour;
  readonly lowerSkin: Colour;
}

/** The opening between the lids as the landmarks draw it, in the axes of the eye (radii of the iris). */
export interface DrawnOpening {
  readonly upperAt: (across: number) => number;
  readonly lowerAt: (across: number) => number;
  /** the eye corners, left and right in the picture */
  readonly fromAcross: number;
  readonly toAcross: number;
}

const SAMPLING = 0.08;

/**
 * Takes the colours from where the landmarks let expect each: the white beside the iris (its brighter half, for landmarks stray), the iris
 * between pupil and rim and not under the upper lid, skin well beyond the margins. Null where one of them is nowhere to be seen.
 */
export function eyeColours(sample: ColourSampler, opening: DrawnOpening): EyeColours | null {
  const found = { white: [] as Colour[], iris: [] as Colour[], upperSkin: [] as Colour[], lowerSkin: [] as Colour[] };
  const cell = new Float32Array(3);
  const take = (into: Colour[], across: number, below: number): void => {
    sample(across, below, cell, 0);
    into.push([cell[0]!, cell[1]!, cell[2]!]);
  };
  for (let a = -1.92; a < 1.93; a += SAMPLING) {
    if (a < opening.fromAcross + 0.12 || a > opening.toAcross - 0.12) continue;
    const upper = opening.upperAt(a);
    const lower = opening.lowerAt(a);
    for (let b = Math.max(-1.28, upper + 0.15); b < Math.min(1.29, lower - 0.2); b += SAMPLING) {
      const distance = Math.hypot(a, b);
      if (distance > 1.12 && distance < 1.9) take(found.white, a, b);
      else if (distance > 0.45 && distance < 0.88 && b > -0.35) take(found.iris, a, b);
    }
    if (Math.abs(a) > 1.3) continue;
    for (let b = 0.3; b < 0.85; b += SAMPLING) {
      take(found.upperSkin, a, upper - b);
      take(found.lowerSkin, a, lower + b);
    }
  }
  found.white.sort((p, q) => q[0] - p[0]);
  found.white.length = Math.ceil(found.white.length / 2);
  if (Object.values(found).some((colours) => colours.length < 3)) return null;
  return {
    white: medianColour(found.white),
    iris: medianColour(found.iris),
    upperSkin: medianColour(found.upperSkin),
    lowerSkin: medianColour(found.lowerSkin),
  };
}

/** How far levels scatter about the colour of their region, levels: noise, and a share of the brightness. Tuned on rendered heads. */
const SCATTER = 7;
const SCATTER_SHARE = 0.07;
/** Scatter about a colour that was measured at the same distance from the margin elsewhere along the lid. */
const RIM_SCATTER = 9;
/** No cell says more than this against a region: there are lashes, highlights, tears. */
const MOST_AGAINST = 9;

/** How dark and bright a region may be, as a share of its colour: the upper lid throws a shadow, the pupil is black. Tuned. */
const WHITE_SHADES = [0.7, 1.12] as const;
const IRIS_SHADES = [0.3, 1.22] as const;
const UPPER_SKIN_SHADES = [0.25, 1.2] as const;
const LOWER_SKIN_SHADES = [0.63, 1.2] as const;
/** Skin darker than this share of its colour is less likely the darker it is. */
const FREE_SHADE = 0.85;
const SHADE_COST = 2.5;

/** Between these distances from its centre (radii) a cell may be iris or white. */
const IRIS_REACHES = 1.1;
const WHITE_BEGINS = 0.92;

/** What a cell says against being eye, or against being skin: half a squared distance in standard deviations. */
export interface RegionCosts {
  readonly againstEye: (colours: Float32Array, at: number, distance: number) => number;
  readonly againstSkin: (colours: Float32Array, at: number) => number;
  /** against being skin of exactly this colour */
  readonly againstRim: (colours: Float32Array, at: number, rim: Colour) => number;
}

export function regionCosts(colours: EyeColours, lid: 'upper' | 'lower'): RegionCosts {
  const { white, iris } = colours;
  const skin = lid === 'upper' ? colours.upperSkin : colours.lowerSkin;
  const skinShades = lid === 'upper' ? UPPER_SKIN_SHADES : LOWER_SKIN_SHADES;
  // Both sides of an edge are given about the same scatter, lest a blurred edge be counted to the darker side.
  const skinScatter = scatterOf(skin);
  const whiteCost = segmentCost(white, WHITE_SHADES, Math.max(scatterOf(white), skinScatter));
  const irisCost = segmentCost(iris, IRIS_SHADES, Math.max(scatterOf(iris), (scatterOf(iris) + skinScatter) / 2));
  const skinCost = segmentCost(skin, skinShades, skinScatter);
  const skinSquare = squareOf(skin);
  return {
    againstEye: (cells, at, distance) => {
      let cost = MOST_AGAINST;
      if (distance < IRIS_REACHES) cost = Math.min(cost, irisCost(cells, at));
      if (distance > WHITE_BEGINS) cost = Math.min(cost, whiteCost(cells, at));
      return cost;
    },
    againstSkin: (cells, at) => {
      const shade = (cells[at]! * skin[0] + cells[at + 1]! * skin[1] + cells[at + 2]! * skin[2]) / skinSquare;
      const dark = shade < FREE_SHADE ? (SHADE_COST * (FREE_SHADE - shade)) / FREE_SHADE : 0;
      return Math.min(MOST_AGAINST, skinCost(cells, at) + dark);
    },
    againstRim: (cells, at, rim) => {
      const scatter = RIM_SCATTER + SCATTER_SHARE * rim[0];
      const square = (cells[at]! - rim[0]) ** 2 + (cells[at + 1]! - rim[1]) ** 2 + (cells[at + 2]! - rim[2]) ** 2;
      return Math.min(MOST_AGAINST, square / (2 * scatter * scatter));
    },
  };
}

function scatterOf(colour: Colour): number {
  return SCATTER + SCATTER_SHARE * colour[0];
}

function squareOf(colour: Colour): number {
  return Math.max(1, colour[0] ** 2 + colour[1] ** 2 + colour[2] ** 2);
}

/** Half the squared distance of a cell from the shades of a colour, in standard deviations. */
function segmentCost(
  colour: Colour,
  [darkest, brightest]: readonly [number, number],
  scatter: number,
): (colours: Float32Array, at: number) => number {
  const [luma, blue, red] = colour;
  const square = squareOf(colour);
  const weight = 1 / (2 * scatter * scatter);
  return (colours, at) => {
    const p = colours[at]!;
    const q = colours[at + 1]!;
    const r = colours[at + 2]!;
    const shade = Math.min(Math.max((p * luma + q * blue + r * red) / square, darkest), brightest);
    return weight * ((p - shade * luma) ** 2 + (q - shade * blue) ** 2 + (r - shade * red) ** 2);
  };
}
