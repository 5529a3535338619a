/** How open points are told. */
export const orderDoubtWords = {
  cameraDisagrees: (place: string, reason: string): string => `${place}: the camera disagrees (${reason}).`,
  cameraCannotTell: (places: string): string => `The camera could neither confirm nor contradict: ${places}.`,
  refused: (place: string, typed: string, why: string): string => `${place}: “${typed}” is not ordered. ${why}`,
  readersDiffer: (place: string): string =>
    `${place}: the two readers are too far apart; it is not ordered before both read it again.`,
  otherOnly: (reader: string, places: string): string => `Read by ${reader} alone, and not ordered: ${places}.`,
  otherReader: 'the other reader',
  unconfirmed: (places: string): string => `In, but not confirmed and so not ordered: ${places}.`,
  gaugeNever: (gauge: string, places: string): string =>
    `No check is noted of the gauge “${gauge}” that was used for ${places}.`,
  gaugeOld: (gauge: string, days: number, places: string): string =>
    `The gauge “${gauge}” was last checked ${days} days before the confirmation; it was used for ${places}.`,
  nameless: 'Some of it was confirmed before a name was typed: withdraw that, and confirm it again.',
  squint: (measurements: string): string =>
    `With a squint each eye is measured with the other covered: make sure of it for ${measurements}.`,
  pupilWithoutLight: 'The light in which the pupil diameters were read is not noted.',
  frameIncomplete: (places: string): string =>
    `A progressive lens cannot be made without these, and they are not in the order: ${places}.`,
  suspected: (sentence: string, places: string): string => `${sentence} Not ordered before it is settled: ${places}.`,
};
