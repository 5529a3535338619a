import type { Sourced } from '../catalogue/source-status.js';
import { invariant } from '../result.js';
import type { LensKind } from './prescription.js';

/** The standard that the prism of a mounted pair is held against. */
export type StandardId = 'ansi-z80.1' | 'iso-21987';

/** How much prism between the eyes a mounted pair may have along one direction, beyond what was ordered. */
export interface ImbalanceLimit {
  /** for an ordered prism up to this, prism dioptres; the last row has no end */
  readonly orderedUpTo: number;
  /** lenses up to this power along the direction, dioptres, may have `prism` */
  readonly upToD: number;
  readonly prism: number;
  /** stronger ones may have this plus the prism of a shift of the pair's centres by `shiftMm` */
  readonly beyond: { readonly prism: number; readonly shiftMm: number };
}

export interface ImbalanceLimits extends Sourced {
  /** smallest ordered prism first */
  readonly horizontal: readonly ImbalanceLimit[];
  readonly vertical: readonly ImbalanceLimit[];
}

/** How far the parts of a lens that have their place before the eye may lie off it, mm. */
export interface PositionLimits extends Sourced {
  /** fitting point of one progressive lens */
  readonly fittingPoint: { readonly horizontalMm: number; readonly verticalMm: number };
  /** segments of a multifocal pair: distance between both, and height of each; null where it is not known here */
  readonly segments: { readonly distanceMm: number; readonly heightMm: number } | null;
}

/** What a standard asks of a mounted pair, as far as it is known here. */
export interface CentrationStandard {
  readonly id: StandardId;
  readonly name: string;
  readonly edition: string;
  readonly imbalance: ImbalanceLimits;
  readonly progressiveImbalance: ImbalanceLimits;
  readonly position: PositionLimits;
}

const WITHOUT_END = Number.POSITIVE_INFINITY;

const ANSI: CentrationStandard = {
  id: 'ansi-z80.1',
  name: 'ANSI Z80.1',
  edition: '2015',
  imbalance: {
    horizontal: [{ orderedUpTo: WITHOUT_END, upToD: 2.75, prism: 0.67, beyond: { prism: 0, shiftMm: 2.5 } }],
    vertical: [{ orderedUpTo: WITHOUT_END, upToD: 3.375, prism: 0.33, beyond: { prism: 0, shiftMm: 1 } }],
    source:
      'ANSI Z80.1-2015, mounted pairs, as three summaries report it; the editions of 1999 and 2010 agree, that of 2020 was not compared',
    status: 'verified-secondary',
  },
  progressiveImbalance: {
    // 1.0 mm at each reference point: 2.0 mm for the pair. One summary prints 3.75 D as the limit, later editions 3.375 D from memory.
    horizontal: [{ orderedUpTo: WITHOUT_END, upToD: 3.375, prism: 0.67, beyond: { prism: 0, shiftMm: 2 } }],
    vertical: [{ orderedUpTo: WITHOUT_END, upToD: 3.375, prism: 0.33, beyond: { prism: 0, shiftMm: 1 } }],
    source:
      'ANSI Z80.1-1999, progressive lenses, as a summary reports it; the power limit of 3.375 D of later editions is from memory',
    status: 'from-memory',
  },
  position: {
    // The standard names it for strong lenses only. Here it holds for all: a corridor lies where it lies, whatever the power.
    fittingPoint: { horizontalMm: 1, verticalMm: 1 },
    segments: { distanceMm: 2.5, heightMm: 1 },
    source: 'ANSI Z80.1, segments (2015) and fitting points (1999), as summaries report them',
    status: 'verified-secondary',
  },
};

const ISO_LIMITS: ImbalanceLimits = {
  horizontal: [
    { orderedUpTo: 2, upToD: 3.25, prism: 0.67, beyond: { prism: 0, shiftMm: 2 } },
    { orderedUpTo: 10, upToD: 3.25, prism: 1, beyond: { prism: 0.33, shiftMm: 2 } },
    { orderedUpTo: WITHOUT_END, upToD: 3.25, prism: 1.25, beyond: { prism: 0.58, shiftMm: 2 } },
  ],
  vertical: [
    { orderedUpTo: 2, upToD: 5, prism: 0.5, beyond: { prism: 0, shiftMm: 1 } },
    { orderedUpTo: 10, upToD: 5, prism: 0.75, beyond: { prism: 0.25, shiftMm: 1 } },
    { orderedUpTo: WITHOUT_END, upToD: 5, prism: 1, beyond: { prism: 0.5, shiftMm: 1 } },
  ],
  source: 'ISO 21987 (2009, 2017), table of prism imbalance, from memory',
  status: 'from-memory',
};

const ISO: CentrationStandard = {
  id: 'iso-21987',
  name: 'ISO 21987',
  edition: '2017',
  imbalance: ISO_LIMITS,
  progressiveImbalance: ISO_LIMITS,
  position: {
    fittingPoint: { horizontalMm: 1, verticalMm: 1 },
    segments: null,
    source: 'ISO 21987 (2009, 2017), fitting point, from memory',
    status: 'from-memory',
  },
};

/** The standards that a practice can choose from. */
export const CENTRATION_STANDARDS: Readonly<Record<StandardId, CentrationStandard>> = {
  'ansi-z80.1': ANSI,
  'iso-21987': ISO,
};

/** The limits that a standard has for the imbalance of lenses of a kind. */
export function imbalanceLimitsOf(standard: CentrationStandard, kind: LensKind): ImbalanceLimits {
  return kind === 'progressive' ? standard.progressiveImbalance : standard.imbalance;
}

/** How much prism is allowed, and by which rule. */
export interface AllowedPrism {
  readonly prism: number;
  /** the shift and the power from which it follows; null where the standard names the prism itself */
  readonly ofShift: { readonly shiftMm: number; readonly powerD: number } | null;
}

/**
 * The imbalance allowed for lenses of `powerD` along the direction (its sign does not count) and an ordered prism, prism dioptres.
 */
export function allowedPrism(limits: readonly ImbalanceLimit[], powerD: number, ordered: number): AllowedPrism {
  const limit = limits.find(({ orderedUpTo }) => Math.abs(ordered) <= orderedUpTo) ?? limits.at(-1);
  invariant(limit !== undefined, 'a standard has at least one limit');
  const strength = Math.abs(powerD);
  if (strength <= limit.upToD) return { prism: limit.prism, ofShift: null };
  const { prism, shiftMm } = limit.beyond;
  return { prism: prism + (strength * shiftMm) / 10, ofShift: { shiftMm, powerD: strength } };
}
