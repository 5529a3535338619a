import type { Finding } from '../core/crosscheck/finding.js';

/** What the cross-check says of a reading, and why in a few words. Amounts carry their unit. */
export const findingWords = {
  ofOne: { agrees: 'agrees', disagrees: 'disagrees', 'cannot-tell': 'cannot tell' } satisfies Record<
    Finding['kind'],
    string
  >,
  /** of R and L together */
  ofBoth: { agrees: 'agree', disagrees: 'disagree', 'cannot-tell': 'cannot tell' } satisfies Record<
    Finding['kind'],
    string
  >,
  within: 'within the tolerance',
  outside: 'outside the tolerance, even allowing for the doubt of both: read again',
  tooWide: {
    picture: (doubt: string, tolerance: string): string =>
      `±\u00a0${doubt} from one picture is too wide for ±\u00a0${tolerance}`,
    sweep: (doubt: string, tolerance: string): string =>
      `±\u00a0${doubt} from one sweep is too wide for ±\u00a0${tolerance}`,
  },
  /** what makes the picture at hand surer, behind the reason */
  setLidMarks: (reason: string): string => `${reason}; set the lid marks under the loupe`,
  between: (needed: string): string => `too close to call: ±\u00a0${needed} would decide`,
  handUnsure: (needed: string): string =>
    `the hand reading is too unsure; within ±\u00a0${needed} would decide: read again`,
};
