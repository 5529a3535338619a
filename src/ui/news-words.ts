/** What a screen reader is told of what does not fit. */
export const newsWords = {
  misfit: (place: string, what: string): string => `${place}: ${what}.`,
};
