import { describe, expect, it } from 'vitest';
import type { BoardFailure } from '../core/camera/board.js';
import type { ProfileWeakness } from '../core/camera/profile-quality.js';
import type { FrameVerdict } from '../session/profile-views.js';
import {
  boardFailureSaying,
  boardFailureWords,
  percent,
  profileFileSentence,
  verdictSentence,
  weaknessSentence,
} from './profile-sentences.js';

/** One or more whole sentences. */
const SENTENCES = /^([“A-Z0-9].*[.])$/;

describe('sentences about views and profiles', () => {
  const failures: readonly BoardFailure[] = [
    { kind: 'no-board', cornersFound: 0, cornersNeeded: 6 },
    { kind: 'no-board', cornersFound: 4, cornersNeeded: 6 },
    { kind: 'too-few-views', views: 3, viewsNeeded: 6 },
    { kind: 'views-of-different-size' },
    { kind: 'views-too-alike' },
    { kind: 'profile-misfit', rmsPx: 4.21, limitPx: 0.6 },
  ];

  it.each(failures)('say what happened and what to do for %j', (failure) => {
    const { what, next } = boardFailureSaying(failure);
    expect(what).toMatch(SENTENCES);
    expect(next).toMatch(SENTENCES);
    expect(boardFailureWords(failure)).not.toBe('');
  });

  it('carry the facts', () => {
    expect(boardFailureSaying({ kind: 'no-board', cornersFound: 4, cornersNeeded: 6 }).what).toMatch(/4 corners.*6/);
    expect(boardFailureSaying({ kind: 'profile-misfit', rmsPx: 4.21, limitPx: 0.6 }).what).toMatch(
      /4\.21 pixels.*0\.60.*more than one camera/,
    );
  });

  it('pass failures of the device on', () => {
    expect(boardFailureSaying({ kind: 'camera-unplugged' }).what).toMatch(/unplugged/);
  });

  const weaknesses: readonly ProfileWeakness[] = [
    { kind: 'few-views', views: 6, wanted: 8 },
    { kind: 'little-coverage', coverage: 0.41, wanted: 0.6 },
    { kind: 'corners-uncovered', corners: ['left-top'] },
    { kind: 'little-tilt', direction: 'across', spreadDeg: 12.4, wantedDeg: 35 },
    { kind: 'little-tilt', direction: 'down', spreadDeg: 12.4, wantedDeg: 35 },
    { kind: 'one-distance', ratio: 1.1, wanted: 1.3 },
    { kind: 'focal-length-doubtful', relativeUncertainty: 0.0081, wanted: 0.003 },
    { kind: 'poor-fit', rmsPx: 0.49, wantedPx: 0.25 },
  ];

  it.each(weaknesses)('say what would help for %j', (weakness) => {
    expect(weaknessSentence(weakness, false)).toMatch(SENTENCES);
  });

  it('name corners as they are seen, mirrored or not', () => {
    const uncovered: ProfileWeakness = { kind: 'corners-uncovered', corners: ['left-top', 'right-bottom'] };
    expect(weaknessSentence(uncovered, false)).toMatch(/upper left and lower right corners/);
    expect(weaknessSentence(uncovered, true)).toMatch(/upper right and lower left corners/);
  });

  it.each<FrameVerdict | 'blurred' | 'taken'>([
    'no-sheet',
    'moving',
    'nothing-new',
    'worth-taking',
    'blurred',
    'taken',
  ])('say what the camera sees: %s', (verdict) => {
    expect(verdictSentence(verdict)).toMatch(SENTENCES);
  });

  it('tell foreign, newer and damaged files apart', () => {
    const sentences = [
      profileFileSentence({ kind: 'no-profile' }),
      profileFileSentence({ kind: 'newer-version', version: 3, knownVersion: 1 }),
      profileFileSentence({ kind: 'damaged', place: null }),
      profileFileSentence({ kind: 'damaged', place: 'profile.fx' }),
    ];
    expect(new Set(sentences).size).toBe(4);
    for (const sentence of sentences) expect(sentence).toMatch(SENTENCES);
    expect(sentences[3]).toContain('a number in it cannot be right');
  });
});

describe('a share', () => {
  it('is written in per cent', () => {
    expect(percent(0.0012, 2)).toBe('0.12\u00a0%');
  });
});
