import type { EyePrescription } from '../core/lenses/prescription.js';
import { words } from './language.js';
import { lensText, powerText, prismParts } from './lens-sentences.js';

const NO_BREAK = '\u00a0';

/**
 * What is prescribed for one eye in one line, such as `+2.25 / −1.00 × 90  2 Δ base in  Add +2.00`: signed sphere, cylinder after a
 * slash, axis after a cross and without a degree sign, which could be taken for a nought. After BS 2738-3, from memory.
 */
export function eyeNotation(eye: EyePrescription): string {
  const parts = [
    lensText(eye),
    ...prismParts(eye.prism),
    ...(eye.addD === 0 ? [] : [words.prescription.add(powerText(eye.addD))]),
  ];
  return parts.map((part) => part.replaceAll(' ', NO_BREAK)).join('   ');
}
