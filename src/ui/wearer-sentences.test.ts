import { describe, expect, it } from 'vitest';
import { EVERY_MEASURING_FAILURE } from '../../tests/support/every-measuring-failure.js';
import { expectSentence } from '../../tests/support/expect-sentence.js';
import type { Advice } from '../core/camera/failure.js';
import type { SweepAdvice } from '../core/estimate/sweep.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { SweepTrouble } from '../session/sweep-frames.js';
import type { InvitationFailure } from '../session/invitation.js';
import type { SealFailure } from '../session/sealing.js';
import type { TakenEstimates } from '../session/wearer-visit.js';
import { words } from './language.js';
import { betterSentences, refusedSaying, wearerFailureSaying, wearerSealSaying } from './wearer-sentences.js';

type OnlyOfSweeps = Exclude<SweepTrouble['kind'], MeasuringFailure['kind']>;
const OF_SWEEPS: { readonly [Kind in OnlyOfSweeps]: Extract<SweepTrouble, { kind: Kind }> } = {
  'too-few-frames': { kind: 'too-few-frames', usable: 3, needed: 6 },
  'card-not-still': { kind: 'card-not-still', longestRun: 4, needed: 6 },
  'frames-of-different-size': { kind: 'frames-of-different-size' },
};
const REFUSALS: { readonly [Kind in InvitationFailure['kind']]: Extract<InvitationFailure, { kind: Kind }> } = {
  'no-invitation': { kind: 'no-invitation' },
  damaged: { kind: 'damaged' },
  'newer-version': { kind: 'newer-version', version: 2, knownVersion: 1 },
  expired: { kind: 'expired', expiresOn: '2026-03-15', practice: 'Optik Beispiel' },
};
const SEALING: { readonly [Kind in SealFailure['kind']]: Extract<SealFailure, { kind: Kind }> } = {
  'sealing-not-loadable': { kind: 'sealing-not-loadable' },
  'sealing-unsupported': { kind: 'sealing-unsupported' },
  'no-recipient': { kind: 'no-recipient', recipient: 'age1' },
  'passphrase-empty': { kind: 'passphrase-empty' },
};
const ADVICE: Readonly<Record<(Advice | SweepAdvice)['kind'], true>> = {
  'turn-further': true,
  'lean-more': true,
  'more-frames': true,
  'card-slipped': true,
  'come-nearer': true,
  'eyes-elsewhere': true,
  'card-covered': true,
  'turn-to-camera': true,
  'level-card': true,
  'card-on-forehead': true,
  'check-points': true,
};

describe('what a distant wearer is told', () => {
  it.each([...Object.values(EVERY_MEASURING_FAILURE), ...Object.values(OF_SWEEPS)])(
    'says what went wrong and what to do, without numbers: $kind',
    (failure) => {
      const { what, next } = wearerFailureSaying(failure, true);
      expectSentence(what);
      expectSentence(next);
      expect(what + next).not.toMatch(/\d/);
    },
  );

  it.each(Object.values(EVERY_MEASURING_FAILURE))('has a hint for while the camera runs: $kind', ({ kind }) => {
    expectSentence(words.wearer.hints[kind]);
    expect(words.wearer.hints[kind]).not.toMatch(/\d/);
  });

  it('blames the network where there is none', () => {
    expect(wearerFailureSaying({ kind: 'model-not-loadable' }, false)).toBe(words.wearer.noNetwork);
    expect(wearerSealSaying({ kind: 'sealing-not-loadable' }, false)).toBe(words.wearer.noNetwork);
    expect(wearerFailureSaying({ kind: 'camera-refused' }, false)).toBe(words.wearer.failure['camera-refused']);
  });

  it.each(Object.values(REFUSALS))('says why a link does not work: $kind', (failure) => {
    const { what, next } = refusedSaying(failure);
    expectSentence(what);
    expectSentence(next);
  });

  it('names the day and the practice of an invitation that is over', () => {
    const { what, next } = refusedSaying(REFUSALS.expired);
    expect(what).toContain('15 March 2026');
    expect(next).toContain('Optik Beispiel');
  });

  it.each(Object.values(SEALING))('says why there is no file: $kind', (failure) => {
    const { what, next } = wearerSealSaying(failure, true);
    expectSentence(what);
    expectSentence(next);
  });

  it('has a sentence for every advice, and says what the conditions cost', () => {
    for (const kind of Object.keys(ADVICE) as (Advice | SweepAdvice)['kind'][]) {
      expectSentence(words.wearer.advice[kind]);
    }
    const advice: readonly SweepAdvice[] = [
      { kind: 'come-nearer', pixelsPerMm: 1.1 },
      { kind: 'eyes-elsewhere' },
      { kind: 'eyes-elsewhere' },
    ];
    const taken = { kind: 'sweep', measurement: { advice } } as unknown as TakenEstimates;
    expect(betterSentences(taken, { glassesOff: false, evenLight: true, cardFlat: true })).toEqual([
      words.wearer.advice['come-nearer'],
      words.wearer.advice['eyes-elsewhere'],
      words.wearer.conditions.glasses,
    ]);
  });
});
