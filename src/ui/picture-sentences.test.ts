import { describe, expect, it } from 'vitest';
import { EVERY_MEASURING_FAILURE as FAILURES } from '../../tests/support/every-measuring-failure.js';
import { expectSentence } from '../../tests/support/expect-sentence.js';
import type { Advice } from '../core/camera/failure.js';
import { adviceSentence, failureSaying } from './picture-sentences.js';

const ADVICE: { readonly [Kind in Advice['kind']]: Extract<Advice, { kind: Kind }> } = {
  'come-nearer': { kind: 'come-nearer', pixelsPerMm: 1.4 },
  'card-covered': { kind: 'card-covered', edge: 'left' },
  'turn-to-camera': { kind: 'turn-to-camera', turnDeg: 9 },
  'level-card': { kind: 'level-card', rollDeg: 8 },
  'card-on-forehead': { kind: 'card-on-forehead' },
  'check-points': { kind: 'check-points', what: 'irisL' },
};

describe('sentences of pictures', () => {
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
});
