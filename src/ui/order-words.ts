import type { MeasurementId } from '../core/catalogue/measurement.js';

/** The parts of the order in which a workshop looks for a number. */
export const ORDER_PARTS = ['centration', 'frame', 'bridge', 'sides', 'eyes'] as const;

export type OrderPart = (typeof ORDER_PARTS)[number];

/** Where a measurement stands in the order: by what is made from it, not by how it is taken. */
export const PART_OF: Readonly<Record<MeasurementId, OrderPart>> = {
  binocularPd: 'centration',
  monocularPd: 'centration',
  nearPd: 'centration',
  monocularNearPd: 'centration',
  fittingHeight: 'centration',
  backVertexDistance: 'centration',
  pantoscopicAngle: 'centration',
  faceFormAngle: 'centration',
  boxLensWidth: 'frame',
  boxLensHeight: 'frame',
  distanceBetweenLenses: 'frame',
  overallSideLength: 'frame',
  apicalRadius: 'bridge',
  distanceBetweenRims10: 'bridge',
  distanceBetweenRims15: 'bridge',
  frontalAngle: 'bridge',
  splayAngle: 'bridge',
  crestHeight: 'bridge',
  bridgeProjection: 'bridge',
  headWidth: 'sides',
  templeWidth: 'sides',
  lengthToBend: 'sides',
  lengthToTangent: 'sides',
  lengthOfDrop: 'sides',
  angleOfSide: 'sides',
  downwardAngleOfDrop: 'sides',
  inwardAngleOfDrop: 'sides',
  earPointDifference: 'sides',
  lidAperture: 'eyes',
  pupilDiameter: 'eyes',
  irisDiameter: 'eyes',
};

export const orderWords = {
  heading: 'Order sheet',
  close: 'Close',
  intro:
    'Only numbers that you confirm, and that nothing on the sheet contradicts, go to the workshop. A confirmation ends as soon as the number is changed.',

  confirming: 'Confirm the readings',
  readerName: 'Confirmed by',
  readerNameNote: 'It stands on the order beside what you confirm from now on.',
  nothingIn: 'No reading is in yet. Type the readings on the sheet first.',
  confirm: 'Confirm',
  confirmOf: (place: string): string => `Confirm ${place}`,
  withdraw: 'Withdraw',
  withdrawOf: (place: string): string => `Withdraw the confirmation of ${place}`,
  confirmAll: 'Confirm all without an open doubt',
  confirmAllCount: (count: number): string => `Confirm all without an open doubt (${count})`,
  withdrawAll: 'Withdraw all',
  goTo: 'Go to the field',
  goToOf: (place: string): string => `Go to the field of ${place}`,
  doubt: (amount: string): string => `± ${amount}`,
  doubtNote: 'Behind each value: its own doubt (95 %).',
  confirmed: 'Confirmed.',
  confirmedBy: (reader: string): string => `Confirmed by ${reader}${reader.endsWith('.') ? '' : '.'}`,
  leftOut: 'Confirmed, but left out of the order while it does not fit.',
  cameraAgrees: 'The camera agrees.',
  cameraCannotTell: 'The camera cannot tell.',
  covered: 'The camera’s value is still covered.',
  repeats: (count: number): string => `Mean of ${count} readings.`,
  trials: (low: string, high: string): string => `Fits; the true size lies between ${low} and ${high}.`,
  suspectedWith: (places: string): string => `It does not fit together with others: ${places}.`,
  joined: 'Both readers together.',
  scale: (sum: string): string => `Scale: ${sum}.`,
  countConfirmed: (confirmed: number, all: number): string => `${confirmed} of ${all} readings confirmed.`,

  preview: 'What is ordered',
  print: 'Print the order',
  printNote: 'Prints this sheet alone, on A4 or Letter.',

  // On the order sheet itself.
  invented: 'Invented wearer: nothing of this is to be made.',
  title: 'Order sheet',
  wearer: 'Wearer',
  date: 'Date',
  readers: 'Read and confirmed by',
  nobody: 'no name given',
  secondReading: (name: string): string => (name === '' ? 'a second reader as well' : `second reading by ${name}`),
  prescription: 'Prescription',
  prescriptionNote: 'Notation after BS 2738-3, from memory.',
  prescribedAt: (mm: string): string => `Found at a vertex distance of ${mm} mm.`,
  noVertex: 'Vertex distance of the prescription: not noted.',
  noPrescription: 'No prescription was entered.',
  badPrescription: 'The prescription on the sheet cannot be read yet, so it is not ordered.',
  parts: {
    centration: 'Centration',
    frame: 'Frame',
    bridge: 'Bridge',
    sides: 'Sides and head',
    eyes: 'Eyes, for information',
  } satisfies Record<OrderPart, string>,
  measurement: 'Measurement',
  side: 'Side',
  value: 'Value',
  sides: { R: 'R', L: 'L' },
  sideNames: { R: 'right', L: 'left' },
  workedOut: 'Worked out from these numbers',
  workedOutNote: (blank: string): string =>
    `Common practice; not measured. Decentration from the boxed centre. Smallest blank from ${blank}, with 2 mm for its edge.`,
  blankFrom: {
    'effective-diameter': 'the effective diameter',
    box: 'the corners of the box, so at most that',
  },
  boxedCentreDistance: 'Boxed centre distance',
  decentration: 'Decentration',
  blank: 'Smallest blank',
  blankOf: {
    'effective-diameter': (mm: string): string => `${mm} mm`,
    box: (mm: string): string => `at most ${mm} mm`,
  },
  inward: (mm: string): string => `${mm} mm in`,
  outward: (mm: string): string => `${mm} mm out`,
  up: (mm: string): string => `${mm} mm up`,
  down: (mm: string): string => `${mm} mm down`,
  centred: 'none',
  notes: 'Notes',
  squint: 'Squint: both eyes never fixate together.',
  light: (light: string): string => `Pupil diameters read in this light: ${light}.`,
  doubts: 'Open',
  noDoubts: 'Nothing is open.',
  nothingOrdered: 'No measurement is ordered yet.',
  noReadings: 'No reading is in.',
  signature: 'Signature',
  cautions: 'Before this is made',
  ownCautions: [
    'Values by hand and camera are no clinical measurement; whoever signs has looked at each of them.',
    'R and L are the wearer’s. Lengths in millimetres, angles in degrees.',
  ],
} as const;

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
} as const;
