import type { ComparedPicture, ComparedSweep } from './compared.js';
import type { MeasuredPicture, MeasuredSweep, WrittenEstimate } from './measured-picture.js';
import { gatherSweeps, parseTruth } from './truth.js';

/** An entry of a truth.json: a head of 64 mm PD, 500 mm away, looking far; 2 px/mm. */
export function truthEntry(file: string, changes: Readonly<Record<string, unknown>> = {}): Record<string, unknown> {
  return {
    file,
    width: 1280,
    height: 720,
    fx: 1000,
    fy: 1000,
    cx: 640,
    cy: 360,
    distortion: null,
    gaze: 'far',
    truePdFar: 64,
    eyePlaneDistance: 500,
    headWidth: 150,
    yawDeg: -4,
    irisRgb: [60, 60, 60],
    card: { kind: 'light', position: 'forehead', occluded: false },
    ...changes,
  };
}

/** An estimate with the interval of a normal distribution. */
export function estimateOf(valueMm: number, uMm: number): WrittenEstimate {
  return { valueMm, uMm, lowMm: valueMm - 1.96 * uMm, highMm: valueMm + 1.96 * uMm };
}

export function comparedPicture(
  entry: Record<string, unknown>,
  outcome: Partial<MeasuredPicture> = {},
): ComparedPicture {
  const [truth] = parseTruth([entry]);
  if (truth === undefined) throw new Error('One entry gives one truth.');
  return {
    truth,
    measured: {
      file: truth.file,
      ok: true,
      reason: null,
      ms: 300,
      estimates: {},
      irisPx: null,
      cardPx: null,
      ...outcome,
    },
  };
}

export function comparedSweep(
  entries: readonly Record<string, unknown>[],
  outcome: Partial<MeasuredSweep> = {},
): ComparedSweep {
  const [truth] = gatherSweeps(parseTruth(entries));
  if (truth === undefined) throw new Error('The entries belong to no sweep.');
  return {
    truth,
    measured: {
      sweep: truth.sweep,
      ok: true,
      reason: null,
      ms: 6000,
      adjustmentMs: 700,
      framesGiven: entries.length,
      framesUsed: entries.length,
      slippedFromFrame: null,
      estimates: {},
      ...outcome,
    },
  };
}
