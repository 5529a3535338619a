import { describe, expect, it } from 'vitest';
import { EVERY_MEASURING_FAILURE } from '../../tests/support/every-measuring-failure.js';
import type { CameraHope } from '../session/camera-recovery.js';
import { isWorthTrying } from '../session/camera-recovery.js';
import { goesOnSentence, hintSentence } from './live-sentences.js';

const CONTEXT = { gaze: 'camera', shutter: 'by-itself' } as const;

describe('hintSentence', () => {
  it('names the edges of the card by the wearer’s sides, which the mirrored picture shows where they are', () => {
    // In the unmirrored picture the wearer's left is at the right.
    expect(hintSentence({ kind: 'card-hidden', edge: 'right' }, CONTEXT)).toBe('Keep the card’s left edge free.');
    expect(hintSentence({ kind: 'card-hidden', edge: 'left' }, CONTEXT)).toBe('Keep the card’s right edge free.');
    expect(hintSentence({ kind: 'card-hidden', edge: 'top' }, CONTEXT)).toBe('Keep the card’s upper edge free.');
  });

  it('asks for the gaze that the picture is to have', () => {
    expect(hintSentence({ kind: 'look' }, CONTEXT)).toMatch(/into the camera lens/);
    expect(hintSentence({ kind: 'look' }, { ...CONTEXT, gaze: 'far' })).toMatch(/past the camera/);
  });

  it('does not promise to take the picture where that is left to a hand', () => {
    expect(hintSentence({ kind: 'all-right' }, CONTEXT)).toMatch(/is taken/);
    expect(hintSentence({ kind: 'all-right' }, { ...CONTEXT, shutter: 'by-hand' })).toMatch(/take the picture/);
  });
});

describe('goesOnSentence', () => {
  it('promises to go on by itself where that is so, and nowhere else', () => {
    const hopes: readonly CameraHope[] = [
      { kind: 'devices' },
      { kind: 'page-shown' },
      { kind: 'time-passed' },
      { kind: 'permission', isGranted: true },
    ];
    for (const failure of Object.values(EVERY_MEASURING_FAILURE)) {
      const comesBack = hopes.some((hope) => isWorthTrying(failure, hope));
      expect([failure.kind, goesOnSentence(failure) !== null]).toEqual([failure.kind, comesBack]);
    }
  });
});
