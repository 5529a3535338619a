import type { Verdict } from '../core/lenses/cost-of-difference.js';
import { formatNumber } from './numbers.js';

/** What a difference means through the lenses of this wearer. */
export const costWords = {
  heading: 'What it costs this wearer',
  noPrescription: 'Type the prescription, and this says what a difference between two readings means through it.',
  unfinished: 'As soon as the prescription can be read, this says what a difference means through it.',
  standard: 'Held against',
  /** behind a verdict that rests on such values */
  valuesFromMemory: ' (values from memory)',
  /** behind a verdict on readings that lie farther apart than the sheet allows */
  readAgain: '; read again all the same',
  fromMemoryMark: 'From memory: look it up before relying on it.',
  unequal:
    'How the standard treats lenses of unequal power was not seen: the mean of both is taken. Nothing here replaces the standard’s text.',
  none: 'No second value stands beside a hand reading yet: of the camera, of another reader, or of a likely slip.',
  differences: 'The differences on this sheet',
  verdicts: {
    negligible: 'does not matter',
    within: 'within the standard',
    beyond: 'beyond the standard',
    open: 'may be beyond the standard',
  } satisfies Record<Verdict, string>,
  powerVerdicts: {
    negligible: 'does not matter',
    within: 'below half a step',
    beyond: 'half a step or more',
    open: 'may be half a step or more',
  } satisfies Record<Verdict, string>,
  room: 'How far each reading may be off',
  eyesDiffer: (tighter: string): string => `the eyes differ: no more than twice that of ${tighter} alone`,
  roomCaption:
    'Millimetres until the standard is reached (for vertex distance: until the power changes by half a step)',
  anyAmount: 'any',
  overTen: 'over 10',
  frame: 'In the chosen frame',
  frameCaption: 'What the workshop works out from the readings as they stand',
  frameNeeds: 'Decentration and blank follow from box width, distance between lenses and PD.',
  rows: {
    inward: 'Decentration in',
    up: 'Decentration up',
    blank: 'Smallest blank',
    inset: 'Near inset',
    vertex: 'Vertex distance',
  },
  halved: 'Each eye’s PD is taken as half of the whole: measure each eye.',
  insetNote: (workingMm: number): string =>
    `The near inset is for ${formatNumber(workingMm, 0)} mm and the power along the horizontal.`,
  insetOfDesign: 'Progressive lenses bring their own near inset.',
  effectiveDiameter: 'Effective diameter of the lens shape',
  effectiveDiameterNote: 'mm: twice the longest way from the middle of the box to the edge',
  diameterNoNumber: 'Type a length in mm, such as 56.',
  diameterBeyond: (lowest: number, highest: number): string => `Type a length between ${lowest} and ${highest} mm.`,
  diameterMisfit: (lowestMm: number, highestMm: number): string =>
    `This does not fit the box: between ${formatNumber(Math.ceil(lowestMm), 0)} and ${formatNumber(Math.floor(highestMm), 0)} mm are possible.`,
  blankOfBox: 'Smallest blank from the corners of the box, so at most this; the effective diameter makes it exact.',
  cautions: 'Mind with these lenses',
};
