import { parseDecimal } from '../reading/parse-reading.js';
import type { Result } from '../result.js';
import { fail, succeed } from '../result.js';

/** Why what was typed is no number of dioptres (or prism dioptres) as prescriptions have them. */
export type DioptreFailure =
  { readonly kind: 'empty' } | { readonly kind: 'not-a-number'; readonly typed: string } | PowerFailure;

type PowerFailure =
  /** a power without a sign may be of either sign: type plus or minus */
  | { readonly kind: 'sign-missing'; readonly value: number }
  /** an addition or a prism is never negative */
  | { readonly kind: 'negative'; readonly value: number }
  /** neither a quarter nor an eighth of a dioptre: look at the prescription again */
  | { readonly kind: 'no-step'; readonly value: number }
  | { readonly kind: 'beyond-limits'; readonly value: number; readonly lowest: number; readonly highest: number };

/** A typed number of dioptres. */
export interface TypedDioptres {
  /** in eighths at the finest: 0.12 and 0.13 are both 0.125 */
  readonly value: number;
  /** an eighth that is no quarter: such lenses are made, but rarely prescribed */
  readonly isEighth: boolean;
}

export interface DioptreRules {
  /** `required`: every number but nothing needs a sign; `positive`: a minus is refused */
  readonly sign: 'required' | 'positive';
  readonly lowest: number;
  readonly highest: number;
  /** whether the number comes in quarters (and eighths) */
  readonly isInSteps: boolean;
}

/** Words for no power that the trade writes in place of a number. */
const PLANO = /^(plano|plan|pl|p|∞)\.?$/i;

/** Two decimals cut an eighth to 0.12 or 0.13, 0.37 or 0.38, and so on. */
const CUT_EIGHTH = 0.005 + 1e-9;

/**
 * The dioptres that a person typed, with point or comma, such as `-1.25`, `+0,50`, `plano` or `0`. Nothing is repaired: what is no step of a
 * prescription is refused.
 */
export function parseDioptres(typed: string, rules: DioptreRules): Result<TypedDioptres, DioptreFailure> {
  const trimmed = typed.trim();
  if (PLANO.test(trimmed)) return checked(0, rules);
  // A sign may stand apart from its number; parseDecimal knows it only right before it.
  const joined = trimmed.replace(/^([+\-−–])\s+/, '$1').replace(/^–/, '-');
  const parsed = parseDecimal(joined);
  if (!parsed.ok) return parsed.failure.kind === 'empty' ? parsed : fail({ kind: 'not-a-number', typed });
  const { value } = parsed;
  if (rules.sign === 'required' && value !== 0 && !/^[+\-−]/.test(joined)) return fail({ kind: 'sign-missing', value });
  return checked(value, rules);
}

function checked(value: number, rules: DioptreRules): Result<TypedDioptres, DioptreFailure> {
  if (rules.sign === 'positive' && value < 0) return fail({ kind: 'negative', value });
  const { lowest, highest } = rules;
  if (value < lowest || value > highest) return fail({ kind: 'beyond-limits', value, lowest, highest });
  if (!rules.isInSteps) return succeed({ value: plain(value), isEighth: false });
  const eighths = Math.round(value * 8);
  if (Math.abs(value - eighths / 8) > CUT_EIGHTH) return fail({ kind: 'no-step', value });
  const isEighth = eighths % 2 !== 0;
  // A quarter is written in full: 0.26 is no cut form of it.
  if (!isEighth && Math.abs(value - eighths / 8) > 1e-9) return fail({ kind: 'no-step', value });
  return succeed({ value: plain(eighths / 8), isEighth });
}

/** Nothing has no sign. */
function plain(value: number): number {
  return value === 0 ? 0 : value;
}
