import { describe, expect, it } from 'vitest';
import type { Advice } from '../core/camera/failure.js';
import type { CannotTellReason, Finding } from '../core/crosscheck/finding.js';
import type { BudgetSource } from '../core/estimate/estimate.js';
import type { SweepAdvice } from '../core/estimate/sweep.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { SweepGap } from '../session/sweep-coverage.js';
import type { FramesMissing, SweepTrouble } from '../session/sweep-frames.js';
import {
  adviceSentence,
  failureSaying,
  findingReason,
  findingWord,
  frameFailureWords,
  gapWords,
  sourceWords,
  sweepAdviceSentence,
  sweepFailureSaying,
} from './sentences.js';

// One of every kind. A record over the union's kinds does not compile where one is missing.
const FAILURES: { readonly [Kind in MeasuringFailure['kind']]: Extract<MeasuringFailure, { kind: Kind }> } = {
  'no-face': { kind: 'no-face' },
  'several-faces': { kind: 'several-faces', count: 2 },
  'no-card': { kind: 'no-card' },
  'several-cards': { kind: 'several-cards' },
  'card-not-flat': { kind: 'card-not-flat', residualPx: 3.25 },
  'card-tilted': { kind: 'card-tilted', tiltDeg: 22, limitDeg: 15 },
  'head-turned': { kind: 'head-turned', turnDeg: 21, limitDeg: 15 },
  'eyes-closed': { kind: 'eyes-closed', side: 'both' },
  'iris-not-found': { kind: 'iris-not-found', side: 'R' },
  blurred: { kind: 'blurred', edgeWidthPx: 6.5, limitPx: 4 },
  'too-dark': { kind: 'too-dark', meanLevel: 20, limitLevel: 40 },
  implausible: { kind: 'implausible', irisMm: 14.2 },
  'too-far': { kind: 'too-far', pixelsPerMm: 0.9, limitPixelsPerMm: 1.2 },
  'picture-unsupported': { kind: 'picture-unsupported', type: 'image/heic' },
  'picture-broken': { kind: 'picture-broken' },
  'video-unsupported': { kind: 'video-unsupported', type: 'video/x-msvideo' },
  'video-broken': { kind: 'video-broken' },
  'picture-too-large': { kind: 'picture-too-large', megapixels: 61, limitMegapixels: 50 },
  'camera-refused': { kind: 'camera-refused' },
  'camera-missing': { kind: 'camera-missing' },
  'camera-busy': { kind: 'camera-busy' },
  'camera-unplugged': { kind: 'camera-unplugged' },
  'camera-unsupported': { kind: 'camera-unsupported' },
  'model-not-loadable': { kind: 'model-not-loadable' },
  'vision-not-loadable': { kind: 'vision-not-loadable', part: 'card' },
  'vision-stopped': { kind: 'vision-stopped', part: 'landmarks' },
};

const ADVICE: { readonly [Kind in Advice['kind']]: Extract<Advice, { kind: Kind }> } = {
  'come-nearer': { kind: 'come-nearer', pixelsPerMm: 1.4 },
  'card-covered': { kind: 'card-covered', edge: 'left' },
  'turn-to-camera': { kind: 'turn-to-camera', turnDeg: 9 },
  'level-card': { kind: 'level-card', rollDeg: 8 },
  'card-on-forehead': { kind: 'card-on-forehead' },
  'check-points': { kind: 'check-points', what: 'irisL' },
};

const SOURCES: Readonly<Record<BudgetSource, true>> = {
  'card-size': true,
  'card-edges': true,
  'iris-edges': true,
  'lid-edges': true,
  'contact-depth': true,
  camera: true,
  'head-pose': true,
  'iris-size': true,
  gaze: true,
  midline: true,
  'head-shape': true,
  'between-frames': true,
};

/** A sentence for people: begins with a capital, ends with a full stop, and shows nothing of the code. */
function expectSentence(text: string): void {
  expect(text).toMatch(/^[A-Z“].*\.$/);
  expect(text).not.toMatch(/undefined|NaN|\[object|[a-z]-[a-z]+-[a-z]+:/);
}

describe('sentences', () => {
  it.each(Object.values(FAILURES))('say what happened and what to do next: $kind', (failure) => {
    const { what, next } = failureSaying(failure);
    expectSentence(what);
    expectSentence(next);
  });

  it('differ between failures', () => {
    const all = Object.values(FAILURES).map((failure) => failureSaying(failure).what);
    expect(new Set(all).size).toBe(all.length);
  });

  it('carry the facts', () => {
    expect(failureSaying(FAILURES['picture-too-large']).what).toContain('61');
    expect(failureSaying(FAILURES['picture-unsupported']).what).toContain('image/heic');
    expect(failureSaying(FAILURES['several-faces']).what).toContain('2');
    expect(failureSaying(FAILURES['too-far']).what).toContain('0.9');
  });

  it('do not ask for a JPEG where the file calls itself one', () => {
    for (const type of ['image/jpeg', 'image/png', 'image/webp']) {
      const { what, next } = failureSaying({ kind: 'picture-unsupported', type });
      expect(what).toContain('no picture that can be opened');
      expect(next).toContain('Copy it again');
    }
  });

  it('name the eye', () => {
    expect(failureSaying({ kind: 'eyes-closed', side: 'L' }).what).toContain('left eye');
    expect(failureSaying({ kind: 'eyes-closed', side: 'R' }).what).toContain('right eye');
    expect(failureSaying({ kind: 'eyes-closed', side: 'both' }).what).toContain('both eyes');
  });

  it.each(Object.values(ADVICE))('advise: $kind', (advice) => {
    expectSentence(adviceSentence(advice));
  });

  it.each(Object.keys(SOURCES) as BudgetSource[])('put the source of doubt %s into words', (source) => {
    expect(sourceWords(source)).toMatch(/^[a-z]/);
  });
});

describe('a finding that cannot tell', () => {
  const finding = (reason: CannotTellReason, cameraExpanded: number): Finding => ({
    kind: 'cannot-tell',
    reason,
    comparison: {
      name: 'apertureR',
      difference: 0.4,
      differenceLow: -2,
      differenceHigh: 2.8,
      handExpanded: 0.5,
      cameraExpanded,
      enNumber: 0.2,
      tolerance: { value: 1, status: 'chosen', source: 'chosen' },
    },
  });
  const tooUncertain: CannotTellReason = { kind: 'camera-too-uncertain', neededCameraExpanded: 1 };

  it('says how wide the picture’s doubt is, and asks for the lid marks only where they help', () => {
    const words = '±\u00a01.9 mm from one picture is too wide for ±\u00a01.0';
    expect(findingReason(finding(tooUncertain, 1.91), false)).toBe(words);
    expect(findingReason(finding(tooUncertain, 1.91), true)).toBe(`${words}; set the lid marks under the loupe`);
  });

  it('never calls a number too wide for the same number', () => {
    expect(findingReason(finding(tooUncertain, 1.04), false)).toContain(
      '±\u00a01.04 mm from one picture is too wide for ±\u00a01.00',
    );
  });

  it.each([
    [1.49, '1.4'],
    [0.3, '0.3'],
    [0.067, '0.06'],
  ])('rounds the deciding doubt %s down, so that it decides as written', (neededCameraExpanded, written) => {
    const words = findingReason(finding({ kind: 'between', neededCameraExpanded }, 0.9), true);
    expect(words).toBe(`too close to call: ±\u00a0${written} mm would decide`);
  });

  it('is said of R and L in the plural', () => {
    const { comparison } = finding(tooUncertain, 2);
    expect(findingWord({ kind: 'disagrees', comparison }, true)).toBe('disagree');
    expect(findingWord({ kind: 'agrees', comparison }, true)).toBe('agree');
    expect(findingWord({ kind: 'disagrees', comparison })).toBe('disagrees');
  });
});

describe('sentences of sweeps', () => {
  type SweepOnly = Exclude<SweepTrouble['kind'], MeasuringFailure['kind']>;
  const OF_SWEEPS: { readonly [Kind in SweepOnly]: Extract<SweepTrouble, { kind: Kind }> } = {
    'too-few-frames': { kind: 'too-few-frames', usable: 3, needed: 6 },
    'card-not-still': { kind: 'card-not-still', longestRun: 4, needed: 6 },
    'frames-of-different-size': { kind: 'frames-of-different-size' },
  };
  const SWEEP_ADVICE: { readonly [Kind in SweepAdvice['kind']]: Extract<SweepAdvice, { kind: Kind }> } = {
    'turn-further': { kind: 'turn-further', rangeDeg: 11, usefulDeg: 16 },
    'lean-more': { kind: 'lean-more', ratio: 1.04, usefulRatio: 1.15 },
    'more-frames': { kind: 'more-frames', used: 7, useful: 12 },
    'card-slipped': { kind: 'card-slipped', fromFrame: 8 },
    'come-nearer': { kind: 'come-nearer', pixelsPerMm: 1.4 },
    'eyes-elsewhere': { kind: 'eyes-elsewhere' },
  };
  const NONE_MISSING: FramesMissing = { missed: 0, commonest: null, leftOut: 0 };
  const GAPS: Readonly<Record<SweepGap, true>> = { 'turned-R': true, 'turned-L': true, distance: true, frames: true };

  it.each([...Object.values(OF_SWEEPS), ...Object.values(FAILURES)])(
    'say why a sweep was not measured and what to do next: $kind',
    (failure) => {
      for (const missing of [NONE_MISSING, { missed: 3, commonest: FAILURES['eyes-closed'], leftOut: 2 }]) {
        const { what, next } = sweepFailureSaying(failure, missing);
        expectSentence(what);
        expectSentence(next);
      }
    },
  );

  it('carry the facts', () => {
    const lacking = (missed: number): FramesMissing => ({ missed, commonest: FAILURES['no-card'], leftOut: 0 });
    const tooFew = OF_SWEEPS['too-few-frames'];
    expect(sweepFailureSaying(tooFew, lacking(3)).what).toBe(
      'Only 3 frames could be used, and a sweep needs 6. Most of the others: card not seen.',
    );
    expect(sweepFailureSaying(tooFew, lacking(1)).what).toContain('The other one: card not seen.');
    expect(sweepFailureSaying({ ...tooFew, usable: 1 }, NONE_MISSING).what).toContain('Only 1 frame ');
    // whoever left frames out can put them back, and need not take the sweep again
    expect(sweepFailureSaying(tooFew, { ...NONE_MISSING, leftOut: 4 }).next).toMatch(/^Put frames back/);
    // the place among the frames that were measured is not the number on the screen
    expect(sweepAdviceSentence(SWEEP_ADVICE['card-slipped'], (place) => place + 3)).toContain('at frame 11,');
    expect(sweepAdviceSentence({ kind: 'turn-further', rangeDeg: 3, usefulDeg: 16 }, (place) => place)).toContain(
      'hardly turned',
    );
    expect(sweepAdviceSentence(SWEEP_ADVICE['lean-more'], (place) => place)).toContain('only 4 % farther');
  });

  it.each(Object.values(SWEEP_ADVICE))('advise: $kind', (advice) => {
    expectSentence(sweepAdviceSentence(advice, (place) => place + 1));
  });

  it.each(Object.values(FAILURES))('name a frame that failed in a few words: $kind', (failure) => {
    const words = frameFailureWords(failure);
    expect(words).toMatch(/^[a-z][a-z, ]+$/);
    expect(words.length).toBeLessThan(40);
  });

  it.each(Object.keys(GAPS) as SweepGap[])('name what is missing: %s', (gap) => {
    expect(gapWords(gap)).toMatch(/^[a-z ]+$/);
  });

  it('say “sweep” where the numbers come from one', () => {
    const comparison = {
      name: 'pdFar',
      difference: 0.4,
      differenceLow: -2,
      differenceHigh: 2.8,
      handExpanded: 0.5,
      cameraExpanded: 1.9,
      enNumber: 0.2,
      tolerance: { value: 1, status: 'chosen', source: 'chosen' },
    } as const;
    const reason = { kind: 'camera-too-uncertain', neededCameraExpanded: 1 } as const;
    expect(findingReason({ kind: 'cannot-tell', reason, comparison }, false, 'sweep')).toContain('from one sweep');
  });
});
