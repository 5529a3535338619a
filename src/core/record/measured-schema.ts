import * as z from 'zod/mini';
import type { Advice } from '../camera/failure.js';
import type {
  AlwaysEstimated,
  BudgetLine,
  Estimate,
  EstimateUnit,
  FaceEstimates,
  SometimesEstimated,
} from '../estimate/estimate.js';
import { BUDGET_SOURCES } from '../estimate/estimate.js';
import type { SweepAdvice } from '../estimate/sweep.js';

/**
 * Chosen: how far the squares of a budget may miss the square of its sum, relative to it. A sum of a dozen doubles is exact to
 * far less; a budget that is off by a hundredth is not one of ours.
 */
const BUDGET_TOLERANCE = 0.01;

/** Chosen: no length of a face or before it, in mm, and no angle of a head, in degrees, is larger. */
const LARGEST: Readonly<Record<EstimateUnit, number>> = { mm: 10_000, deg: 180 };

const budgetLineSchema: z.ZodMiniType<BudgetLine> = z.object({
  source: z.enum(BUDGET_SOURCES),
  standardUncertainty: z.number().check(z.nonnegative()),
});

function estimateIn<Unit extends EstimateUnit>(unit: Unit): z.ZodMiniType<Estimate & { readonly unit: Unit }> {
  const within = z.number().check(z.gte(-LARGEST[unit]), z.lte(LARGEST[unit]));
  return z
    .object({
      value: within,
      standardUncertainty: z.number().check(z.positive(), z.lte(LARGEST[unit])),
      low: z.number(),
      high: z.number(),
      unit: z.literal(unit),
      budget: z.array(budgetLineSchema).check(z.maxLength(BUDGET_SOURCES.length)),
    })
    .check(
      z.refine(({ value, low, high }) => low <= value && value <= high, { path: ['low'] }),
      z.refine(
        ({ standardUncertainty, budget }) =>
          Math.abs(Math.hypot(...budget.map((line) => line.standardUncertainty)) / standardUncertainty - 1) <
          BUDGET_TOLERANCE,
        { path: ['budget'] },
      ),
      z.refine(({ budget }) => new Set(budget.map(({ source }) => source)).size === budget.length, {
        path: ['budget'],
      }),
    );
}

const millimetres = estimateIn('mm');
const degrees = estimateIn('deg');

/** One estimate of either unit: the interval holds the value, and the squares of the budget add up to the uncertainty's. */
export const estimateSchema: z.ZodMiniType<Estimate> = z.union([millimetres, degrees]);

const always: { readonly [Name in AlwaysEstimated]: z.ZodMiniType<Estimate> } = {
  pdFar: millimetres,
  pdShown: millimetres,
  pdNear: millimetres,
  monoPdR: millimetres,
  monoPdL: millimetres,
  monoNearR: millimetres,
  monoNearL: millimetres,
  apertureR: millimetres,
  apertureL: millimetres,
  headWidth: millimetres,
  templeWidth: millimetres,
  irisDiameter: millimetres,
  distance: millimetres,
  headYaw: degrees,
  headPitch: degrees,
  headRoll: degrees,
};

const sometimes: { readonly [Name in SometimesEstimated]: z.ZodMiniExactOptional<z.ZodMiniType<Estimate>> } = {
  pupilDiameterR: z.exactOptional(millimetres),
  pupilDiameterL: z.exactOptional(millimetres),
  distanceBetweenRims10: z.exactOptional(millimetres),
  distanceBetweenRims15: z.exactOptional(millimetres),
};

/** All that one picture or sweep says of a face. Names of another time are dropped. */
export const faceEstimatesSchema: z.ZodMiniType<FaceEstimates> = z.object({ ...always, ...sometimes });

const finite = z.number();
const count = z.int().check(z.nonnegative());

const comeNearer = z.object({ kind: z.literal('come-nearer'), pixelsPerMm: finite });

/** What would make the next picture better. */
export const adviceSchema: z.ZodMiniType<Advice> = z.discriminatedUnion('kind', [
  comeNearer,
  z.object({ kind: z.literal('card-covered'), edge: z.enum(['top', 'right', 'bottom', 'left']) }),
  z.object({ kind: z.literal('turn-to-camera'), turnDeg: finite }),
  z.object({ kind: z.literal('level-card'), rollDeg: finite }),
  z.object({ kind: z.literal('card-on-forehead') }),
  z.object({ kind: z.literal('check-points'), what: z.enum(['card', 'irisR', 'irisL']) }),
]);

/** What would make the next sweep better. */
export const sweepAdviceSchema: z.ZodMiniType<SweepAdvice> = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('turn-further'), rangeDeg: finite, usefulDeg: finite }),
  z.object({ kind: z.literal('lean-more'), ratio: finite, usefulRatio: finite }),
  z.object({ kind: z.literal('more-frames'), used: count, useful: count }),
  z.object({ kind: z.literal('card-slipped'), fromFrame: count }),
  comeNearer,
  z.object({ kind: z.literal('eyes-elsewhere') }),
]);
