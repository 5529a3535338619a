/** What the camera sees of the camera sheet at this moment. */
export const boardVerdictWords = {
  'no-sheet': 'The sheet is not seen: show all of it, without glare.',
  moving: 'Hold still.',
  'nothing-new': 'This view is there already: go where the outline is.',
  'worth-taking': 'Taken.',
  taken: 'Taken.',
  blurred: 'Not sharp: hold still, wait for the focus, more light.',
};
