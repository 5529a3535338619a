export const searchWords = {
  label: 'Go to a measurement',
  none: 'No measurement of that name is on the sheet.',
  count: (count: number): string => (count === 1 ? '1 measurement' : `${count} measurements`),
};
