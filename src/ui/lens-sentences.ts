import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { CentrationStandard } from '../core/lenses/centration-standards.js';
import { CENTRATION_STANDARDS } from '../core/lenses/centration-standards.js';
import { transposed } from '../core/lenses/lens-power.js';
import type { LensPower, PrescribedPrism } from '../core/lenses/prescription.js';
import type { PrescriptionQuestion } from '../core/lenses/question-prescription.js';
import { unreachable } from '../core/result.js';
import type { EntryFailure, PrescriptionPlace } from '../session/prescription-entry.js';
import type { LensCaution } from '../session/prescription-frame.js';
import { words } from './language.js';
import { formatNumber, hasDigitsBesidesZero, plainNumber } from './numbers.js';
import { listWords, placeWords } from './slip-places.js';

/** The sign of a prism dioptre; `PrescriptionText` says it in words to whoever listens. */
export const PRISM_SIGN = '\u0394';
const PLUS_MINUS_SPACE = '\u00a0';

/** A field as it is called to whoever hears or sees it alone, such as `Sphere, right`. */
export function placeName(place: PrescriptionPlace): string {
  return place.side === null
    ? words.prescription.vertexDistance
    : `${words.prescription.fields[place.field]}, ${words.prescription.sideNames[place.side]}`;
}

/** A power with its sign and two decimals; `0.00` for none. An eighth has two as well, as the trade writes it. */
export function powerText(powerD: number): string {
  const text = formatNumber(powerD, 2);
  return powerD > 0 && hasDigitsBesidesZero(text) ? `+${text}` : text;
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
      return `The ${words.prescription.sideNames[question.side]} cylinder of ${powerText(question.cylinderD)} is unusually large.`;
    case 'additions-differ':
      return `The additions differ: R ${powerText(question.addD.R)}, L ${powerText(question.addD.L)}.`;
    case 'prism-large':
      return `The ${words.prescription.sideNames[question.side]} prism of ${plainNumber(question.amount)} ${PRISM_SIGN} is unusually large.`;
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
  if (imbalance.status === 'from-memory') return `${offered}, ${words.standard.all}`;
  return progressiveImbalance.status === 'from-memory' ? `${offered}, ${words.standard.progressive}` : offered;
}

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
