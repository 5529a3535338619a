import type { Saying } from './saying.js';

const HOLD_SHEET = 'Hold the printed sheet nearer, flat, in more light, with no fingers on the pattern.';

/** Why pictures of the camera sheet gave no view or no profile, and the way out. */
export const boardFailureWords = {
  noBoard: { what: 'The camera sheet was not found.', next: HOLD_SHEET },
  littleOfBoard: (found: number, needed: number): Saying => ({
    what: `Too little of the camera sheet was found: ${found} corners, and ${needed} are needed.`,
    next: HOLD_SHEET,
  }),
  /** of one picture, in a few words */
  leftOut: 'left out: the sheet was not found',
  tooFewViews: (views: number, needed: number): Saying => ({
    what: `${views} usable views are too few: a profile needs ${needed}.`,
    next: 'Take or add more, with the sheet in other places and tilts.',
  }),
  differentSizes: {
    what: 'The pictures have different sizes, so they are not of one camera at one resolution.',
    next: 'Choose only pictures of one size, uncropped.',
  },
  tooAlike: {
    what: 'All views are too much alike to tell the lens from them.',
    next: 'Tilt the sheet to all sides, and hold it nearer and farther away.',
  },
  misfit: (rmsPx: string, limitPx: string): Saying => ({
    what: `The corners fit badly: off by ${rmsPx} pixels, where ${limitPx} are the limit. The sheet is bent, or the pictures are of more than one camera or zoom.`,
    next: 'Use pictures of one camera at one zoom, with the sheet fixed to something stiff and flat. Then start again.',
  }),
};
