import { lowerFirstInEnglish } from './english-grammar.js';

export const sheetWords = {
  heading: 'Readings',
  caption:
    'Hand readings, camera estimates and findings; lengths in millimetres, angles in degrees. R and L are the wearer’s.',
  measurement: 'Measurement',
  hand: 'Hand',
  camera: 'Camera ± 95 %',
  cameraShort: 'Camera',
  difference: 'Hand − camera',
  /** opens the drawing of all differences */
  drawn: 'Draw hand against camera',
  toleranceIs: (value: string, status: string): string => `tolerance ± ${value}, ${status}`,
  finding: 'Finding',
  groups: { eyes: 'Eyes', head: 'Head', nose: 'Nose', sides: 'Sides', frame: 'With the frame on' },
  groupCount: (filled: number, all: number): string => `${filled} of ${all} in`,
  groupMisfits: (count: number): string => (count === 1 ? '1 reading in doubt' : `${count} readings in doubt`),
  side: { R: 'R', L: 'L' },
  /** before what is said of one side */
  sideHead: { R: 'R:', L: 'L:' },
  sideWord: { R: 'right', L: 'left' },
  eyesSum: (sum: string): string => `R + L = ${sum}`,
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
  howTaken: 'By hand:',
  step: (resolution: string): string => `Read to ${resolution}.`,
  squint: 'With a squint:',
  squintChanges: (how: string): string => `With a squint: ${lowerFirstInEnglish(how)}`,
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
  usual: (mean: string, low: string, high: string): string =>
    `Adults: ${mean} on average, 19 of 20 between ${low} and ${high}`,
  usualSides: (difference: string): string => `Right and left differ by less than ${difference} in 19 of 20`,
  reader: (deviation: string): string =>
    `One reader who reads again scatters by ± ${deviation} (one standard deviation)`,
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
};
