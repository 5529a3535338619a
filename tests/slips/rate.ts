import { NORMAL_95 } from '../../src/core/statistics/normal.js';

/** How often something happened, with the 95 % interval of the probability behind it. Shares are null where there was no trial. */
export interface Rate {
  readonly hits: number;
  readonly trials: number;
  readonly share: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** Interval of Wilson (1927), the score interval without correction for continuity. */
export function rateOf(hits: number, trials: number): Rate {
  if (trials === 0) return { hits, trials, share: null, low: null, high: null };
  const share = hits / trials;
  const middle = (share + NORMAL_95 ** 2 / (2 * trials)) / (1 + NORMAL_95 ** 2 / trials);
  const half =
    (NORMAL_95 * Math.sqrt((share * (1 - share)) / trials + NORMAL_95 ** 2 / (4 * trials ** 2))) /
    (1 + NORMAL_95 ** 2 / trials);
  return { hits, trials, share, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}

export function rateAmong<Item>(items: readonly Item[], isHit: (item: Item) => boolean): Rate {
  return rateOf(items.filter(isHit).length, items.length);
}

/** `97.1 % (96.0 to 97.9)`, or `-` without trials. */
export function rateText({ share, low, high }: Rate): string {
  if (share === null || low === null || high === null) return '-';
  const percent = (value: number): string => (100 * value).toFixed(1);
  return `${percent(share)} % (${percent(low)} to ${percent(high)})`;
}
