/** What is being done with a picture; a sentence but for its end. */
export const progressWords = {
  opening: 'Opening the picture',
  'loading-landmarks': 'Loading the face landmarks',
  'loading-card': 'Loading the card finder',
  'finding-face': 'Looking for the face',
  'finding-card': 'Looking for the card and the iris edges',
};
