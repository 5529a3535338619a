import type { EstimateUnit } from '../core/estimate/estimate.js';
import { NEAR_DISTANCE_MM, type Remedy, type RemedyKind } from '../core/estimate/most-helpful.js';
import { unreachable } from '../core/result.js';
import { formatNumber } from './numbers.js';

export const budgetWords = {
  helps: 'What would help most',
  legend: 'Bars and percentages are shares of the variance; lengths are one standard deviation of each source.',
} as const;

/** The sources too small to be named one by one. */
export function smallSourcesWords(count: number): string {
  return `${count} smaller ones together`;
}

/** A share in whole percent; one that is there and yet rounds to none is under one. */
export function shareWords(share: number): string {
  const percent = 100 * share;
  return percent < 0.5 ? 'under 1 %' : `${percent.toFixed(0)} %`;
}

/** What a remedy does, as the beginning of a sentence. */
function remedyWords(kind: RemedyKind, isSweep: boolean): string {
  switch (kind) {
    case 'take-sweep':
      return 'A sweep';
    case 'make-profile':
      return 'A profile of this camera';
    case 'come-nearer':
      return `Coming nearer, to about ${formatNumber(NEAR_DISTANCE_MM / 10, 0)} cm from the camera,`;
    case 'card-on-forehead':
      return 'Holding the card on the forehead';
    case 'card-nearer-eyes':
      return 'Holding the card nearer the eyes, just above the brows,';
    case 'use-bought-card':
      return 'A bought card in place of the printed one';
    case 'place-lids-by-hand':
      return 'Setting the lid marks under the loupe';
    case 'place-midline-by-hand':
      return 'Setting the midline under the loupe';
    case 'repeat':
      return isSweep ? 'A second sweep, and the mean of both,' : 'A second picture, and the mean of both,';
    default:
      return unreachable(kind);
  }
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
  if (remedy === null) return 'No single step would make this much surer.';
  const thenHalfWidth = (nowHalfWidth * remedy.standardUncertainty) / nowUncertainty;
  // A second decimal where the first does not show the difference.
  const decimals = formatNumber(nowHalfWidth, 1) === formatNumber(thenHalfWidth, 1) ? 2 : 1;
  const from = `±\u00a0${formatNumber(nowHalfWidth, decimals)}`;
  const to = `±\u00a0${formatNumber(thenHalfWidth, decimals)}\u00a0${unit === 'deg' ? '°' : unit}`;
  return `${remedyWords(remedy.kind, isSweep)} would bring this from ${from} to about ${to}.`;
}
