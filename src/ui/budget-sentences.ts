import type { EstimateUnit } from '../core/estimate/estimate.js';
import { NEAR_DISTANCE_MM, type Remedy } from '../core/estimate/most-helpful.js';
import { words } from './language.js';
import { formatNumber, formatPercent } from './numbers.js';

/** A share in whole percent; one that is there and yet rounds to none is under one. */
export function shareWords(share: number): string {
  const percent = 100 * share;
  return percent < 0.5 ? words.slip.under(formatPercent(1, 0)) : formatPercent(percent, 0);
}

/**
 * What would help most, with the half width of the 95 % interval before and after it, such as `A sweep would bring this from
 * ± 1.5 to about ± 0.5 mm.`; where nothing would, it says so.
 *
 * @param nowHalfWidth half width of the interval as it stands, in `unit`
 * @param nowUncertainty the standard uncertainty that belongs to it
 */
export function remedySentence(
  remedy: Remedy | null,
  nowHalfWidth: number,
  nowUncertainty: number,
  unit: EstimateUnit,
  isSweep: boolean,
): string {
  if (remedy === null) return words.budget.noRemedy;
  const thenHalfWidth = (nowHalfWidth * remedy.standardUncertainty) / nowUncertainty;
  // A second decimal where the first does not show the difference.
  const decimals = formatNumber(nowHalfWidth, 1) === formatNumber(thenHalfWidth, 1) ? 2 : 1;
  const facts = {
    from: `±\u00a0${formatNumber(nowHalfWidth, decimals)}`,
    to: `±\u00a0${formatNumber(thenHalfWidth, decimals)}\u00a0${unit === 'deg' ? '°' : unit}`,
  };
  const said = words.budget.remedies;
  if (remedy.kind === 'come-nearer') {
    return said[remedy.kind]({ ...facts, distanceCm: formatNumber(NEAR_DISTANCE_MM / 10, 0) });
  }
  if (remedy.kind === 'repeat') return said[isSweep ? 'repeat-sweep' : 'repeat-picture'](facts);
  return said[remedy.kind](facts);
}
