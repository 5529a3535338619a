import { describe, expect, it } from 'vitest';
import type { SightChange } from '../../tests/support/example-sight.js';
import { exampleSight } from '../../tests/support/example-sight.js';
import { TILT_LIMIT_DEG } from '../core/camera/find-card.js';
import {
  CLOSED_SHARE,
  DARKEST_WHITE,
  NOD_LIMIT_DEG,
  SEEN_SHARE_ADVICE,
  SLANT_ADVICE_DEG,
  softestIrisPx,
} from '../core/camera/picture-limits.js';
import { NEAR_ENOUGH_PIXELS_PER_MM } from '../core/estimate/face-estimates.js';
import type { LiveProblem } from './live-problems.js';
import { livePixelsPerMm, liveProblems } from './live-problems.js';

const problems = (change: SightChange, before: readonly LiveProblem[] = []) =>
  liveProblems(exampleSight(change), before);

const BLURRED = {
  centre: { xPx: 578, yPx: 400 },
  radiusPx: 12,
  uncertaintyPx: 0.3,
  source: 'edges',
  softness: softestIrisPx(12) / 12,
} as const;
const GUESSED = { ...BLURRED, source: 'landmarks', softness: null } as const;

describe('liveProblems', () => {
  it('are none where everything is as it should be', () => {
    expect(problems({})).toEqual([]);
  });

  // Each limit is that at which the measuring of the picture would refuse or advise: it must have been told by then.
  it.each<[string, SightChange, LiveProblem]>([
    ['no face', { face: null }, { kind: 'no-face' }],
    ['a dark face', { face: { whiteLevel: DARKEST_WHITE } }, { kind: 'more-light' }],
    ['too few pixels', { pixelsPerMm: NEAR_ENOUGH_PIXELS_PER_MM - 0.01 }, { kind: 'nearer' }],
    ['no card', { card: null }, { kind: 'no-card' }],
    // Turned to the wearer's left: back to the right.
    ['a face turned left', { face: { yawDeg: 10 } }, { kind: 'face-turned', back: 'R' }],
    ['a face turned right', { face: { yawDeg: -10 } }, { kind: 'face-turned', back: 'L' }],
    ['a lowered chin', { face: { nodDeg: NOD_LIMIT_DEG } }, { kind: 'chin', move: 'up' }],
    ['a raised chin', { face: { nodDeg: -NOD_LIMIT_DEG } }, { kind: 'chin', move: 'down' }],
    ['a leaning card', { card: { tiltDeg: TILT_LIMIT_DEG } }, { kind: 'card-leans' }],
    ['a card lower on the left', { card: { slantDeg: SLANT_ADVICE_DEG } }, { kind: 'card-level', raise: 'L' }],
    ['a card lower on the right', { card: { slantDeg: -SLANT_ADVICE_DEG } }, { kind: 'card-level', raise: 'R' }],
    [
      'a covered edge',
      { card: { edgeSupport: [0.9, 0.9, SEEN_SHARE_ADVICE - 0.01, 0.9] } },
      { kind: 'card-hidden', edge: 'bottom' },
    ],
    ['a closed eye', { face: { opening: { R: 0.7, L: CLOSED_SHARE - 0.01 } } }, { kind: 'eyes-closed', side: 'L' }],
    ['a blurred eye', { face: { iris: { R: BLURRED, L: BLURRED } } }, { kind: 'sharper' }],
    ['a blurred card', { card: { edgeWidthPx: 9 } }, { kind: 'sharper' }],
    ['an iris without an edge', { face: { iris: { R: GUESSED, L: BLURRED } } }, { kind: 'eyes-hidden' }],
    ['light from the right', { face: { lightRatio: 2.5 } }, { kind: 'light-from-front', darker: 'L' }],
    ['light from the left', { face: { lightRatio: 0.4 } }, { kind: 'light-from-front', darker: 'R' }],
    ['a face that is too near', { pixelsPerMm: 3.8 }, { kind: 'farther' }],
    ['a face at the rim', { movedPx: 500 }, { kind: 'into-frame' }],
  ])('tell %s', (_, change, problem) => {
    expect(problems(change)).toContainEqual(problem);
  });

  it('go later than they come', () => {
    const near = { pixelsPerMm: NEAR_ENOUGH_PIXELS_PER_MM + 0.03 };
    expect(problems(near)).toEqual([]);
    const far = problems({ pixelsPerMm: NEAR_ENOUGH_PIXELS_PER_MM - 0.03 });
    expect(problems(near, far)).toEqual([{ kind: 'nearer' }]);
    expect(problems({ pixelsPerMm: NEAR_ENOUGH_PIXELS_PER_MM + 0.15 }, far)).toEqual([]);
  });

  it('put what helps most first: nobody levels a card that is too far away to be seen', () => {
    const all = problems({ pixelsPerMm: 0.9, card: { slantDeg: 20 }, face: { yawDeg: 14 } });
    expect(all.map(({ kind }) => kind)).toEqual(['nearer', 'face-turned', 'card-level']);
  });
});

describe('livePixelsPerMm', () => {
  it('tells near from far before there is a card, by the irises', () => {
    // 11.71 mm: Ruefer, Schroeder and Erb 2005; the example's irises are 11.70 mm wide
    expect(livePixelsPerMm(exampleSight({ card: null, pixelsPerMm: 1.5 }))).toBeCloseTo((1.5 * 11.7) / 11.71, 6);
    expect(livePixelsPerMm(exampleSight({ face: null }))).toBeNull();
  });
});
