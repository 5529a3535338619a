import { GAUGE_LIMITS, type GaugeDraft, type GaugeProblem } from './practice-gauge-draft.js';

/** What is wrong with a field of the gauge's form. */
export function gaugeProblemSentence(problem: GaugeProblem, field: keyof GaugeDraft, typed: string): string {
  switch (problem) {
    case 'empty':
      return field === 'name' ? 'Give it a name that you will know again.' : 'Type a number.';
    case 'not-a-number':
      return `“${typed.trim()}” is not a number: digits with at most one point or comma.`;
    case 'not-positive':
      return `“${typed.trim()}” is no step: type a number above zero.`;
    case 'too-large':
      return field === 'resolution' || field === 'zeroOffset' || field === 'bias'
        ? `${typed.trim()} is more than any gauge for faces has: ${GAUGE_LIMITS[field]} at most.`
        : 'This is too large.';
    case 'serves-nothing':
      return 'Choose at least one measurement.';
    case 'mixed-units':
      return 'Lengths and angles together: make two gauges of it, one for each scale.';
    case 'in-future':
      return 'This day lies ahead: the last check was today or earlier.';
  }
}
