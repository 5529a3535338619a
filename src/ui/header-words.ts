export const headerWords = {
  name: 'Glabella',
  whatItIs: 'A second reading of a face, from a picture or a short sweep.',
  actions: 'Sheet',
  settings: 'Settings',
  practice: 'Practice',
  order: 'Order sheet',
  printCard: 'Card to print',
  printSheet: 'Print sheet',
  keys: 'Keys',
  skipToReadings: 'Go to the readings',
};
