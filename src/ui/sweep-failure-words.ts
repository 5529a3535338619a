import type { Saying } from './saying.js';

function frames(count: number): string {
  return count === 1 ? '1 frame' : `${count} frames`;
}

function tooFew(usable: number, needed: number): string {
  return `Only ${frames(usable)} could be used, and a sweep needs ${needed}.`;
}

const TAKE_AGAIN =
  'Take the sweep again, slowly, with the whole card and both eyes in the frame and light from the front. Or measure the best frame alone.';

/** What kept a sweep from being measured, and the way out. */
export const sweepFailureWords = {
  tooFewLeft: (usable: number, needed: number): Saying => ({
    what: `With what was left out, only ${frames(usable)} could be used, and a sweep needs ${needed}.`,
    next: 'Put frames back that were left out, or measure the best frame as one picture.',
  }),
  tooFew: (usable: number, needed: number): Saying => ({ what: tooFew(usable, needed), next: TAKE_AGAIN }),
  /** `why` is what most of the others lacked, which are so many */
  tooFewAs: (usable: number, needed: number, others: number, why: string): Saying => ({
    what: `${tooFew(usable, needed)} ${others === 1 ? 'The other one' : 'Most of the others'}: ${why}.`,
    next: TAKE_AGAIN,
  }),
  cardNotStill: (longestRun: number, needed: number): Saying => ({
    what: `The card never sat still on the face: at most ${frames(longestRun)} in a row belong together, and ${needed} are needed.`,
    next: 'Hold the card firmly, with a finger of the same hand on the head, and move head and card as one. Or measure the best frame alone.',
  }),
  differentSizes: {
    what: 'These pictures have different sizes, so they were not taken by one camera in one go.',
    next: 'Choose only pictures of one sweep, not cropped and not turned, or choose the best of them alone.',
  },
  mostly: (why: string): string => `The frames of this sweep could not be measured. Most of them: ${why}.`,
};
