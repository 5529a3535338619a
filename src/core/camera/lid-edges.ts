import { pointAlong, perpendicularDown } from '../geometry/image-direction.js';
import type { Side } from '../units/side.js';
import { eyeColours, regionCosts, type DrawnOpening, type EyeColours } from './eye-colours.js';
import {
  CELL,
  cellsAbove,
  colourOfCell,
  colourSampler,
  cutLidStrip,
  eyePlaceOf,
  medianColour,
  type Colour,
  type ColourSampler,
  type EyeAxes,
  type EyePlace,
  type LidStrip,
} from './eye-strip.js';
import { LANDMARK, landmarkAt } from './face-landmarks.js';
import type { IrisObservation, Landmark, LidObservation } from './features.js';
import { marginPosterior, offsetAt, type MarginCurve, type MarginPosterior, type MarginPrior } from './lid-curve.js';
import type { RgbaImage } from './pixel-plane.js';
import { STRAIGHT_AHEAD_DEVIATION, straightAheadPlace } from './straight-ahead.js';

type Lid = 'upper' | 'lower';

/** Columns of the strip, radii of the iris. */
const COLUMN_STEP = 0.09;
const STRIP_HALF_WIDTH = 1.45;
/** Near the eye corners the lids run steeply together: columns stop short of them, radii. */
const CORNER_MARGIN = 0.25;
/** Fewer columns tell nothing. */
const FEWEST_COLUMNS = 6;
/** Columns count the less the farther they lie from the one that is asked for, radii (standard deviation of a bell). */
const COLUMN_BELL = 0.8;
/** In the first look columns on the iris count less than those on the white: a dark lash line looks like a dark iris. */
const FIRST_LOOK_IRIS_WEIGHT = 0.5;
/** Cells beside each other say much the same: a square radius holds this many independent ones for every pixel. Tuned. */
const EVIDENCE_PER_PIXEL = 0.25;
/** How far beyond the margin its rim reaches (shadow, lash line, wet edge), radii; how often it is taken anew. */
const RIM_REACH = 0.4;
const RIM_LOOKS = 2;
const FEWEST_WHITE_COLUMNS = 4;
/** Where landmarks draw the margins, against the truth, on rendered heads (radii of the iris, below). */
const DRAWN: Readonly<Record<Lid, MarginPrior>> = {
  upper: { mean: 0.03, deviation: 0.1 },
  lower: { mean: -0.05, deviation: 0.2 },
};
/** Deviation of the landmarks where the picture tells nothing, radii. */
const DRAWN_ALONE = 0.15;
/**
 * What the scatter over the curves does not know of: a lid is no parabola, colours are not even. It is this much too small, and never less than
 * these, in radii and in pixels. Chosen so that the intervals hold the truth of rendered heads.
 */
const SCATTER_FACTOR = 1.2;
const LEAST_DEVIATION = 0.03;
const LEAST_DEVIATION_PX = 0.2;

/**
 * Lid margins where the pupil stands when the eyes look straight ahead, given on the vertical of the head through the pupil's centre as it
 * is seen. Each margin is sought as a smooth curve near to the one that the landmarks draw, such that the colours within are most like
 * white and iris and those beyond most like skin. White shows the margin best; what lies just beyond it there (a shadow, the lash line) is
 * expected along the whole lid, so that it is not taken for part of a dark iris.
 *
 * @param rollRad direction from the wearer's right to the left eye in the picture
 */
export function fitLidEdges(
  image: RgbaImage,
  landmarks: readonly Landmark[],
  iris: IrisObservation,
  side: Side,
  rollRad: number,
): LidObservation {
  const axes: EyeAxes = { centre: iris.centre, radiusPx: iris.radiusPx, rollRad };
  const opening = drawnOpening(landmarks, axes, side);
  const asked = straightAheadPlace(landmarks, axes);
  const sample = colourSampler(image, axes);
  const colours = eyeColours(sample, opening);
  const margin = (lid: Lid): FoundMargin => {
    const drawnAt = lid === 'upper' ? opening.upperAt : opening.lowerAt;
    const drawnSlope = (drawnAt(asked + SLOPE_REACH) - drawnAt(asked - SLOPE_REACH)) / (2 * SLOPE_REACH);
    const found = colours === null ? null : findMargin(sample, colours, opening, asked, iris.radiusPx, lid);
    if (found === null) return { below: drawnAt(asked), slope: drawnSlope, deviation: DRAWN_ALONE };
    return {
      below: drawnAt(asked) + found.offset,
      slope: drawnSlope + found.slope,
      deviation: Math.hypot(SCATTER_FACTOR * found.deviation, LEAST_DEVIATION, LEAST_DEVIATION_PX / iris.radiusPx),
    };
  };
  const upper = margin('upper');
  const lower = margin('lower');
  const down = perpendicularDown(rollRad);
  // Where the lids run together the opening depends on where it is measured.
  const placing = STRAIGHT_AHEAD_DEVIATION * (lower.slope - upper.slope);
  return {
    upper: pointAlong(iris.centre, down, upper.below * iris.radiusPx),
    lower: pointAlong(iris.centre, down, lower.below * iris.radiusPx),
    uncertaintyPx: Math.hypot(upper.deviation, lower.deviation, placing) * Math.SQRT1_2 * iris.radiusPx,
    source: 'edges',
  };
}

/** A margin where it is asked for: below the pupil's centre, its slope along the line of the eyes, standard deviation; radii. */
interface FoundMargin {
  readonly below: number;
  readonly slope: number;
  readonly deviation: number;
}

/** Half the stretch of a lid over which its slope is taken, radii. */
const SLOPE_REACH = 0.4;

function drawnOpening(landmarks: readonly Landmark[], axes: EyeAxes, side: Side): DrawnOpening {
  const place = (index: number): EyePlace => eyePlaceOf(axes, landmarkAt(landmarks, index));
  const corners = [place(LANDMARK.outerEyeCorner[side]), place(LANDMARK.innerEyeCorner[side])];
  const acrosses = corners.map((corner) => corner.across);
  return {
    upperAt: polyline([...LANDMARK.upperLidMargin[side].map(place), ...corners]),
    lowerAt: polyline([...LANDMARK.lowerLidMargin[side].map(place), ...corners]),
    fromAcross: Math.min(...acrosses),
    toAcross: Math.max(...acrosses),
  };
}

/** Straight lines between points, level beyond the outermost. */
function polyline(points: readonly EyePlace[]): (across: number) => number {
  const sorted = [...points].sort((a, b) => a.across - b.across);
  return (across) => {
    let before = sorted[0]!;
    if (across <= before.across) return before.below;
    for (const point of sorted) {
      if (across <= point.across) {
        const share = (across - before.across) / Math.max(point.across - before.across, 1e-6);
        return before.below + share * (point.below - before.below);
      }
      before = point;
    }
    return before.below;
  };
}

/** Null where the landmarks leave too little of the lid to look at. */
function findMargin(
  sample: ColourSampler,
  colours: EyeColours,
  opening: DrawnOpening,
  asked: number,
  radiusPx: number,
  lid: Lid,
): MarginPosterior | null {
  const across: number[] = [];
  for (let a = asked - STRIP_HALF_WIDTH; a <= asked + STRIP_HALF_WIDTH + 1e-9; a += COLUMN_STEP) {
    if (a >= opening.fromAcross + CORNER_MARGIN && a <= opening.toAcross - CORNER_MARGIN) across.push(a);
  }
  if (across.length < FEWEST_COLUMNS) return null;
  const strip = cutLidStrip(sample, across, lid === 'upper' ? opening.upperAt : opening.lowerAt);
  const cells = judgeCells(strip, colours, opening, lid);
  const along = across.map((a) => a - asked);
  const weights = along.map((s) => COLUMN_STEP * Math.exp(-(s * s) / (2 * COLUMN_BELL * COLUMN_BELL)));
  const evidence = EVIDENCE_PER_PIXEL * radiusPx * radiusPx;
  const look = (rim: readonly Colour[], counted: readonly number[]): MarginPosterior =>
    marginPosterior(
      { cells: strip.cells, costs: costsOfMargins(strip, cells, rim, lid), along, weights: counted },
      DRAWN[lid],
      evidence,
    );
  const drawn: MarginCurve = { offset: 0, slope: 0, bend: 0 };
  const onWhite = columnsOnWhite(strip, along, drawn, lid, 1.08);
  let found = look(
    [],
    weights.map((weight, j) => (onWhite.includes(j) ? weight : FIRST_LOOK_IRIS_WEIGHT * weight)),
  );
  for (let i = 0; i < RIM_LOOKS; i++) found = look(rimBeyond(strip, along, found, lid), weights);
  return found;
}

/** Costs of every cell of a strip, as eye and as skin; both nought where the other lid is near. */
interface JudgedCells {
  readonly eye: Float32Array;
  readonly skin: Float32Array;
  readonly counts: Uint8Array;
  readonly againstRim: (at: number, rim: Colour) => number;
}

function judgeCells(strip: LidStrip, colours: EyeColours, opening: DrawnOpening, lid: Lid): JudgedCells {
  const { across, drawn, cells, colours: levels, distance } = strip;
  const costs = regionCosts(colours, lid);
  const eye = new Float32Array(cells * across.length);
  const skin = new Float32Array(cells * across.length);
  const counts = new Uint8Array(cells * across.length);
  across.forEach((a, j) => {
    const first = lid === 'upper' ? 0 : Math.max(0, cellsAbove(opening.upperAt(a) + OTHER_LID - drawn[j]!));
    const last = lid === 'upper' ? Math.min(cells, cellsAbove(opening.lowerAt(a) - OTHER_LID - drawn[j]!)) : cells;
    for (let k = first; k < last; k++) {
      const i = j * cells + k;
      counts[i] = 1;
      eye[i] = costs.againstEye(levels, 3 * i, distance[i]!);
      skin[i] = costs.againstSkin(levels, 3 * i);
    }
  });
  return { eye, skin, counts, againstRim: (at, rim) => costs.againstRim(levels, 3 * at, rim) };
}

/** Cells nearer than this to the other lid as it is drawn do not count, radii. */
const OTHER_LID = 0.1;

/**
 * The cost of every possible margin: what lies towards the pupil is judged as eye, what lies beyond as skin, but the cells next to the margin
 * as its rim, where that is known.
 */
function costsOfMargins(
  { across, cells }: LidStrip,
  { eye, skin, counts, againstRim }: JudgedCells,
  rim: readonly Colour[],
  lid: Lid,
): Float64Array {
  const costs = new Float64Array((cells + 1) * across.length);
  const eyeAbove = new Float64Array(cells + 1);
  const skinAbove = new Float64Array(cells + 1);
  for (let j = 0; j < across.length; j++) {
    const first = j * cells;
    for (let k = 0; k < cells; k++) {
      eyeAbove[k + 1] = eyeAbove[k]! + eye[first + k]!;
      skinAbove[k + 1] = skinAbove[k]! + skin[first + k]!;
    }
    for (let boundary = 0; boundary <= cells; boundary++) {
      let cost =
        lid === 'upper'
          ? skinAbove[Math.max(0, boundary - rim.length)]! + eyeAbove[cells]! - eyeAbove[boundary]!
          : eyeAbove[boundary]! + skinAbove[cells]! - skinAbove[Math.min(cells, boundary + rim.length)]!;
      for (let d = 0; d < rim.length; d++) {
        const k = lid === 'upper' ? boundary - 1 - d : boundary + d;
        if (k >= 0 && k < cells && counts[first + k] === 1) cost += againstRim(first + k, rim[d]!);
      }
      costs[j * (cells + 1) + boundary] = cost * CELL;
    }
  }
  return costs;
}

/** Columns whose margin lies before white, not before iris. */
function columnsOnWhite(
  { across, drawn }: LidStrip,
  along: readonly number[],
  curve: MarginCurve,
  lid: Lid,
  fromDistance: number,
): number[] {
  const inward = lid === 'upper' ? 0.15 : -0.15;
  return across.flatMap((a, j) => {
    const below = drawn[j]! + offsetAt(curve, along[j]!) + inward;
    return Math.hypot(a, below) > fromDistance ? [j] : [];
  });
}

/** The colours just beyond the margin, cell by cell outwards, as they are where the margin lies before white; none where little white shows. */
function rimBeyond(strip: LidStrip, along: readonly number[], curve: MarginCurve, lid: Lid): Colour[] {
  const columns = columnsOnWhite(strip, along, curve, lid, 1.12);
  if (columns.length < FEWEST_WHITE_COLUMNS) return [];
  const rim: Colour[] = [];
  const outward = lid === 'upper' ? -1 : 1;
  for (let d = 0; d < Math.round(RIM_REACH / CELL); d++) {
    const seen = columns.flatMap((j) => {
      const cell = cellsAbove(offsetAt(curve, along[j]!) + outward * (d + 0.5) * CELL - CELL / 2);
      return cell >= 0 && cell < strip.cells ? [colourOfCell(strip, j, cell)] : [];
    });
    if (seen.length === 0) break;
    rim.push(medianColour(seen));
  }
  return rim;
}
