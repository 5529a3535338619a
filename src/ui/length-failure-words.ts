/** Why a length in the settings cannot be used, and what counts meanwhile. Lengths in mm. */
export const lengthFailureWords = {
  noLength: 'Type a length in mm, such as 400. Until then 400 mm is used.',
  beyond: (lowest: string, highest: string): string =>
    `Type a length between ${lowest} and ${highest} mm. Until then 400 mm is used.`,
  print: {
    noLength: 'Type the measured length in mm, such as 149.5. Until then the print is taken to be at true size.',
    otherUnit: {
      cm: (mm: string): string => `Was centimetres meant? Then type ${mm} mm.`,
      inch: (mm: string): string => `Was inches meant? Then type ${mm} mm.`,
    },
    beyond: (measured: string, lowest: string, highest: string): string =>
      `${measured} mm cannot be allowed for: a usable print shows ${lowest} to ${highest} mm. Print again at 100 %.`,
  },
};
