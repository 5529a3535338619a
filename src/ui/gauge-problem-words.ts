/** What is wrong with a field of the gauge's form. */
export const gaugeProblemWords = {
  noName: 'Give it a name that you will know again.',
  noNumber: 'Type a number.',
  notANumber: (typed: string): string => `“${typed}” is not a number: digits with at most one point or comma.`,
  notPositive: (typed: string): string => `“${typed}” is no step: type a number above zero.`,
  beyondLimit: (typed: string, limit: string): string =>
    `${typed} is more than any gauge for faces has: ${limit} at most.`,
  tooLarge: 'This is too large.',
  servesNothing: 'Choose at least one measurement.',
  mixedUnits: 'Lengths and angles together: make two gauges of it, one for each scale.',
  inFuture: 'This day lies ahead: the last check was today or earlier.',
};
