import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { EXAMPLE_CAMERA_PROFILE } from '../../tests/support/example-profile.js';
import type { Estimate, FaceEstimates } from '../core/estimate/estimate.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { SweepFailure, SweepMeasurement } from '../core/estimate/sweep.js';
import { parseFromSweepWorker, parseToSweepWorker, SWEEP_FRAME_LIMIT } from './sweep-messages.js';

const HEAD = { v: 1, id: 7 };

const SETTINGS: MeasuringSettings = {
  gaze: 'far',
  workingDistanceMm: 400,
  printScale: 1,
  profile: EXAMPLE_CAMERA_PROFILE,
};

const ESTIMATE: Estimate = {
  value: 63,
  standardUncertainty: 0.5,
  low: 62,
  high: 64,
  unit: 'mm',
  budget: [{ source: 'camera', standardUncertainty: 0.5 }],
};

const ESTIMATES: FaceEstimates = {
  pdFar: ESTIMATE,
  pdShown: ESTIMATE,
  pdNear: ESTIMATE,
  monoPdR: ESTIMATE,
  monoPdL: ESTIMATE,
  monoNearR: ESTIMATE,
  monoNearL: ESTIMATE,
  apertureR: ESTIMATE,
  apertureL: ESTIMATE,
  headWidth: ESTIMATE,
  templeWidth: ESTIMATE,
  irisDiameter: ESTIMATE,
  distance: ESTIMATE,
  headYaw: { ...ESTIMATE, unit: 'deg' },
  headPitch: ESTIMATE,
  headRoll: ESTIMATE,
};

const MEASUREMENT: SweepMeasurement = {
  estimates: { ...ESTIMATES, pupilDiameterR: ESTIMATE },
  pixelsPerMm: 2,
  advice: [
    { kind: 'turn-further', rangeDeg: 10, usefulDeg: 20 },
    { kind: 'lean-more', ratio: 1.05, usefulRatio: 1.2 },
    { kind: 'more-frames', used: 8, useful: 16 },
    { kind: 'card-slipped', fromFrame: 1 },
    { kind: 'come-nearer', pixelsPerMm: 1 },
    { kind: 'eyes-elsewhere' },
  ],
  fates: ['used', 'slipped', 'misfit'],
  framesUsed: 1,
  slippedFromFrame: 1,
  yawsDeg: [-12, 0, null],
  distancesMm: [500, null, 480],
};

describe('messages to the sweep worker', () => {
  const request = {
    ...HEAD,
    kind: 'measure-sweep',
    frames: [exampleFeatures(), exampleFeatures()],
    settings: SETTINGS,
  };

  it('are read with all their parts', () => {
    expect(parseToSweepWorker(request)).toEqual(request);
    const withoutProfile = { ...request, settings: { ...SETTINGS, profile: null } };
    expect(parseToSweepWorker(withoutProfile)).toEqual(withoutProfile);
    expect(parseToSweepWorker({ ...HEAD, kind: 'cancel' })).toEqual({ ...HEAD, kind: 'cancel' });
  });

  it('are refused with senseless settings', () => {
    const parsed = (settings: object) => parseToSweepWorker({ ...request, settings });
    for (const part of Object.keys(SETTINGS)) expect(parsed({ ...SETTINGS, [part]: undefined }), part).toBeNull();
    expect(parsed({ ...SETTINGS, gaze: 'inward' })).toBeNull();
    expect(parsed({ ...SETTINGS, printScale: 0 })).toBeNull();
    expect(parsed({ ...SETTINGS, workingDistanceMm: Infinity })).toBeNull();
    for (const part of Object.keys(SETTINGS.profile!)) {
      expect(parsed({ ...SETTINGS, profile: { ...SETTINGS.profile, [part]: undefined } }), part).toBeNull();
    }
    expect(parsed({ ...SETTINGS, profile: { ...SETTINGS.profile, distortion: [0, 0, 0, 0] } })).toBeNull();
    expect(parsed({ ...SETTINGS, profile: { ...SETTINGS.profile, fx: -1 } })).toBeNull();
    const uncertainty = { ...SETTINGS.profile?.uncertainty, cx: -1 };
    expect(parsed({ ...SETTINGS, profile: { ...SETTINGS.profile, uncertainty } })).toBeNull();
  });

  it('are refused with more than there can be', () => {
    const parsed = (frames: readonly object[]) => parseToSweepWorker({ ...request, frames });
    expect(parsed(Array(SWEEP_FRAME_LIMIT).fill(exampleFeatures()))).not.toBeNull();
    expect(parsed(Array(SWEEP_FRAME_LIMIT + 1).fill(exampleFeatures()))).toBeNull();
    const landmarks = (count: number) => Array.from({ length: count }, () => ({ xPx: 1, yPx: 1, depthPx: 0 }));
    expect(parsed([{ ...exampleFeatures(), landmarks: landmarks(1000) }])).not.toBeNull();
    expect(parsed([{ ...exampleFeatures(), landmarks: landmarks(1001) }])).toBeNull();
  });

  it.each([
    ['no frames', { ...request, frames: undefined }],
    ['a frame that is none', { ...request, frames: [exampleFeatures(), {}] }],
    ['an unknown kind', { ...request, kind: 'measure' }],
    ['another version', { ...request, v: 2 }],
  ])('are refused with %s', (_, message) => {
    expect(parseToSweepWorker(message)).toBeNull();
  });
});

describe('messages from the sweep worker', () => {
  const measured = { ...HEAD, kind: 'sweep-measured', measurement: MEASUREMENT, workMs: 800 };
  const parsed = (change: object) => parseFromSweepWorker({ ...measured, measurement: { ...MEASUREMENT, ...change } });

  it('are read with all their parts', () => {
    expect(parseFromSweepWorker(measured)).toEqual(measured);
    for (const body of [
      { kind: 'progress', share: 0.5 },
      { kind: 'cancelled' },
      { kind: 'fault', code: 'failed', detail: 'x' },
    ]) {
      expect(parseFromSweepWorker({ ...HEAD, ...body })).toEqual({ ...HEAD, ...body });
    }
  });

  it.each<[SweepFailure]>([
    [{ kind: 'too-few-frames', usable: 2, needed: 6 }],
    [{ kind: 'card-not-still', longestRun: 3, needed: 6 }],
    [{ kind: 'frames-of-different-size' }],
    [{ kind: 'too-dark', meanLevel: 12, limitLevel: 40 }],
  ])('carry every failure with its facts: %j', (failure) => {
    const failed = { ...HEAD, kind: 'sweep-failed', failure, workMs: 1 };
    expect(parseFromSweepWorker(failed)).toEqual(failed);
    for (const fact of Object.keys(failure)) {
      expect(parseFromSweepWorker({ ...failed, failure: { ...failure, [fact]: undefined } }), fact).toBeNull();
    }
  });

  it('are refused where a part of the measurement is missing', () => {
    for (const part of Object.keys(MEASUREMENT)) expect(parsed({ [part]: undefined }), part).toBeNull();
    for (const name of Object.keys(ESTIMATES)) {
      expect(parsed({ estimates: { ...ESTIMATES, [name]: undefined } }), name).toBeNull();
    }
    for (const part of Object.keys(ESTIMATE)) {
      const damaged = { ...ESTIMATE, [part]: undefined };
      expect(parsed({ estimates: { ...ESTIMATES, pdFar: damaged } }), part).toBeNull();
      expect(parsed({ estimates: { ...ESTIMATES, distanceBetweenRims10: damaged } }), part).toBeNull();
    }
  });

  it.each([
    ['an estimate without doubt', { estimates: { ...ESTIMATES, pdFar: { ...ESTIMATE, standardUncertainty: 0 } } }],
    ['an estimate that is no number', { estimates: { ...ESTIMATES, pdFar: { ...ESTIMATE, value: Number.NaN } } }],
    [
      'a budget of an unknown source',
      {
        estimates: {
          ...ESTIMATES,
          pdFar: { ...ESTIMATE, budget: [{ source: 'toString', standardUncertainty: 1 }] },
        },
      },
    ],
    ['advice without its facts', { advice: [{ kind: 'turn-further', rangeDeg: 10 }] }],
    ['unknown advice', { advice: [{ kind: 'smile' }] }],
    ['an unknown fate', { fates: ['used', 'lost', 'misfit'] }],
    ['fewer angles than frames', { yawsDeg: [0, 1] }],
    ['more distances than frames', { distancesMm: [500, 500, 500, 500] }],
    ['more frames used than there are', { framesUsed: 4 }],
  ])('are refused with %s', (_, change) => {
    expect(parsed(change)).toBeNull();
  });
});
