import type { Gauge } from '../core/reading/gauge.js';
import { parseDecimal } from '../core/reading/parse-reading.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';

/** A gauge as it is typed; lengths and angles in the unit of what it serves. */
export interface TypedGauge {
  readonly name: string;
  readonly resolution: string;
  /** empty for a gauge that starts at zero */
  readonly zeroOffset: string;
  /** empty where none is known */
  readonly bias: string;
  /** year-month-day; empty where nobody noted it */
  readonly checkedOn: string;
}

/** What can be read from a typed gauge: which one it is and what it serves is chosen, not typed. */
export type GaugeFacts = Omit<Gauge, 'id' | 'serves'>;

/** Why a field of a gauge cannot be used. */
export type GaugeFailure = { readonly field: keyof TypedGauge } & (
  | { readonly kind: 'missing' }
  | { readonly kind: 'not-a-number'; readonly typed: string }
  | { readonly kind: 'beyond-limits'; readonly lowest: number; readonly highest: number }
  /** not year-month-day, or no day of the calendar */
  | { readonly kind: 'not-a-day'; readonly typed: string }
);

/** Chosen: from a vernier to a scale in tens. */
const RESOLUTION_LIMITS = { lowest: 0.01, highest: 10 } as const;

/** Chosen: no gauge for a face adds as much as the length of a head. */
const SUM_LIMITS = { lowest: -200, highest: 200 } as const;

/** The gauge from what was typed, or all fields that cannot be used. */
export function parseGauge(typed: TypedGauge): Result<GaugeFacts, readonly GaugeFailure[]> {
  const name = typed.name.trim();
  const resolution = number('resolution', typed.resolution, RESOLUTION_LIMITS);
  const zeroOffset = numberOrZero('zeroOffset', typed.zeroOffset);
  const bias = numberOrZero('bias', typed.bias);
  const checkedOn = day(typed.checkedOn);
  if (name !== '' && resolution.ok && zeroOffset.ok && bias.ok && checkedOn.ok) {
    return succeed({
      name,
      resolution: resolution.value,
      zeroOffset: zeroOffset.value,
      bias: bias.value,
      checkedOn: checkedOn.value,
    });
  }
  const missing: readonly GaugeFailure[] = name === '' ? [{ field: 'name', kind: 'missing' }] : [];
  const failed = [resolution, zeroOffset, bias, checkedOn].flatMap((one) => (one.ok ? [] : [one.failure]));
  return fail([...missing, ...failed]);
}

function number(
  field: keyof TypedGauge,
  text: string,
  { lowest, highest }: { readonly lowest: number; readonly highest: number },
): Result<number, GaugeFailure> {
  const parsed = parseDecimal(text);
  if (!parsed.ok)
    return fail(parsed.failure.kind === 'empty' ? { field, kind: 'missing' } : { field, ...parsed.failure });
  if (parsed.value < lowest || parsed.value > highest) return fail({ field, kind: 'beyond-limits', lowest, highest });
  return parsed;
}

function numberOrZero(field: keyof TypedGauge, text: string): Result<number, GaugeFailure> {
  return text.trim() === '' ? succeed(0) : number(field, text, SUM_LIMITS);
}

function day(text: string): Result<string | null, GaugeFailure> {
  const typed = text.trim();
  if (typed === '') return succeed(null);
  return isDay(typed) ? succeed(typed) : fail({ field: 'checkedOn', kind: 'not-a-day', typed });
}

/** A 30th of February would roll over into March. */
function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const atMidnight = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(atMidnight.getTime()) && atMidnight.toISOString().startsWith(text);
}
