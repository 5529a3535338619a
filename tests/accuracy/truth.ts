import type { EstimateName } from '../../src/core/estimate/estimate.js';

/** The estimates in mm that a picture's truth is known for. */
export const COMPARED_ESTIMATES = [
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

/** What is known of one picture. Whatever its entry does not say is null, and not compared. */
export interface PictureTruth {
  readonly file: string;
  readonly gaze: 'camera' | 'far';
  readonly camera: CameraTruth | null;
  readonly valuesMm: Readonly<Record<ComparedEstimate, number | null>>;
  readonly pupilsPx: { readonly R: PixelPoint; readonly L: PixelPoint } | null;
  readonly cardPx: readonly PixelPoint[] | null;
  readonly cardKind: string | null;
  readonly cardPosition: string | null;
  readonly occluded: boolean | null;
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
  const valueOf = (name: ComparedEstimate) => numberOrNull(value[TRUTH_NAMES[name]]);
  return {
    file,
    gaze,
    camera: parseCamera(value),
    valuesMm: Object.fromEntries(COMPARED_ESTIMATES.map((name) => [name, valueOf(name)])) as PictureTruth['valuesMm'],
    pupilsPx: R === null || L === null ? null : { R, L },
    cardPx: parseCorners(card['cornersPx']),
    cardKind: wordOrNull(card['kind']),
    cardPosition: wordOrNull(card['position']),
    occluded: typeof card['occluded'] === 'boolean' ? card['occluded'] : null,
  };
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
