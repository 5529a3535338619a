import { describe, expect, it } from 'vitest';
import { EVERY_MEASURING_FAILURE as FAILURES } from '../../tests/support/every-measuring-failure.js';
import { expectSentence } from '../../tests/support/expect-sentence.js';
import type { SweepAdvice } from '../core/estimate/sweep.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { SweepGap } from '../session/sweep-coverage.js';
import type { FramesMissing, SweepTrouble } from '../session/sweep-frames.js';
import { frameFailureText, gapWords, sweepAdviceSentence, sweepFailureSaying } from './sweep-sentences.js';

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
    const words = frameFailureText(failure);
    expect(words).toMatch(/^[a-z][a-z, ]+$/);
    expect(words.length).toBeLessThan(40);
  });

  it.each(Object.keys(GAPS) as SweepGap[])('name what is missing: %s', (gap) => {
    expect(gapWords(gap)).toMatch(/^[a-z ]+$/);
  });
});
