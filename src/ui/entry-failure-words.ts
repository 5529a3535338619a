/** Why what stands in a field of the prescription cannot be used, and what to type. */
export const entryFailureWords = {
  missing: 'Still to be typed.',
  notANumber: (typed: string): string => `“${typed}” is not a number: type digits with at most one point or comma.`,
  signMissing: (value: string): string => `Plus or minus? Type +${value} or −${value}.`,
  negativeAdd: 'An addition is never negative.',
  negativePrism: 'A prism is never negative: choose the opposite base instead.',
  noStep: (value: string): string => `${value} is no quarter of a dioptre. Look at the prescription again.`,
  beyond: {
    mm: (value: string, lowest: string, highest: string): string =>
      `${value} lies outside of ${lowest} to ${highest} mm.`,
    dioptres: (value: string, lowest: string, highest: string): string =>
      `${value} lies outside of ${lowest} to ${highest} dioptres.`,
  },
  axisOfZero: 'An axis of 0 is written as 180.',
  noAxis: (value: string): string => `${value} is no axis: type a whole number from 1 to 180.`,
  axisWithoutCylinder: 'An axis, but no cylinder: one of both is wrong.',
};
