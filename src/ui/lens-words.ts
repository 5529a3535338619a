import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { CentrationStandard } from '../core/lenses/centration-standards.js';
import { CENTRATION_STANDARDS } from '../core/lenses/centration-standards.js';
import type { Verdict } from '../core/lenses/cost-of-difference.js';
import { transposed } from '../core/lenses/lens-power.js';
import type { LensKind, LensPower, PrescribedPrism } from '../core/lenses/prescription.js';
import type { PrescriptionQuestion } from '../core/lenses/question-prescription.js';
import { unreachable } from '../core/result.js';
import type { EntryFailure, EyeField, PrescriptionPlace } from '../session/prescription-entry.js';
import type { LensCaution } from '../session/prescription-frame.js';
import { formatNumber, plainNumber } from './numbers.js';
import { listWords, placeWords } from './slip-places.js';

/** The sign of a prism dioptre; `PrescriptionText` says it in words to whoever listens. */
export const PRISM_SIGN = '\u0394';
const PLUS_MINUS_SPACE = '\u00a0';

const SIDES = { R: 'right', L: 'left' } as const;

const FIELDS: Readonly<Record<EyeField, string>> = {
  sphere: 'Sphere',
  cylinder: 'Cylinder',
  axis: 'Axis',
  add: 'Add',
  prismHorizontal: 'Prism in or out',
  baseHorizontal: 'Base in or out',
  prismVertical: 'Prism up or down',
  baseVertical: 'Base up or down',
};

/** A field as it is called to whoever hears or sees it alone, such as `Sphere, right`. */
export function placeName(place: PrescriptionPlace): string {
  return place.side === null ? prescriptionWords.vertexDistance : `${FIELDS[place.field]}, ${SIDES[place.side]}`;
}

export const prescriptionWords = {
  heading: 'Prescription',
  caption: 'What is prescribed, right eye above left',
  eye: 'Eye',
  fields: FIELDS,
  columns: { horizontal: 'Prism in/out', vertical: 'Prism up/down' },
  side: { R: 'R', L: 'L' },
  bases: { '': 'base', in: 'in', out: 'out', up: 'up', down: 'down' },
  vertexDistance: 'Tested at (vertex distance)',
  vertexNote: 'mm; empty where it is not written',
  kind: 'Kind of lens',
  kinds: {
    'single-vision': 'single vision',
    multifocal: 'bifocal or trifocal',
    progressive: 'progressive',
  } satisfies Record<LensKind, string>,
  hint: 'Powers need a sign (or “plano”); either sign of cylinder. Enter goes on, Shift and Enter back.',
  stillNeeded: (places: readonly string[]): string => `Still to be typed: ${listWords(places)}.`,
  otherForm: 'same lens:',
  check: 'Look again:',
} as const;

/** A power with its sign and two decimals; `0.00` for none. An eighth has two as well, as the trade writes it. */
export function powerText(powerD: number): string {
  const text = formatNumber(powerD, 2);
  return powerD > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** A lens as it is written on an order: `−2.00 / −1.00 × 90`. */
export function lensText({ sphereD, cylinderD, axisDeg }: LensPower): string {
  if (cylinderD === 0) return powerText(sphereD);
  return `${powerText(sphereD)} / ${powerText(cylinderD)} \u00d7 ${formatNumber(axisDeg, 0)}`;
}

/** The same lens with the other sign of cylinder; null for a spherical one, which has no other form. */
export function otherFormText(lens: LensPower): string | null {
  return lens.cylinderD === 0 ? null : lensText(transposed(lens));
}

/** Why what stands in a field cannot be used, and what to type. */
export function entryFailureSentence(failure: EntryFailure, field: PrescriptionPlace['field']): string {
  switch (failure.kind) {
    case 'missing':
      return 'Still to be typed.';
    case 'not-a-number':
      return `“${failure.typed.trim()}” is not a number: type digits with at most one point or comma.`;
    case 'sign-missing':
      return `Plus or minus? Type +${plainNumber(failure.value)} or −${plainNumber(failure.value)}.`;
    case 'negative':
      return field === 'add'
        ? 'An addition is never negative.'
        : 'A prism is never negative: choose the opposite base instead.';
    case 'no-step':
      return `${plainNumber(failure.value)} is no quarter of a dioptre. Look at the prescription again.`;
    case 'beyond-limits': {
      const unit = field === 'vertexDistance' ? 'mm' : 'dioptres';
      return `${plainNumber(failure.value)} lies outside of ${plainNumber(failure.lowest)} to ${plainNumber(failure.highest)} ${unit}.`;
    }
    case 'no-axis':
      return failure.value === 0
        ? 'An axis of 0 is written as 180.'
        : `${plainNumber(failure.value)} is no axis: type a whole number from 1 to 180.`;
    case 'axis-without-cylinder':
      return 'An axis, but no cylinder: one of both is wrong.';
    default:
      return unreachable(failure);
  }
}

/** What is asked about a prescription that can be read. */
export function questionSentence(question: PrescriptionQuestion): string {
  switch (question.kind) {
    case 'sign-perhaps-lost':
      return `R ${powerText(question.sphereD.R)} and L ${powerText(question.sphereD.L)}: was a sign lost?`;
    case 'eyes-differ':
      return `The eyes differ by ${formatNumber(question.differenceD, 2)} dioptres along one direction. Is each in its own row?`;
    case 'cylinder-signs-mixed':
      return 'One cylinder is written with plus, the other with minus. Were both copied from one prescription?';
    case 'cylinder-large':
      return `The ${SIDES[question.side]} cylinder of ${powerText(question.cylinderD)} is unusually large.`;
    case 'additions-differ':
      return `The additions differ: R ${powerText(question.addD.R)}, L ${powerText(question.addD.L)}.`;
    case 'prism-large':
      return `The ${SIDES[question.side]} prism of ${plainNumber(question.amount)} ${PRISM_SIGN} is unusually large.`;
    case 'prisms-cancel':
      return question.direction === 'vertical'
        ? 'Both bases point the same way, up or down: the prisms cancel between the eyes.'
        : 'One base in, the other out: the prisms cancel between the eyes.';
    case 'vertex-distance-missing':
      return `At ${powerText(question.powerD)} the distance at which it was tested counts: ask for it.`;
    default:
      return unreachable(question);
  }
}

/** What is said where an eighth of a dioptre was typed. */
export function eighthsSentence(places: readonly PrescriptionPlace[]): string {
  return `Eighths of a dioptre are seldom prescribed: ${listWords(places.map(placeName))}.`;
}

/** The parts of a prism, such as `2.5 Δ base out` and `1 Δ base up`; empty for none. */
export function prismParts({ horizontal, vertical }: PrescribedPrism): readonly string[] {
  return [horizontal, vertical]
    .filter(({ amount }) => Number(amount.toFixed(2)) !== 0)
    .map(({ amount, base }) => `${plainNumber(amount)} ${PRISM_SIGN} base ${base}`);
}

/** A prism by its parts, such as `2.5 Δ base out, 1 Δ base up`; null for none. */
export function prismText(prism: PrescribedPrism): string | null {
  const parts = prismParts(prism);
  return parts.length === 0 ? null : parts.join(', ');
}

/** All standards in the order in which they are offered. */
export const STANDARDS = Object.values(CENTRATION_STANDARDS);

/** A standard as it is offered: its edition, and which of its values are from memory. */
export function standardName({ name, edition, imbalance, progressiveImbalance }: CentrationStandard): string {
  const offered = `${name} (${edition})`;
  if (imbalance.status === 'from-memory') return `${offered}, ${standardWords.all}`;
  return progressiveImbalance.status === 'from-memory' ? `${offered}, ${standardWords.progressive}` : offered;
}

const standardWords = {
  all: 'values from memory',
  progressive: 'for progressive lenses from memory',
} as const;

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
} as const;

/** What to mind with lenses of this prescription. */
export function cautionSentence(caution: LensCaution, catalogue: Catalogue): string {
  const missing = missingWords(caution.missing, catalogue);
  switch (caution.kind) {
    case 'strong':
      return `Strong lenses (${powerText(caution.powerD)}): one millimetre is ${formatNumber(Math.abs(caution.powerD) / 10, 1)} ${PRISM_SIGN}. Order by the PD of each eye, heights and vertex distance.${missing}`;
    case 'progressive':
      return `Progressive lenses: heights and the PD of each eye only with the chosen frame fitted and adjusted on the face.${missing}`;
    case 'multifocal':
      return `Bifocal and trifocal lenses: heights only with the chosen frame fitted and adjusted on the face.${missing}`;
    default:
      return unreachable(caution);
  }
}

function missingWords(names: readonly ReadingName[], catalogue: Catalogue): string {
  return names.length === 0 ? '' : ` Still missing: ${listWords(names.map((name) => placeWords(name, catalogue)))}.`;
}

/** A number with its 95 % doubt. */
export function plusMinus(text: string, doubt: string): string {
  return `${text}${PLUS_MINUS_SPACE}±${PLUS_MINUS_SPACE}${doubt}`;
}
