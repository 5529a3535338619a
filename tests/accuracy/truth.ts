import type { EstimateName } from '../../src/core/estimate/estimate.js';
import { mean } from './statistics.js';

/** The estimates in mm that a picture's truth is known for, and that the file of `--json` holds. */
export const WRITTEN_ESTIMATES = [
  'pdFar',
  'pdShown',
  'monoPdR',
  'monoPdL',
  'apertureR',
  'apertureL',
  'headWidth',
  'templeWidth',
  'irisDiameter',
  'distance',
] as const satisfies readonly EstimateName[];

/** All that the report compares: a few more, which only some pictures tell. */
export const COMPARED_ESTIMATES = [
  ...WRITTEN_ESTIMATES,
  'pupilDiameterR',
  'pupilDiameterL',
] as const satisfies readonly EstimateName[];

export type WrittenEstimateName = (typeof WRITTEN_ESTIMATES)[number];
export type ComparedEstimate = (typeof COMPARED_ESTIMATES)[number];

/** What the truth calls them. */
const TRUTH_NAMES: Readonly<Record<ComparedEstimate, string>> = {
  pdFar: 'truePdFar',
  pdShown: 'truePdAsShown',
  monoPdR: 'monoPdR',
  monoPdL: 'monoPdL',
  apertureR: 'apertureR',
  apertureL: 'apertureL',
  headWidth: 'headWidth',
  templeWidth: 'templeWidth',
  irisDiameter: 'irisDiameter',
  distance: 'eyePlaneDistance',
  pupilDiameterR: 'pupilDiameter',
  pupilDiameterL: 'pupilDiameter',
};

export type PixelPoint = readonly [x: number, y: number];

/** The camera that took a picture; the only truth, besides the gaze, that the app may be given. */
export interface CameraTruth {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly fx: number;
  readonly fy: number;
  readonly cx: number;
  readonly cy: number;
  readonly k1: number;
}

/** How a picture or a sweep was taken: what the report breaks errors down by. Null where the truth does not say. */
export interface Circumstances {
  /** camera to the plane of the pupils; of a sweep the mean over its frames */
  readonly distanceMm: number | null;
  /** positive: face to picture right; null for a sweep, in which the head turns */
  readonly yawDeg: number | null;
  /** at the eyes; of a sweep the mean over its frames */
  readonly pixelsPerMm: number | null;
  /** brightness of the iris' colour: weighted mean of its red, green and blue, 0 to 255 */
  readonly irisBrightness: number | null;
  readonly cardKind: string | null;
  readonly cardPosition: string | null;
  readonly occluded: boolean | null;
}

/** The frame from which on the card sits elsewhere on the face; null where it stays. */
export interface SlipTruth {
  readonly fromFrame: number | null;
}

export type ValuesMm = Readonly<Record<ComparedEstimate, number | null>>;

/** What is known of one picture. Whatever its entry does not say is null, and not compared. */
export interface PictureTruth extends Circumstances {
  readonly file: string;
  readonly gaze: 'camera' | 'far';
  readonly camera: CameraTruth | null;
  readonly valuesMm: ValuesMm;
  readonly pupilsPx: { readonly R: PixelPoint; readonly L: PixelPoint } | null;
  readonly cardPx: readonly PixelPoint[] | null;
  /** null where the picture stands for itself */
  readonly frameOf: { readonly sweep: string; readonly frame: number; readonly slip: SlipTruth | null } | null;
}

/** What is known of one sweep. */
export interface SweepTruth extends Circumstances {
  readonly sweep: string;
  /** of its first frame, as is the camera */
  readonly gaze: 'camera' | 'far';
  readonly camera: CameraTruth | null;
  /** by their number */
  readonly frames: readonly SweepFrameTruth[];
  /** what is the same in all frames; null what is not (the PD as shown, the distance) */
  readonly valuesMm: ValuesMm;
  readonly slip: SlipTruth | null;
}

export interface SweepFrameTruth {
  readonly frame: number;
  readonly truth: PictureTruth;
}

/** Reads a truth.json; throws a sentence where it is no list of pictures. */
export function parseTruth(value: unknown): readonly PictureTruth[] {
  if (!Array.isArray(value)) throw new Error('truth.json must be a list with one entry per picture.');
  return value.map((entry: unknown, index) => parseEntry(entry, index));
}

type Entry = Readonly<Record<string, unknown>>;

function parseEntry(value: unknown, index: number): PictureTruth {
  if (!isEntry(value)) throw new Error(`Entry ${index} of truth.json is no object.`);
  const { file, gaze } = value;
  if (typeof file !== 'string') throw new Error(`Entry ${index} of truth.json names no file.`);
  if (gaze !== 'camera' && gaze !== 'far') throw new Error(`${file}: "gaze" must be "camera" or "far".`);
  const card = isEntry(value['card']) ? value['card'] : {};
  const pupils = isEntry(value['pupilPx']) ? value['pupilPx'] : {};
  const [R, L] = [pointOrNull(pupils['R']), pointOrNull(pupils['L'])];
  const camera = parseCamera(value);
  const valuesMm = valuesOf((name) => numberOrNull(value[TRUTH_NAMES[name]]));
  const { distance } = valuesMm;
  return {
    file,
    gaze,
    camera,
    valuesMm,
    pupilsPx: R === null || L === null ? null : { R, L },
    cardPx: parseCorners(card['cornersPx']),
    frameOf: parseFrame(file, value),
    distanceMm: distance,
    yawDeg: numberOrNull(value['yawDeg']),
    pixelsPerMm: camera === null || distance === null || distance <= 0 ? null : camera.fx / distance,
    irisBrightness: brightnessOrNull(value['irisRgb']),
    cardKind: wordOrNull(card['kind']),
    cardPosition: wordOrNull(card['position']),
    occluded: typeof card['occluded'] === 'boolean' ? card['occluded'] : null,
  };
}

function parseFrame(file: string, entry: Entry): PictureTruth['frameOf'] {
  const sweep = wordOrNull(entry['sweep']);
  if (sweep === null) return null;
  const frame = numberOrNull(entry['frame']);
  if (frame === null) throw new Error(`${file}: a picture of a sweep needs the number of its "frame".`);
  const slipped = entry['slippedFromFrame'];
  const slip = slipped === null ? { fromFrame: null } : typeof slipped === 'number' ? { fromFrame: slipped } : null;
  return { sweep, frame, slip };
}

/** The sweeps that the entries belong to, in the order in which they are first named. */
export function gatherSweeps(truths: readonly PictureTruth[]): readonly SweepTruth[] {
  const bySweep = new Map<string, SweepFrameTruth[]>();
  for (const truth of truths) {
    if (truth.frameOf === null) continue;
    const { sweep, frame } = truth.frameOf;
    const frames = bySweep.get(sweep) ?? [];
    frames.push({ frame, truth });
    bySweep.set(sweep, frames);
  }
  return [...bySweep].map(([sweep, unsorted]) => {
    const frames = unsorted.sort((a, b) => a.frame - b.frame);
    const first = frames[0];
    if (first === undefined) throw new Error(`${sweep} has no frames.`);
    const { gaze, camera, irisBrightness, cardKind, cardPosition, occluded } = first.truth;
    return {
      sweep,
      gaze,
      camera,
      frames,
      valuesMm: valuesOf((name) => sharedValue(frames.map(({ truth }) => truth.valuesMm[name]))),
      slip: first.truth.frameOf?.slip ?? null,
      distanceMm: meanOrNull(frames.map(({ truth }) => truth.distanceMm)),
      yawDeg: null,
      pixelsPerMm: meanOrNull(frames.map(({ truth }) => truth.pixelsPerMm)),
      irisBrightness,
      cardKind,
      cardPosition,
      occluded,
    };
  });
}

function valuesOf(valueOf: (name: ComparedEstimate) => number | null): ValuesMm {
  return Object.fromEntries(COMPARED_ESTIMATES.map((name) => [name, valueOf(name)])) as ValuesMm;
}

/** Values of one head differ between frames by their rounding alone, mm; poses and gazes change others by far more. */
const ROUNDING_MM = 0.001;

function sharedValue(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  const first = known[0];
  if (first === undefined || known.length < values.length) return null;
  return known.every((value) => Math.abs(value - first) <= ROUNDING_MM) ? first : null;
}

function meanOrNull(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 || known.length < values.length ? null : mean(known);
}

/** Weights of ITU-R BT.709, on the values as they stand: enough to put irises in order. */
const BRIGHTNESS_WEIGHTS = [0.2126, 0.7152, 0.0722] as const;

function brightnessOrNull(value: unknown): number | null {
  if (!Array.isArray(value) || value.length !== 3) return null;
  const levels = value.map(numberOrNull).filter((level) => level !== null);
  if (levels.length !== 3) return null;
  return levels.reduce((sum, level, index) => sum + level * (BRIGHTNESS_WEIGHTS[index] ?? 0), 0);
}

function parseCamera(entry: Entry): CameraTruth | null {
  const [widthPx, heightPx] = [numberOrNull(entry['width']), numberOrNull(entry['height'])];
  const [fx, fy] = [numberOrNull(entry['fx']), numberOrNull(entry['fy'])];
  const [cx, cy] = [numberOrNull(entry['cx']), numberOrNull(entry['cy'])];
  if (widthPx === null || heightPx === null || fx === null || fy === null || cx === null || cy === null) return null;
  const k1 = isEntry(entry['distortion']) ? numberOrNull(entry['distortion']['k1']) : 0;
  return k1 === null ? null : { widthPx, heightPx, fx, fy, cx, cy, k1 };
}

function parseCorners(value: unknown): readonly PixelPoint[] | null {
  if (!Array.isArray(value) || value.length !== 4) return null;
  const corners = value.map(pointOrNull).filter((corner) => corner !== null);
  return corners.length === 4 ? corners : null;
}

function isEntry(value: unknown): value is Entry {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function numberOrNull(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

function wordOrNull(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

function pointOrNull(value: unknown): PixelPoint | null {
  if (!Array.isArray(value) || value.length !== 2) return null;
  const [x, y] = [numberOrNull(value[0]), numberOrNull(value[1])];
  return x === null || y === null ? null : [x, y];
}
