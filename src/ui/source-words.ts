export const sourceWords = {
  /** Where a number comes from, as the tables cite it in English. A language may know some of these texts in its own words. */
  cited: (source: string): string => source,
};
