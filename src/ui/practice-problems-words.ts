/** Why something that was typed in the practice's dialog cannot be used, and what counts meanwhile. */
export const practiceProblemsWords = {
  tolerance: (typed: string, counts: string): string =>
    `“${typed}” is no tolerance: type a number above zero, or nothing. Until then ± ${counts} counts.`,
  tooWide: (typed: string, limit: string, counts: string): string =>
    `± ${typed} would never find anything: ± ${limit} at most. Until then ± ${counts} counts.`,
  unfinished: 'This gauge is not kept yet: keep it, or cancel.',
  notKept: 'Not kept yet: see what is said beside the fields.',
  noDate: 'This is no day of the calendar yet: finish it, or empty the field.',
};
