/** The words of the screen, by area. Whole sentences are in the files that are named after them. */

export const headerWords = {
  name: 'Glabella',
  whatItIs: 'A second reading of a face, from a picture or a short sweep.',
  actions: 'Sheet',
  settings: 'Settings',
  practice: 'Practice',
  order: 'Order sheet',
  printCard: 'Card to print',
  printSheet: 'Print sheet',
  clearSheet: 'Clear sheet',
  putAway: { cleared: 'The sheet was cleared.', exchanged: 'What stood here before is put away.' },
  gone: { picture: 'The measured picture went with it.', sweep: 'The measured sweep went with it.' },
  bringBack: { cleared: 'Bring the readings back', exchanged: 'Bring that back instead' },
  dismiss: 'Dismiss',
  skipToReadings: 'Go to the readings',
} as const;

export const demoWords = {
  load: 'Show the invented wearer',
  onSheet: 'Invented wearer: Tobin Quillfeather, Lantern Yard practice.',
  rendered: 'A rendered picture, and readings with two slips in them.',
  kept: {
    picture: 'Your own readings are kept; the picture measured before is not.',
    sweep: 'Your own readings are kept; the sweep measured before is not.',
  },
  leave: 'Back to my own sheet',
  pictureName: 'Invented wearer (rendered picture)',
} as const;

export const pictureWords = {
  heading: 'Picture',
  take: 'Take a picture',
  takeAnother: 'Take another picture',
  choose: 'Choose a picture file',
  chooseAnother: 'Choose another file',
  dropHere:
    'or drop or paste one here (JPEG, PNG or WebP). Several pictures (in the order of their names), or a video, are measured as a sweep.',
  letGo: 'Let go to measure this picture, or these as a sweep',
  cancel: 'Stop',
  putAway: 'Put the picture away',
  face: 'Face',
  wholePicture: 'Whole picture',
  viewOf: 'View',
  undo: 'Undo',
  redo: 'Redo',
  reset: 'Reset to found',
  placeByHand: 'Place the corners by hand',
  cornersPlaced: 'The corners are in place',
  placing: 'Drag each corner of the frame to where the straight edges of the card would meet, then say so.',
  eye: { R: 'Right eye (R)', L: 'Left eye (L)' },
  found: 'Card, both irises, lids and midline found.',
  corrected: 'Corrected by hand.',
  handleHint:
    'Drag a point if it is not where it should be, or go to it with Tab: arrow keys move it by 1 pixel, with Shift by 0.1 pixel.',
  keyHeading: 'What the lines mean',
  key: 'Solid frame, the card; rings, the iris edges; short bars, the lid margins; dashed line, the midline of the bridge; triangles, the sides of head and temples.',
  gaze: 'The wearer looked',
  gazeCamera: 'into the camera',
  gazeFar: 'far away',
  gazeNote: 'With “into the camera” the pupils stand nearer together; the distance PD is worked out from it.',
  facts: 'What this picture says besides',
  nearPd: 'Near PD',
  nearPdFor: (mm: number): string => `for ${mm} mm`,
  irisDiameter: 'Iris diameter',
  distance: 'Camera distance',
  turned: 'Head turned',
  turnedBy: (aside: string, nod: string, towards: 'up' | 'down'): string => `${aside}° aside, ${nod}° ${towards}`,
  scale: 'Scale',
  pixelsPerMm: (value: string): string => `${value} pixels per mm`,
  irisCheck: {
    usual: 'as irises usually are: the scale is plausible',
    unusual: 'unusual for an iris: look at the card and the rings again',
  },
  better: 'What would make the next picture better',
} as const;

export const holdingWords = {
  heading: 'How to hold the card',
  steps: [
    'Any card of bank-card size, or the printed one. Flat against the forehead; if hair is in the way, above or under the mouth.',
    'Long edge level, all four edges free: hold it by one short end with two fingertips.',
    'Camera at eye height, about 40 to 60 cm away, face straight to it, light from the front.',
  ],
  cautions: [
    'The edges of a card are sharp: keep them off the eyes, and hand the card over flat.',
    'The wearer must not look into lamps or into the sun.',
  ],
} as const;

export const handleWords = {
  cardCorners: [
    'Card corner, top left',
    'Card corner, top right',
    'Card corner, bottom right',
    'Card corner, bottom left',
  ],
  irisCentre: { R: 'Iris centre, right eye', L: 'Iris centre, left eye' },
  irisEdge: { R: 'Iris edge, right eye', L: 'Iris edge, left eye' },
  lidUpper: { R: 'Upper lid margin, right eye', L: 'Upper lid margin, left eye' },
  lidLower: { R: 'Lower lid margin, right eye', L: 'Lower lid margin, left eye' },
  midline: 'Midline of the bridge',
  position: (x: string, y: string): string => `${x} pixels across, ${y} pixels down`,
} as const;

export const cameraWords = {
  heading: 'Take a picture',
  device: 'Camera',
  unnamed: (index: number): string => `Camera ${index}`,
  opening: 'Opening the camera. The browser may ask for permission.',
  mirrored: 'The preview is mirrored, like a looking glass; the picture is not.',
  gaze: {
    camera: 'Ask the wearer to look into the camera lens.',
    far: 'Ask the wearer to look past the camera at something far away.',
  },
  start: 'Take the picture in 3 seconds',
  stop: 'Stop the countdown',
  inSeconds: (seconds: number): string => `${seconds}`,
  hold: 'Hold still.',
  taken: 'Picture taken.',
  again: 'Try the camera again',
  close: 'Close',
  burstFrames: 5,
} as const;

const STANDINGS = {
  used: 'used',
  slipped: 'card slipped',
  misfit: 'does not fit',
  'left-out': 'left out',
  'not-measured': 'being measured',
} as const;

export const sweepWords = {
  take: 'Take a sweep',
  takeAnother: 'Take another sweep',
  heading: 'Take a sweep',
  what: 'A few seconds in which the wearer turns the head slowly and leans a little nearer and farther. Many frames decide more than one picture can.',
  rules: {
    still: 'The card stays where it is on the face, held firmly: head and card move as one.',
    camera:
      'Both eyes on the camera lens all the time. The mark can be seen from the corner of the eye, or read it out.',
    far: 'Both eyes past the camera on something far away, all the time. Read out where the mark goes.',
    slow: 'Slowly: about 15° to each side, then a hand’s breadth nearer and farther.',
  },
  start: 'Start the sweep',
  goOn: 'Go on with the sweep',
  close: 'Close',
  measureNow: (count: number): string => `Measure with these ${count} frames`,
  key: 'Ring, where to go; dot, where the head is now; small lines, the frames taken.',
  right: 'right',
  left: 'left',
  near: 'near',
  far: 'far',
  steps: {
    hold: 'Face to the camera, eyes where you were asked to look.',
    'turn-R': 'Turn the head slowly to the right.',
    'turn-L': 'Turn the head slowly to the left.',
    'to-middle': 'Slowly back to the middle.',
    nearer: 'Lean a little nearer.',
    farther: 'Lean back, a little farther away.',
    back: 'Back to where you were.',
  },
  ready: {
    camera: 'Ready when the wearer holds the card and looks into the lens.',
    far: 'Ready when the wearer holds the card and looks far past the camera.',
  },
  working: 'Keep the card where it is; the frames are being looked at.',
  enough: 'Enough. The wearer can rest; the last frames are being looked at.',
  looking: 'Looking at the frames',
  short: (gaps: string): string => `Not enough yet: ${gaps}. Hold the card as before and go on.`,
  hardlyTurned: (gaps: string): string =>
    `The head hardly turned. Still needed: ${gaps}. Hold the card as before and go on.`,
  lessSure: 'That is less than is useful: the result will be less sure.',
  firstFrame: 'Hold the card and your eyes still; it starts when the first frame was looked at.',
  trouble: (reason: string): string => `The last frames could not be used: ${reason}.`,
  needed: 'What the sweep needs',
  has: 'enough',
  lacks: 'still missing',
  turned: { R: 'Turned right', L: 'Turned left' },
  distance: 'Nearer and farther',
  frames: 'Frames',
  degreesOf: (is: string, wanted: number): string => `${is}° of ${wanted}°`,
  percentOf: (is: string, wanted: string): string => `${is} % of ${wanted} %`,
  framesOf: (is: number, wanted: number): string => `${is} of ${wanted}`,
  workingThrough: (done: number, all: number): string => `Working through the frames: ${done} of ${all}`,
  openingVideo: 'Opening the video',
  lookingAt: 'Looking at the frames of the sweep.',
  measuring: 'Measuring all frames together',
  renewing: 'Measuring anew; the numbers shown are those from before.',
  stop: 'Stop here',
  putAway: 'Put the sweep away',
  dismiss: 'Close this note',
  backTo: { picture: 'Back to the earlier picture', sweep: 'Back to the earlier sweep' },
  earlier: {
    picture: 'A sweep is on its way: the camera values shown are still those of the earlier picture.',
    sweep: 'A new sweep is on its way: the camera values shown are still those of the earlier sweep.',
  },
  dropped: (frames: number): string =>
    `The sweep was stopped and its ${frames === 1 ? '1 frame' : `${frames} frames`} dropped. Nothing else changed.`,
  readingsBack: {
    picture: 'Your readings are back. The picture is not kept: take or choose it again.',
    sweep: 'Your readings are back. The sweep is not kept: take or choose it again.',
  },
  bestAlone: 'Measure the best frame as one picture',
  framesOfFailed: 'What became of the frames',
  used: (used: number, all: number): string => `${used} of ${all} frames used.`,
  slipped: (frame: number): string => `The card slipped at frame ${frame}; the rest was left out.`,
  strip: 'Frames of the sweep',
  stripHint: 'Choose a frame to look at it (arrow keys go through them). Leave out what you do not trust.',
  frame: (number: number): string => `Frame ${number}`,
  useFrame: (number: number): string => `Use frame ${number}`,
  noPicture: 'This frame cannot be shown.',
  facing: {
    R: (degrees: string): string => `turned ${degrees}° to the right`,
    L: (degrees: string): string => `turned ${degrees}° to the left`,
    straight: 'straight',
  },
  standings: STANDINGS,
  standingsOfFailed: { ...STANDINGS, 'not-measured': 'all found' },
  standingsLong: {
    used: 'Used.',
    slipped: 'Not used: the card sat elsewhere on the face than in most frames.',
    misfit: 'Not used: it does not fit the others. A blink, a blur, or eyes that looked elsewhere.',
    'left-out': 'Left out by you.',
    'not-measured': 'Not measured yet.',
  },
  /** of a frame whose sweep has no numbers */
  foundOnly: 'All was found in it, but the sweep has no numbers.',
  facts: 'What this sweep says besides',
  from: (low: string, high: string): string => `${low} to ${high}`,
  turnedFromTo: (right: string, left: string): string => `${right}° right to ${left}° left`,
  turnedOneSide: {
    R: (low: string, high: string): string => `${low}° to ${high}° to the right`,
    L: (low: string, high: string): string => `${low}° to ${high}° to the left`,
  },
  better: 'What would make the next sweep better',
  found: (headline: string): string => `Sweep measured. ${headline}`,
} as const;

export const sheetWords = {
  heading: 'Readings',
  caption:
    'Hand readings, camera estimates and findings; lengths in millimetres, angles in degrees. R and L are the wearer’s.',
  measurement: 'Measurement',
  hand: 'Hand',
  camera: 'Camera ± 95 %',
  cameraShort: 'Camera',
  difference: 'Hand − camera',
  toleranceIs: (value: string, status: string): string => `tolerance ± ${value}, ${status}`,
  finding: 'Finding',
  groups: { eyes: 'Eyes', head: 'Head', nose: 'Nose', sides: 'Sides', frame: 'With the frame on' },
  groupCount: (filled: number, all: number): string => `${filled} of ${all} in`,
  groupMisfits: (count: number): string => (count === 1 ? '1 reading in doubt' : `${count} readings in doubt`),
  side: { R: 'R', L: 'L' },
  and: ' and ',
  sideWord: { R: 'right', L: 'left' },
  eyesSum: (sum: string): string => `R + L = ${sum}`,
  unitSign: { mm: ' mm', deg: '°' },
  covered: 'covered until your reading is in',
  coveredBoth: 'covered until R and L are in',
  coveredShort: 'covered',
  details: 'Details',
  detailsOf: (name: string): string => `Details of ${name}: definition, doubt and tolerance`,
  handField: (name: string, unit: 'mm' | 'deg'): string =>
    `${name}, hand reading in ${unit === 'mm' ? 'mm' : 'degrees'}`,
  cameraCell: (name: string): string => `${name}, camera`,
  disagrees: 'disagrees with the camera',
  preFitting: 'pre-fitting estimate',
  notIndependent:
    'These readings were taken after the estimates were shown, so the two are not independent of each other.',
  howTaken: 'By hand: ',
  step: (resolution: string, unit: 'mm' | 'deg'): string => `Read to ${resolution}${unit === 'mm' ? ' mm' : '°'}.`,
  squint: 'With a squint: ',
  notComparable: 'The camera’s value is left out: it takes for granted that both eyes look at the same thing.',
  definedBy: (source: string, status: string): string => `Definition after ${source} (${status}).`,
  share: 'share',
  source: 'source',
  findingsCount: (agree: number, disagree: number, cannotTell: number): string =>
    `Findings: ${agree} agree, ${disagree} disagree, ${cannotTell} cannot tell.`,
  findingOf: (name: string, word: string, reason: string): string => `${name}: ${word}. ${reason}.`,
  doubtHeading: 'Where this doubt comes from',
  doubtCovered: 'The camera’s value is still covered. Its doubt will be shown with it.',
  toleranceHeading: 'Tolerance and its source',
  usualHeading: 'What is usual',
  usual: (mean: string, low: string, high: string, unit: string): string =>
    `Adults: ${mean}${unit} on average, 19 of 20 between ${low} and ${high}${unit}`,
  usualSides: (difference: string, unit: string): string =>
    `Right and left differ by less than ${difference}${unit} in 19 of 20`,
  reader: (deviation: string, unit: string): string =>
    `One reader who reads again scatters by ± ${deviation}${unit} (one standard deviation)`,
  sourced: (what: string, status: string, source: string): string => `${what} (${status}): ${source}.`,
  definitionHeading: 'What is measured',
  total: 'Together, one standard deviation',
  alone: {
    offer: 'No hand readings yet?',
    show: 'Show the estimates alone',
    cover: 'Cover them again',
    mark: 'Pre-fitting estimates',
    note: 'What the camera says, with no hand reading beside it. Not checked: do not order from it.',
  },
  whatUnsureSweepDecides:
    'This sweep is no surer than one picture. A row it can only contradict where the difference is larger than its own doubt.',
  whatSweepDecides:
    'A sweep decides the distance PD and the PD of each eye best. The other rows it can only contradict where the difference is larger than its own doubt.',
  whatDecides:
    'One picture decides the distance PD, and mostly the lid aperture. The other rows it can only contradict, and only where the difference is larger than its own doubt.',
  unitHint: 'Lengths in millimetres, angles in degrees; R and L are the wearer’s.',
  howTyped:
    'Type what the scale shows. Repeats go into the same field with a space between them; sizes that were tried with loose, fits or tight (or l, f, t) behind each.',
  touchHint: 'Type what the scale shows; the button beside a field adds another reading of the same.',
  keysHint:
    'Enter goes to the next field, Shift and Enter back; arrows go up and down, / finds a measurement by its name.',
} as const;

/** What stands beside a hand reading. */
export const handWords = {
  another: (name: string): string => `Another reading of ${name}`,
  tried: (name: string): string => `${name}: the size typed last`,
  verdicts: { loose: 'loose', fits: 'fits', tight: 'tight' },
  /** scale readings, where there are several with what is added to each */
  several: (scales: string, steps: string): string => (steps === '' ? scales : `${scales}, each ${steps}`),
  repeats: (several: string, mean: string, range: string, deviation: string): string =>
    `${several}: mean ${mean}, range ${range}, sd ${deviation}`,
  farOff: (values: readonly string[]): string =>
    `${values.join(' and ')} ${values.length === 1 ? 'stands' : 'stand'} far from the others: read again`,
  scattered: 'further apart than one reader usually is: read once more',
  trials: (value: string, low: string, high: string): string => `${value}, between ${low} and ${high}`,
  untried: (low: string, high: string, size: string): string => `between ${low} and ${high}, ${size} was not tried`,
  earlier: 'earlier entry',
  andEarlier: (count: number): string => `and ${count} earlier`,
  earlierBy: (by: string, when: string): string => (by === '' ? when : `${by}, ${when}`),
  otherRead: (reader: string, value: string): string => `${reader}: ${value}`,
  differBy: (difference: string): string => `readers differ by ${difference}`,
  confirmed: (by: string): string => (by === '' ? 'confirmed' : `confirmed by ${by}`),
} as const;

export const readerWords = {
  legend: 'Who reads',
  first: 'First reader',
  second: 'Second reader',
  name: { first: 'Name of the first reader', second: 'Name of the second reader' },
  namePlaceholder: 'name',
  coveredFrom: {
    first: 'The second reader’s sheet is covered; each row of it shows as soon as yours is in.',
    second: 'The first reader’s sheet is covered; each row of it shows as soon as yours is in.',
  },
} as const;

export const agreementWords = {
  heading: 'How the two readers agree',
  places: {
    mm: (count: number): string => `${count} lengths`,
    deg: (count: number): string => `${count} angles`,
  },
  differences: (places: string, who: string, mean: string, interval: string, limits: string): string =>
    `${places}, ${who}: ${mean} on average (95 %: ${interval}); 19 of 20 differences lie between ${limits}.`,
  biased: 'One of them reads more than the other throughout: compare how both hold the gauge.',
  repeats: (name: string, coefficient: string, count: number): string =>
    `${name} read ${count === 1 ? '1 place' : `${count} places`} twice: two readings lie within ${coefficient} of each other in 19 of 20.`,
  note: 'Of one wearer and one sheet: it proves nothing of the readers.',
} as const;

/** What a screen reader is told of what does not fit. */
export const newsWords = {
  misfit: (place: string, what: string): string => `${place}: ${what}.`,
} as const;

export const searchWords = {
  label: 'Go to a measurement',
  key: '/',
  none: 'No measurement of that name is on the sheet.',
  count: (count: number): string => (count === 1 ? '1 measurement' : `${count} measurements`),
} as const;

/** The strip that stays in view above the sheet. */
export const stripWords = {
  gauge: (name: string): string => `read with ${name}`,
  step: (resolution: string, unit: string): string => `to ${resolution}${unit}`,
  misfits: (count: number): string => (count === 1 ? '1 thing does not fit' : `${count} things do not fit`),
  show: 'Show',
  showMisfits: 'Show what does not fit',
} as const;

export const rulerWords = {
  lane: (side: 'R' | 'L' | null, difference: string, low: string, high: string, tolerance: string): string =>
    `${side === null ? '' : side === 'R' ? 'Right: ' : 'Left: '}hand minus camera ${difference} mm, 95 % interval ${low} to ${high} mm, tolerance plus or minus ${tolerance} mm`,
} as const;

export const settingsWords = {
  heading: 'Settings',
  close: 'Close',
  reading: 'Reading',
  covered: 'Keep the camera’s value covered until the hand reading of its row is in',
  coveredNote: 'Two readings are only independent if the second reader does not know the first.',
  workingDistance: 'Working distance for the near PD, mm',
  workingDistanceNote: 'From the spectacle plane to what is looked at.',
  card: 'The card',
  bought: 'A bought card of size ID-1 (bank, health or loyalty card)',
  printed: 'The printed marker card',
  checkLength: 'Measured length of the 150 mm line on the marker card’s sheet, mm',
  checkLengthNote: 'Printers scale without saying so. Measure the line with a good rule and type what it shows.',
  scaled: (percent: string): string => `This print is ${percent} of true size; the estimates allow for it.`,
  trueSize: 'This print is at true size.',
  unchecked: 'Not measured yet: the print is taken to be at true size.',
  picture: 'The picture',
  advanced: 'Advanced: another landmark bundle',
  bundleNote:
    'Glabella brings its own face landmarks. If you have the publisher’s face landmarker bundle (a .task file), it can be used instead. It is read on this device only.',
  bundle: 'Choose a landmark bundle',
  bundleLoading: 'The bundle is being read.',
  bundleUsed: (name: string): string => `In use from the next picture on: ${name}.`,
  bundleBack: 'Use the built-in landmarks again',
  builtIn: 'The built-in landmarks are in use.',
} as const;

export const printWords = {
  heading: 'Card to print',
  close: 'Close',
  intro:
    'A marker card is found more surely than a bought card. Print it at 100 %, never “fit to page”, on stiff matt paper, cut it out, and measure the ruled line on the same sheet.',
  paper: 'Paper',
  a4: 'A4',
  letter: 'Letter',
  markerCard: 'Marker card (PDF)',
  printCheck: 'Print check (PDF)',
  board: 'Camera sheet (PDF)',
  printCheckNote: 'The print check has an outline to lay a real card on, to try a printer or a card.',
  boardNote:
    'The camera sheet is for making a camera profile (in the settings): glue the whole page onto something stiff and flat. Its size does not matter, so nothing is measured on it.',
  making: 'Making the PDF.',
  ready: (name: string): string => `${name} is ready.`,
  failed: 'The PDF could not be made. Reload the page and try again.',
  caution: 'Round the corners after cutting: card edges come near the eyes.',
} as const;

/** Said on paper only. */
export const paperWords = {
  printed: (when: string): string => `Printed ${when}.`,
  wearer: (wearer: string): string => `Wearer: ${wearer}.`,
  readBy: (reader: string): string => `Read by ${reader}.`,
  alsoReadBy: (reader: string): string => `Read a second time by ${reader}.`,
  squint: 'Squint: rows that it concerns were to be measured with the other eye covered.',
  light: (light: string): string => `Pupils read in ${light}.`,
  lights: { bright: 'bright light', room: 'room light', dim: 'dim light' },
  remark: (remark: string): string => `Remark: ${remark}`,
  looked: (where: string): string => `The wearer looked ${where}.`,
  bought: 'Card: a bought card of size ID-1.',
  markerCard: (length: string): string => `Card: the printed marker card, its 150 mm line measured as ${length} mm.`,
  sweep: (used: number, all: number): string => `Camera values from a sweep, ${used} of ${all} frames used.`,
  markerCardUnmeasured: 'Card: the printed marker card, its 150 mm line not measured.',
} as const;

export const footerWords = {
  heading: 'Before you rely on it',
  cautions: [
    'A second reading, not a clinical measurement: it does not replace the measurements that a fitting requires.',
    'Local rules come first, and whoever is licensed to dispense decides.',
    'Children: measure them as your local rules and training say; do not decide by a picture.',
    'Squint: both eyes never fixate together. Measure each eye with the other covered.',
    'Strong and progressive lenses need the fitting measurements of their maker, whatever the picture says.',
  ],
  privacy: 'Nothing leaves this device: no account, no server, no picture is sent or kept.',
  privacyMore:
    'What you type is kept in this browser until you clear the sheet; camera profiles, until you delete them.',
} as const;

export const crashWords = {
  heading: 'Glabella stopped',
  what: 'Something went wrong that should not have. Your readings are still here and are kept in this browser.',
  readings: 'Your readings',
  copy: 'Copy the readings',
  copied: 'Copied.',
  copyFailed: 'The browser did not allow copying: select the text above and copy it.',
  again: 'Open the sheet again',
} as const;
