import type { BoardFailure, BoardView } from '../../src/core/camera/board.js';
import type { CameraProfile } from '../../src/core/camera/camera-profile.js';
import type { Camera } from '../../src/core/camera/pinhole.js';
import type { ProfileWeakness } from '../../src/core/camera/profile-quality.js';
import { judgeViews, weaknessesOfProfile } from '../../src/core/camera/profile-quality.js';
import type { MeasuringFailure } from '../../src/session/ports.js';

export const PROFILE_USAGE = 'npm run profile -- DIR [--json FILE]';

/** What the profile command was asked for. */
export interface AskedProfile {
  readonly folder: string;
  readonly jsonFile: string | null;
}

/** Null where the words are not as in `PROFILE_USAGE`. */
export function parseProfileArguments(words: readonly string[]): AskedProfile | null {
  let folder: string | null = null;
  let jsonFile: string | null = null;
  for (let index = 0; index < words.length; index++) {
    const word = words[index] ?? '';
    if (word === '--json') {
      index += 1;
      const file = words[index];
      if (file === undefined || file.startsWith('--') || jsonFile !== null) return null;
      jsonFile = file;
    } else if (word.startsWith('--') || folder !== null) return null;
    else folder = word;
  }
  return folder === null ? null : { folder, jsonFile };
}

/** A picture in which the sheet was found. */
export interface NamedView {
  readonly file: string;
  readonly view: BoardView;
}

/**
 * Parts the views of the size that most of them have (of the larger one where two sizes are as frequent) from the others, which
 * another camera or another resolution has made.
 */
export function partBySize(views: readonly NamedView[]): {
  readonly kept: readonly NamedView[];
  readonly others: readonly NamedView[];
} {
  const counts = new Map<string, { readonly area: number; count: number }>();
  const sizeOf = ({ view }: NamedView) => `${view.widthPx} x ${view.heightPx}`;
  for (const each of views) {
    const entry = counts.get(sizeOf(each)) ?? { area: each.view.widthPx * each.view.heightPx, count: 0 };
    entry.count += 1;
    counts.set(sizeOf(each), entry);
  }
  const [usual] = [...counts].sort(([, a], [, b]) => b.count - a.count || b.area - a.area)[0] ?? [''];
  return {
    kept: views.filter((each) => sizeOf(each) === usual),
    others: views.filter((each) => sizeOf(each) !== usual),
  };
}

/** The camera in a truth.json; null where it names none. */
export function parseCameraTruth(value: unknown): Camera | null {
  if (typeof value !== 'object' || value === null) return null;
  const { fx, fy, cx, cy, distortion } = value as Readonly<Record<string, unknown>>;
  if (![fx, fy, cx, cy].every((each) => typeof each === 'number' && Number.isFinite(each))) return null;
  const k1 = typeof distortion === 'object' && distortion !== null && 'k1' in distortion ? distortion.k1 : 0;
  const [a, b, c, d] = [fx, fy, cx, cy] as [number, number, number, number];
  return { fx: a, fy: b, cx: c, cy: d, distortion: [typeof k1 === 'number' ? k1 : 0, 0, 0, 0, 0] };
}

/** Exactly the members that the file promises, in their order. */
export function writtenProfile(profile: CameraProfile): object {
  const { fx, fy, cx, cy, distortion, rmsPx, uncertainty, viewCount } = profile;
  const sd = {
    fx: uncertainty.fx,
    fy: uncertainty.fy,
    cx: uncertainty.cx,
    cy: uncertainty.cy,
    distortion: uncertainty.distortion,
  };
  return { fx, fy, cx, cy, distortion, rmsPx, sd, views: viewCount };
}

/** What the command prints of a profile. */
export function writeProfileReport(profile: CameraProfile, views: readonly BoardView[], truth: Camera | null): string {
  const { uncertainty: sd } = profile;
  const quality = judgeViews(views, profile);
  const lengths = (['fx', 'fy', 'cx', 'cy'] as const).map((name) =>
    row(name, profile[name], sd[name], truth?.[name] ?? null, 2, 'px'),
  );
  const coefficients = (['k1', 'k2', 'p1', 'p2', 'k3'] as const).map((name, index) => {
    const at = index as 0 | 1 | 2 | 3 | 4;
    return row(name, profile.distortion[at], sd.distortion[at], truth?.distortion[at] ?? null, 5, '');
  });
  const weaknesses = [...quality.weaknesses, ...weaknessesOfProfile(profile)];
  return [
    `Profile of a camera at ${profile.widthPx} x ${profile.heightPx} from ${profile.viewCount} views`,
    ...lengths,
    ...coefficients,
    `corners fit to ${profile.rmsPx.toFixed(3)} px (root mean square)`,
    `corners in ${percent(quality.coverage)} of the frame's cells; slopes over ${quality.tiltAcrossSpreadDeg.toFixed(0)} degrees across and ` +
      `${quality.tiltDownSpreadDeg.toFixed(0)} down; farthest ${ratioOf(quality).toFixed(2)} times as far as nearest`,
    ...(weaknesses.length === 0
      ? ['nothing is weak']
      : ['weak:', ...weaknesses.map((each) => `  ${weaknessSentence(each)}`)]),
    ...(truth === null
      ? []
      : [
          `focal length off by ${signedPercent(profile.fx / truth.fx - 1)} and ${signedPercent(profile.fy / truth.fy - 1)}`,
        ]),
  ].join('\n');
}

function ratioOf({ nearestSizeShare, farthestSizeShare }: ReturnType<typeof judgeViews>): number {
  return nearestSizeShare === null || farthestSizeShare === null ? 1 : nearestSizeShare / farthestSizeShare;
}

function row(name: string, value: number, sd: number, truth: number | null, digits: number, unit: string): string {
  const found = `${name}  ${value.toFixed(digits).padStart(9)} ± ${sd === 0 ? 'held' : sd.toFixed(digits)} ${unit}`;
  if (truth === null) return found.trimEnd();
  const off = value - truth;
  const deviations = sd === 0 ? '' : `, ${(off / sd).toFixed(1)} sd`;
  return `${found.trimEnd()}   truth ${truth.toFixed(digits)}, off by ${off.toFixed(digits)}${deviations}`;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`;
}

function signedPercent(share: number): string {
  return `${share < 0 ? '-' : '+'}${(100 * Math.abs(share)).toFixed(3)} %`;
}

function weaknessSentence(weakness: ProfileWeakness): string {
  switch (weakness.kind) {
    case 'few-views':
      return `only ${weakness.views} views; ${weakness.wanted} or more are wanted`;
    case 'little-coverage':
      return `corners in only ${percent(weakness.coverage)} of the frame; ${percent(weakness.wanted)} are wanted`;
    case 'corners-uncovered':
      return `no view reaches into the frame's corners: ${weakness.corners.join(', ')}`;
    case 'little-tilt': {
      const sides = weakness.direction === 'across' ? 'left and right' : 'top and bottom';
      return `little tilt between ${sides}: ${weakness.spreadDeg.toFixed(0)} degrees; ${weakness.wantedDeg} are wanted`;
    }
    case 'one-distance':
      return `all from about one distance: ratio ${weakness.ratio.toFixed(2)}; ${weakness.wanted} is wanted`;
    case 'focal-length-doubtful':
      return `focal length known to ${(100 * weakness.relativeUncertainty).toFixed(2)} %; ${(100 * weakness.wanted).toFixed(1)} % is wanted`;
    case 'poor-fit':
      return `corners fit to ${weakness.rmsPx.toFixed(2)} px only; ${weakness.wantedPx.toFixed(2)} px are wanted`;
  }
}

/** Why a picture was left out, or why there is no profile. */
export function profileFailureSentence(failure: BoardFailure | MeasuringFailure): string {
  if (failure.kind === 'no-board')
    return `too little of the sheet was found: ${failure.cornersFound} corners of the ${failure.cornersNeeded} needed`;
  if (failure.kind === 'too-few-views')
    return `Too few usable views: ${failure.views}; at least ${failure.viewsNeeded} are needed for a profile.`;
  if (failure.kind === 'views-of-different-size') return 'The views are of different sizes.';
  if (failure.kind === 'views-too-alike')
    return 'The views are too alike: tilt the sheet to all sides, and hold it nearer and farther.';
  if (failure.kind === 'profile-misfit')
    return `The corners do not fit a flat sheet: ${failure.rmsPx.toFixed(2)} px off where ${failure.limitPx.toFixed(2)} px are allowed. The sheet is bent, or the pictures are of more than one camera or zoom.`;
  if (failure.kind === 'picture-unsupported') return 'no picture that can be read';
  if (failure.kind === 'picture-broken') return 'the file is damaged';
  if (failure.kind === 'picture-too-large')
    return `too large: ${failure.megapixels.toFixed(0)} megapixels where ${failure.limitMegapixels} are allowed`;
  return failure.kind;
}
