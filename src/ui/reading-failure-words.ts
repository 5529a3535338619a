/** Why what was typed is no reading. Sizes, values and limits carry their unit. */
export const readingFailureWords = {
  notANumber: (typed: string): string => `“${typed}” is not a number.`,
  hints: {
    otherUnit: {
      mm: 'Type it in mm, and leave the unit out.',
      deg: 'Type it in degrees, and leave the unit out.',
    },
    ownUnit: 'Leave the unit out.',
    ownUnitBehind: (number: string): string => `Leave the unit out: ${number}.`,
    joined: 'Put a space between repeats, such as 63 63.5 62.5.',
    digits: 'Type digits with at most one decimal point or comma, such as 63.5.',
  },
  onScale: (scale: string, value: string): string => `${scale} on the scale stands for ${value}.`,
  notPositive: 'A reading must be above zero. Type the number that the gauge shows.',
  impossible: (value: string, low: string, high: string): string =>
    `${value} cannot be: such a reading lies between ${low} and ${high}. Look at the gauge again.`,
  notATrial: (typed: string): string => `“${typed}” is no trial.`,
  /** loose, fits and tight are typed just so, in every language */
  howTrialsAreTyped: 'Type each size with loose, fits or tight behind it, such as 10 loose 9 fits 8 tight.',
  tooMany: (count: number, limit: number): string =>
    `${count} numbers stand here, and at most ${limit} are taken. Leave out those that do not belong here.`,
  writtenTwice: (size: string, one: string, other: string): string =>
    `${size} is written as “${one}” and as “${other}”. Try it again.`,
  contradiction: (smaller: string, asSmaller: string, larger: string, asLarger: string): string =>
    `${smaller} is written as “${asSmaller}” and ${larger} as “${asLarger}”, but a smaller size cannot be looser. Try both again.`,
  oneSided: {
    loose: (next: string): string => `All sizes were loose so far. Try ${next} next.`,
    tight: (next: string): string => `All sizes were tight so far. Try ${next} next.`,
  },
};
