export const misfitWords = {
  heading: 'What does not fit',
  fits: 'Nothing stands out among the readings.',
  basis:
    'A percentage is the share of just this cause among all that could have happened, with chosen frequencies of slips; it tends to be too low. Nothing is changed until you take it.',

  unexplained: 'No usual slip explains it: read it again.',
  unsure: 'It may be something else: read it again.',
  refused: (place: string, why: string): string => `${place}: ${why}`,
  doesNotAddUp: (place: string): string => `${place}: R and L do not make the whole: read all three again.`,
  disagrees: (place: string, hand: string, camera: string): string =>
    `${place}: ${hand} by hand, ${camera} by the camera.`,
  readersDiffer: (place: string, own: string, other: string, otherReader: string): string =>
    `${place}: ${own} on this sheet, ${other} by ${otherReader === '' ? 'the other reader' : otherReader}. That is more than two readers should differ.`,
  farOff: (place: string, count: number, farOff: string, others: string): string =>
    `${place}: ${farOff} ${count === 1 ? 'stands' : 'stand'} far from the other repeats (${others}).`,
  unusual: (place: string, value: string, low: string, high: string): string =>
    `${place}: ${value} is unusual (most adults: ${low} to ${high}).`,
  /** what to do where no slip explains it */
  ways: {
    disagrees: 'Read it again, or look at the points in the picture.',
    readersDiffer: 'Both read it again, each without the other’s number.',
    farOffRepeat: 'Read it again, and take out the number that was misread.',
    unusual: 'Nothing contradicts it, and unusual faces exist: look again.',
  },
};
