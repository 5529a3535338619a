/** A place on an axis that is written beside it. */
export interface AxisTick {
  readonly at: number;
  readonly text: string;
}

const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];

/** An axis from `low` to `high`, widened to whole steps of at most `most` spaces, with the places that are written beside it. */
export function valueAxis(
  low: number,
  high: number,
  most: number,
  textOf: (value: number, decimals: number) => string,
): { readonly low: number; readonly high: number; readonly ticks: readonly AxisTick[] } {
  const spaces = (step: number): number => Math.ceil(high / step - 1e-9) - Math.floor(low / step + 1e-9);
  const step = STEPS.find((one) => spaces(one) <= most) ?? 200;
  const first = Math.floor(low / step + 1e-9);
  const count = Math.max(1, spaces(step));
  const decimals = step < 1 ? 1 : 0;
  return {
    low: first * step,
    high: (first + count) * step,
    ticks: Array.from({ length: count + 1 }, (_, place) => {
      const at = (first + place) * step;
      return { at, text: textOf(at, decimals) };
    }),
  };
}

/** What a place on a time axis is called by. */
export type TimeTick = { readonly atMs: number; readonly by: 'day' | 'month' | 'year' };

const DAY_MS = 86_400_000;
const DAY_STEPS = [1, 2, 7, 14];
const MONTH_STEPS = [1, 2, 3, 6];

/** From so many days on months are counted, from so many on years; chosen. */
const MONTHS_FROM_DAYS = 62;
const YEARS_FROM_DAYS = 1500;

/**
 * Days, first days of months or of years (where this runs) from one time to another, at most about `most` of them. The first of a
 * year is one of the places wherever months are counted.
 */
export function timeTicks(fromMs: number, toMs: number, most: number): readonly TimeTick[] {
  const days = (toMs - fromMs) / DAY_MS;
  const from = new Date(fromMs);
  if (days < MONTHS_FROM_DAYS) {
    const step = DAY_STEPS.find((one) => days / one <= most) ?? 31;
    const first = new Date(from.getFullYear(), from.getMonth(), from.getDate() + 1);
    return upTo(toMs, (place) => new Date(first.getFullYear(), first.getMonth(), first.getDate() + place * step)).map(
      (atMs) => ({ atMs, by: 'day' }),
    );
  }
  if (days < YEARS_FROM_DAYS) {
    const step = MONTH_STEPS.find((one) => days / 30.4 / one <= most) ?? 12;
    const first = Math.floor(from.getMonth() / step + 1) * step;
    return upTo(toMs, (place) => new Date(from.getFullYear(), first + place * step, 1)).map((atMs) => ({
      atMs,
      by: 'month',
    }));
  }
  const step = Math.max(1, Math.ceil(days / 365.25 / most));
  return upTo(toMs, (place) => new Date(from.getFullYear() + 1 + place * step, 0, 1)).map((atMs) => ({
    atMs,
    by: 'year',
  }));
}

function upTo(toMs: number, dateOf: (place: number) => Date): readonly number[] {
  const found: number[] = [];
  for (let place = 0; ; place += 1) {
    const atMs = dateOf(place).getTime();
    if (atMs > toMs) return found;
    found.push(atMs);
  }
}
