import type { MeasurementId } from '../catalogue/measurement.js';
import { invariant } from '../result.js';
import { freeOfDust } from '../statistics/free-of-dust.js';

/**
 * A hand instrument. What is typed is what its scale shows; the value follows from it: scale reading plus `zeroOffset` less
 * `bias`. Lengths in millimetres, angles in degrees, as the measurements that it serves.
 */
export interface Gauge {
  readonly id: string;
  /** what the practice calls it; empty for one that only a table of records speaks of */
  readonly name: string;
  /** the measurements that it is used for */
  readonly serves: readonly MeasurementId[];
  /** step of its scale */
  readonly resolution: number;
  /** what has to be added to each scale reading; 0 for a gauge that starts at zero */
  readonly zeroOffset: number;
  /** by how much its values are known to be too large after the offset was added */
  readonly bias: number;
  /** the day of its last check as year-month-day; null where nobody noted one */
  readonly checkedOn: string | null;
}

/** What a reader wrote down with a gauge, and what follows from it. */
export interface GaugedValue {
  readonly scale: number;
  readonly value: number;
}

/** What a gauge's scale reading stands for; null is a plain rule, which is read as it stands. Same unit on both sides. */
export function gaugedValue(scale: number, gauge: Gauge | null): GaugedValue {
  return { scale: scale + 0, value: freeOfDust(scale + addedByGauge(gauge)) };
}

/** What is added to each scale reading in all: the offset less the known bias; 0 for a plain rule. */
export function addedByGauge(gauge: Gauge | null): number {
  return gauge === null ? 0 : freeOfDust(gauge.zeroOffset - gauge.bias);
}

/** Chosen: a year, as long as most practices leave between two checks of a gauge. */
const CHECK_INTERVAL_DAYS = 365;

/** Whether a gauge's last check still stands. */
export type GaugeCheck =
  /** trust it */
  | { readonly kind: 'recent'; readonly daysAgo: number }
  /** drift since then would not be known: check it against something of known size */
  | { readonly kind: 'old'; readonly daysAgo: number; readonly limitDays: number }
  /** no day was noted, or none of the calendar, or one that is still to come: check it, or mend the date */
  | { readonly kind: 'unknown' };

/** How long ago a gauge was checked. `today` is a date or a time of ISO 8601 (year-month-day first). */
export function checkOfGauge(gauge: Gauge, today: string, limitDays = CHECK_INTERVAL_DAYS): GaugeCheck {
  const now = dayNumber(today);
  invariant(now !== null, `today is a day of the calendar, got ${today}`);
  const checked = gauge.checkedOn === null ? null : dayNumber(gauge.checkedOn);
  if (checked === null || checked > now) return { kind: 'unknown' };
  const daysAgo = now - checked;
  return daysAgo > limitDays ? { kind: 'old', daysAgo, limitDays } : { kind: 'recent', daysAgo };
}

const MS_PER_DAY = 86_400_000;

/** Days since 1970 of a text that begins with year-month-day; null where that is no day of the calendar. */
function dayNumber(iso: string): number | null {
  const day = /^\d{4}-\d{2}-\d{2}(?=$|T)/.exec(iso)?.[0];
  if (day === undefined) return null;
  const atMidnight = new Date(`${day}T00:00:00Z`);
  // a 30th of February rolls over into March where it is not refused
  if (Number.isNaN(atMidnight.getTime()) || atMidnight.toISOString().slice(0, 10) !== day) return null;
  return atMidnight.getTime() / MS_PER_DAY;
}
