import type { BothSides, Side } from '../units/side.js';
import { SIDES } from '../units/side.js';
import { powerAlongD, sphericalEquivalentD, strongestPowerD } from './lens-power.js';
import type { Prescription } from './prescription.js';

/** Something about a prescription that can be, but is asked about: most often it is a slip of copying. */
export type PrescriptionQuestion =
  /** powers nearly alike with opposite signs: was a sign lost? */
  | { readonly kind: 'sign-perhaps-lost'; readonly sphereD: BothSides<number> }
  /** both eyes differ a lot */
  | { readonly kind: 'eyes-differ'; readonly differenceD: number }
  /** one cylinder is written with plus, the other with minus */
  | { readonly kind: 'cylinder-signs-mixed' }
  | { readonly kind: 'cylinder-large'; readonly side: Side; readonly cylinderD: number }
  | { readonly kind: 'additions-differ'; readonly addD: BothSides<number> }
  | { readonly kind: 'prism-large'; readonly side: Side; readonly amount: number }
  /** both bases up, or down, or to the same side of the face: the prisms cancel between the eyes */
  | { readonly kind: 'prisms-cancel'; readonly direction: 'horizontal' | 'vertical' }
  /** strong lenses change with their distance from the eye, and it was not written */
  | { readonly kind: 'vertex-distance-missing'; readonly powerD: number };

/** From here on, dioptres: 1 mm off is half a prism dioptre, and the vertex distance counts (the trade's line, common practice). */
export const STRONG_LENS_D = 5;

/** Chosen, dioptres: eyes so far apart are rare enough for a second look at the paper. */
const LARGE_DIFFERENCE_D = 3;
/** Chosen, dioptres: closer together than this, a lost sign explains two powers better than two so different eyes do. */
const ALIKE_D = 1;
/** Chosen, dioptres: below this, opposite signs are usual. */
const CLEAR_SIGN_D = 1.5;
const LARGE_CYLINDER_D = 10;
/** Chosen, prism dioptres: more is seldom made as a lens. */
const LARGE_PRISM = 10;

/** What to ask about a prescription; empty where nothing is unusual. */
export function questionPrescription(prescription: Prescription): readonly PrescriptionQuestion[] {
  const { R, L } = prescription;
  const questions: PrescriptionQuestion[] = [];
  const [meanR, meanL] = [sphericalEquivalentD(R), sphericalEquivalentD(L)];
  const isSignOdd =
    meanR * meanL < 0 &&
    Math.min(Math.abs(meanR), Math.abs(meanL)) >= CLEAR_SIGN_D &&
    Math.abs(meanR + meanL) <= ALIKE_D;
  if (isSignOdd) {
    questions.push({ kind: 'sign-perhaps-lost', sphereD: { R: R.sphereD, L: L.sphereD } });
  } else {
    const differenceD = Math.max(
      ...[180, 90].map((meridian) => Math.abs(powerAlongD(R, meridian) - powerAlongD(L, meridian))),
    );
    if (differenceD >= LARGE_DIFFERENCE_D) questions.push({ kind: 'eyes-differ', differenceD });
  }
  if (R.cylinderD * L.cylinderD < 0) questions.push({ kind: 'cylinder-signs-mixed' });
  for (const side of SIDES) {
    const { cylinderD, prism } = prescription[side];
    if (Math.abs(cylinderD) > LARGE_CYLINDER_D) questions.push({ kind: 'cylinder-large', side, cylinderD });
    const amount = Math.hypot(prism.horizontal.amount, prism.vertical.amount);
    if (amount > LARGE_PRISM) questions.push({ kind: 'prism-large', side, amount });
  }
  if (R.addD !== L.addD) questions.push({ kind: 'additions-differ', addD: { R: R.addD, L: L.addD } });
  const [acrossR, acrossL] = [R.prism.horizontal, L.prism.horizontal];
  if (acrossR.amount > 0 && acrossL.amount > 0 && acrossR.base !== acrossL.base) {
    questions.push({ kind: 'prisms-cancel', direction: 'horizontal' });
  }
  const [alongR, alongL] = [R.prism.vertical, L.prism.vertical];
  if (alongR.amount > 0 && alongL.amount > 0 && alongR.base === alongL.base) {
    questions.push({ kind: 'prisms-cancel', direction: 'vertical' });
  }
  const strongest = [strongestPowerD(R), strongestPowerD(L)].reduce((one, other) =>
    Math.abs(other) > Math.abs(one) ? other : one,
  );
  if (prescription.vertexDistanceMm === null && Math.abs(strongest) >= STRONG_LENS_D) {
    questions.push({ kind: 'vertex-distance-missing', powerD: strongest });
  }
  return questions;
}
