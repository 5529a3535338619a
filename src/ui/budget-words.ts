/** Half widths of the 95 % interval before and after, with their signs and the unit. */
export interface RemedyFacts {
  readonly from: string;
  readonly to: string;
}

function wouldBring(what: string, { from, to }: RemedyFacts): string {
  return `${what} would bring this from ${from} to about ${to}.`;
}

/** Where the camera's doubt comes from, and what would help most. */
export const budgetWords = {
  helps: 'What would help most:',
  legend: 'Bars and percentages are shares of the variance; lengths are one standard deviation of each source.',
  /** the sources too small to be named one by one */
  smallSources: (count: number): string => `${count} smaller ones together`,
  noRemedy: 'No single step would make this much surer.',
  remedies: {
    'take-sweep': (facts: RemedyFacts): string => wouldBring('A sweep', facts),
    'make-profile': (facts: RemedyFacts): string => wouldBring('A profile of this camera', facts),
    'come-nearer': (facts: RemedyFacts & { readonly distanceCm: string }): string =>
      wouldBring(`Coming nearer, to about ${facts.distanceCm} cm from the camera,`, facts),
    'card-on-forehead': (facts: RemedyFacts): string => wouldBring('Holding the card on the forehead', facts),
    'card-nearer-eyes': (facts: RemedyFacts): string =>
      wouldBring('Holding the card nearer the eyes, just above the brows,', facts),
    'use-bought-card': (facts: RemedyFacts): string => wouldBring('A bought card in place of the printed one', facts),
    'place-lids-by-hand': (facts: RemedyFacts): string => wouldBring('Setting the lid marks under the loupe', facts),
    'place-midline-by-hand': (facts: RemedyFacts): string => wouldBring('Setting the midline under the loupe', facts),
    'repeat-sweep': (facts: RemedyFacts): string => wouldBring('A second sweep, and the mean of both,', facts),
    'repeat-picture': (facts: RemedyFacts): string => wouldBring('A second picture, and the mean of both,', facts),
  },
};
