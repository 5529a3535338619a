import type { MeasurementGroup, MeasurementUnit } from '../core/catalogue/measurement.js';

/** The words of what the practice measures and how, and of the notes on the wearer. */
export const practiceWords = {
  heading: 'Practice',
  close: 'Close',
  intro: 'What belongs to the desk and stays from wearer to wearer.',

  rows: 'Rows of the sheet, and the order in which you measure',
  rowsNote:
    'A hidden row keeps what was typed into it, but takes no part in any check. A tolerance of your own takes the place of the one from the catalogue.',
  blocks: {
    eyes: 'Eyes',
    head: 'Head',
    nose: 'Nose',
    sides: 'Sides',
    frame: 'With the frame on',
  } satisfies Record<MeasurementGroup, string>,
  shown: (name: string): string => `Show ${name}`,
  showAll: (block: string): string => `Show all of ${block}`,
  hideAll: (block: string): string => `Hide all of ${block}`,
  all: 'Show all',
  none: 'Hide all',
  toleranceOf: (name: string, unit: string): string => `Own tolerance of ${name}, ${unit}`,
  catalogueTolerance: (value: string, status: string, source: string): string =>
    `Catalogue: ± ${value} (${status}): ${source}.`,
  ownTolerance: (value: string): string => `Own: ± ${value}.`,
  gaugeOf: (name: string): string => `Gauge in use for ${name}`,
  plainRule: 'plain scale, read as it stands',
  shownCount: (shown: number, all: number): string => (shown === all ? `all ${all} shown` : `${shown} of ${all} shown`),

  orderNote: 'Enter goes through the fields in the order of these blocks.',
  up: (block: string): string => `Move ${block} up`,
  down: (block: string): string => `Move ${block} down`,
  moved: (block: string, place: number, all: number): string => `${block} is now block ${place} of ${all}.`,

  gauges: 'Gauges',
  gaugesNote:
    'You type what the scale shows; the sheet adds what has to be added, takes off what is known to be too much, and shows both. Readings that stand on the sheet already are worked out anew.',
  noGauges: 'No gauge yet: every scale is read as it stands.',
  addGauge: 'Add a gauge',
  edit: 'Edit',
  editOf: (name: string): string => `Edit ${name}`,
  remove: 'Delete',
  removeOf: (name: string): string => `Delete ${name}`,
  removed: (name: string): string => `${name} was deleted; its rows are read with a plain scale again.`,
  bringBack: 'Bring it back',
  broughtBack: (name: string): string => `${name} is back.`,
  kept: (name: string): string => `${name} is kept.`,
  inUseFor: (names: string): string => `In use for ${names}.`,
  notInUse: 'Not in use: choose it in the rows above.',
  facts: {
    step: (amount: string): string => `Step ${amount}`,
    offset: (amount: string): string => `${amount} to be added`,
    noOffset: 'starts at zero',
    bias: (amount: string): string => `known to read ${amount} too large`,
    biasBelow: (amount: string): string => `known to read ${amount} too small`,
  },
  checkedOn: (day: string): string => `Checked on ${day}.`,
  neverChecked: 'No check noted: hold it against a good rule, and note the day.',
  overdue: (day: string, limitDays: number): string =>
    `Last checked on ${day}, more than ${limitDays} days ago: check it again before you rely on it.`,
  examples: 'Examples to take over',
  exampleNames: {
    'pd-rule': 'PD rule',
    'end-rule': 'Rule read from its end',
    'head-calipers': 'Head calipers',
    'angle-gauge': 'Angle gauge',
  },
  examplesNote: 'Invented examples: check against your own gauges.',
  takeOver: 'Take over',
  takeOverOf: (name: string): string => `Take over ${name}`,
  takenOver: (name: string): string => `${name} was taken over. Check its numbers against your own gauge.`,

  form: { add: 'A gauge', edit: (name: string): string => `Edit ${name}` },
  name: 'Name',
  nameNote: 'As you call it, for example “bridge gauge”.',
  servesLegend: 'It is used for',
  servesNote: 'Lengths or angles, not both: a scale has one unit.',
  unitsOf: { mm: 'Lengths', deg: 'Angles' },
  resolution: 'Step of its scale',
  resolutionNote: 'The smallest step you read it to.',
  zeroOffset: 'To be added to each reading',
  zeroOffsetNote: '0 for a gauge that starts at zero.',
  bias: 'To be taken off each reading',
  biasNote:
    'By how much it reads too large, from its last check; negative where it reads too small, 0 where nothing is known.',
  checked: 'Last checked on',
  checkedNote: 'Leave it empty where nobody noted it.',
  inUnit: (label: string, unit: string): string => `${label}, ${unit}`,
  example: 'Example:',
  /** the unit as it is spoken */
  unitNames: { mm: 'mm', deg: 'degrees' },
  exampleSum: (scale: string, sum: string, unit: MeasurementUnit): string =>
    `the scale shows ${scale}: ${sum} ${unit}.`,
  noExample: 'An example of the sum stands here as soon as the numbers can be used.',
  keep: 'Keep this gauge',
  cancel: 'Cancel',

  standard: 'Standard for the prism of a mounted pair',
  standardSource: (status: string, source: string): string => `Values ${status}: ${source}.`,
};
