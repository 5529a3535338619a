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
import { placeWords } from './slip-places.js';

/** The sign of a prism dioptre; `PrescriptionText` says it in words to whoever listens. */
export const PRISM_SIGN = '\u0394';
const PLUS_MINUS_SPACE = '\u00a0';

/** A field as it is called to whoever hears or sees it alone, such as `Sphere, right`. */
export function placeName(place: PrescriptionPlace): string {
  return place.side === null
    ? words.prescription.vertexDistance
    : words.prescription.placeName(words.prescription.fields[place.field], words.prescription.sideNames[place.side]);
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
  const said = words.entryFailure;
  switch (failure.kind) {
    case 'missing':
      return said.missing;
    case 'not-a-number':
      return said.notANumber(failure.typed.trim());
    case 'sign-missing':
      return said.signMissing(plainNumber(failure.value));
    case 'negative':
      return field === 'add' ? said.negativeAdd : said.negativePrism;
    case 'no-step':
      return said.noStep(plainNumber(failure.value));
    case 'beyond-limits':
      return said.beyond[field === 'vertexDistance' ? 'mm' : 'dioptres'](
        plainNumber(failure.value),
        plainNumber(failure.lowest),
        plainNumber(failure.highest),
      );
    case 'no-axis':
      return failure.value === 0 ? said.axisOfZero : said.noAxis(plainNumber(failure.value));
    case 'axis-without-cylinder':
      return said.axisWithoutCylinder;
    default:
      return unreachable(failure);
  }
}

/** What is asked about a prescription that can be read. */
export function questionSentence(question: PrescriptionQuestion): string {
  const said = words.prescriptionQuestion;
  switch (question.kind) {
    case 'sign-perhaps-lost':
      return said.signLost(powerText(question.sphereD.R), powerText(question.sphereD.L));
    case 'eyes-differ':
      return said.eyesDiffer(formatNumber(question.differenceD, 2));
    case 'cylinder-signs-mixed':
      return said.cylinderSigns;
    case 'cylinder-large':
      return said.cylinderLarge[question.side](powerText(question.cylinderD));
    case 'additions-differ':
      return said.additionsDiffer(powerText(question.addD.R), powerText(question.addD.L));
    case 'prism-large':
      return said.prismLarge[question.side](`${plainNumber(question.amount)} ${PRISM_SIGN}`);
    case 'prisms-cancel':
      return question.direction === 'vertical' ? said.verticalCancel : said.horizontalCancel;
    case 'vertex-distance-missing':
      return said.vertexMissing(powerText(question.powerD));
    default:
      return unreachable(question);
  }
}

/** What is said where an eighth of a dioptre was typed. */
export function eighthsSentence(places: readonly PrescriptionPlace[]): string {
  return words.prescriptionQuestion.eighths(places.map(placeName));
}

/** The parts of a prism, such as `2.5 Δ base out` and `1 Δ base up`; empty for none. */
export function prismParts({ horizontal, vertical }: PrescribedPrism): readonly string[] {
  return [horizontal, vertical]
    .filter(({ amount }) => Number(amount.toFixed(2)) !== 0)
    .map(({ amount, base }) => words.prescription.prism[base](`${plainNumber(amount)} ${PRISM_SIGN}`));
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
  const offered = words.standard.offered(name, edition);
  if (imbalance.status === 'from-memory') return words.standard.allFromMemory(offered);
  return progressiveImbalance.status === 'from-memory' ? words.standard.progressiveFromMemory(offered) : offered;
}

/** What to mind with lenses of this prescription. */
export function cautionSentence(caution: LensCaution, catalogue: Catalogue): string {
  const said = words.lensCaution;
  const { missing } = caution;
  const still = missing.length === 0 ? '' : ` ${said.missing(missing.map((name) => placeWords(name, catalogue)))}`;
  switch (caution.kind) {
    case 'strong': {
      const prismOfMm = `${formatNumber(Math.abs(caution.powerD) / 10, 1)} ${PRISM_SIGN}`;
      return said.strong(powerText(caution.powerD), prismOfMm) + still;
    }
    case 'progressive':
      return said.progressive + still;
    case 'multifocal':
      return said.multifocal + still;
    default:
      return unreachable(caution);
  }
}

/** A number with its 95 % doubt. */
export function plusMinus(text: string, doubt: string): string {
  return `${text}${PLUS_MINUS_SPACE}±${PLUS_MINUS_SPACE}${doubt}`;
}
