import type { EyePrescription } from '../core/lenses/prescription.js';
import { formatNumber } from './numbers.js';

const NO_BREAK = '\u00a0';

/** Dioptres with their sign and two decimals; nothing has no sign. An eighth is written with two decimals, as the trade does. */
function signedDioptres(value: number): string {
  const text = formatNumber(value, 2);
  return value > 0 ? `+${text}` : text;
}

/** Prism dioptres: as many decimals as they have. */
function prismAmount(value: number): string {
  return String(Number(value.toFixed(2)));
}

/**
 * What is prescribed for one eye in one line, such as `+2.25 / −1.00 × 90  2 Δ base in  Add +2.00`: signed sphere, cylinder after a
 * slash, axis after a cross and without a degree sign, which could be taken for a nought. After BS 2738-3, from memory.
 */
export function eyeNotation({ sphereD, cylinderD, axisDeg, prism, addD }: EyePrescription): string {
  const power =
    cylinderD === 0
      ? signedDioptres(sphereD)
      : `${signedDioptres(sphereD)} / ${signedDioptres(cylinderD)} × ${String(axisDeg)}`;
  const prisms = [prism.horizontal, prism.vertical].flatMap(({ amount, base }) =>
    amount === 0 ? [] : [`${prismAmount(amount)} Δ base ${base}`],
  );
  const parts = [power, ...prisms, ...(addD === 0 ? [] : [`Add ${signedDioptres(addD)}`])];
  return parts.map((part) => part.replaceAll(' ', NO_BREAK)).join('   ');
}
