export const misfitWords = {
  heading: 'What does not fit',
  fits: 'Nothing stands out among the readings.',
  basis:
    'A percentage is the share of just this cause among all that could have happened, with chosen frequencies of slips; it tends to be too low. Nothing is changed until you take it.',
};
