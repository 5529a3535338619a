import type { SweepGap } from '../session/sweep-coverage.js';

/** What a sweep still lacks, in words that go on a list. */
export const sweepGapWords = {
  'turned-R': 'turned to the right',
  'turned-L': 'turned to the left',
  distance: 'nearer and farther',
  frames: 'more frames',
} satisfies Record<SweepGap, string>;
