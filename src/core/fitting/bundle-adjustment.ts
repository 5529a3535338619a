import { fail, succeed, type Result } from '../result.js';
import { robustCost, robustWeight, type Propagation } from './adjustment.js';
import { derivatives } from './derivatives.js';
import { invertSymmetric, type IllConditioned } from './linear-system.js';

/**
 * What is known of parameters that all frames share, and of those that each frame has for itself. Every residual stands over its own
 * standard uncertainty, so that its variance is one; priors are residuals like any other.
 */
export interface BundleKnowledge<Source extends string> {
  /** of the shared parameters alone */
  readonly shared: {
    readonly sources: readonly Source[];
    readonly residuals: (shared: readonly number[]) => readonly number[];
  };
  readonly frames: readonly FrameKnowledge<Source>[];
  /** the frames depend on the first so many of the shared parameters only; the others stand in priors and outputs */
  readonly seenByFrames: number;
}

/** What one frame says: residuals of the shared parameters and of the frame's own. */
export interface FrameKnowledge<Source extends string> {
  /** the source of each residual, in their order */
  readonly sources: readonly Source[];
  /** whether the residual at this place may be an outlier, and then counts for less the larger it is */
  readonly robust: (place: number) => boolean;
  readonly residuals: (shared: readonly number[], own: readonly number[]) => readonly number[];
}

export interface BundleStart {
  readonly shared: readonly number[];
  readonly frames: readonly (readonly number[])[];
}

/** Steps for numeric derivatives, in the unit of each parameter: small against its doubt, large against rounding. */
export interface BundleSteps {
  readonly shared: readonly number[];
  readonly own: readonly number[];
}

export interface BundleAdjustment<Source extends string> {
  readonly shared: readonly number[];
  readonly frames: readonly (readonly number[])[];
  /** of the shared parameters, all that the frames' own leave open included */
  readonly covariance: readonly (readonly number[])[];
  /** residuals of each frame, each over its standard uncertainty */
  readonly frameResiduals: readonly (readonly number[])[];
  readonly iterations: number;
  /** sum of the squares of all residuals; those that may be outliers count by their loss */
  readonly cost: number;
  /** value and standard uncertainty, split by source, of a function of the shared parameters; see `Adjustment.propagate` */
  readonly propagate: (output: (shared: readonly number[]) => number) => Propagation<Source>;
}

/** An iteration that lowers the cost by less than this share is the last. Chosen: results then stand to a hundredth of their doubt or better. */
const RELATIVE_GAIN = 1e-6;

/** Derivatives of one block of residuals by shared and own parameters; each row is a residual. */
interface Block {
  readonly residuals: readonly number[];
  readonly weights: readonly number[];
  readonly byShared: readonly Float64Array[];
  readonly byOwn: readonly Float64Array[];
}

/** Normal equations of one frame: own by own, own by shared, and the downhill direction of its own parameters. */
interface FrameNormal {
  readonly ownByOwn: number[][];
  readonly ownByShared: readonly Float64Array[];
  readonly ownDownhill: readonly number[];
}

/**
 * Levenberg-Marquardt over a bundle. A frame's own parameters meet only the shared ones, so the normal matrix is an arrow: the frames
 * are eliminated one by one (Schur's complement; Triggs et al., Bundle adjustment - a modern synthesis, 2000, section 6) and the work grows
 * with the number of frames, not with its cube.
 *
 * @param onProgress called after each round with the number of rounds done
 * @returns `ill-conditioned` where the knowledge does not determine the parameters
 */
export function adjustBundle<Source extends string>(
  knowledge: BundleKnowledge<Source>,
  start: BundleStart,
  steps: BundleSteps,
  iterationLimit = 40,
  onProgress: (iterations: number) => void = () => undefined,
): Result<BundleAdjustment<Source>, IllConditioned> {
  const { frames } = knowledge;
  let shared = [...start.shared];
  let own = start.frames.map((each) => [...each]);

  const residualsOf = (s: readonly number[], o: readonly (readonly number[])[]) => ({
    prior: knowledge.shared.residuals(s),
    frames: frames.map((frame, i) => frame.residuals(s, o[i]!)),
  });
  const costOf = ({ prior, frames: seen }: ReturnType<typeof residualsOf>): number => {
    let cost = prior.reduce((sum, r) => sum + r * r, 0);
    seen.forEach((residuals, i) => {
      residuals.forEach((r, k) => (cost += frames[i]!.robust(k) ? robustCost(r) : r * r));
    });
    return cost;
  };

  let residuals = residualsOf(shared, own);
  let cost = costOf(residuals);
  let damping = 1e-3;
  let iterations = 0;
  while (iterations < iterationLimit) {
    if (!Number.isFinite(cost)) return fail({ kind: 'ill-conditioned' });
    const blocks = linearise(knowledge, shared, own, steps, residuals);
    iterations += 1;
    let improved = false;
    let relativeGain = 0;
    while (!improved && damping < 1e10) {
      const move = solve(blocks, damping, shared.length);
      if (move !== null) {
        const nextShared = shared.map((value, i) => value + move.shared[i]!);
        const nextOwn = own.map((values, i) => values.map((value, k) => value + move.frames[i]![k]!));
        const nextResiduals = residualsOf(nextShared, nextOwn);
        const nextCost = costOf(nextResiduals);
        if (nextCost <= cost) {
          relativeGain = (cost - nextCost) / Math.max(cost, 1e-12);
          shared = nextShared;
          own = nextOwn;
          residuals = nextResiduals;
          cost = nextCost;
          improved = true;
        }
      }
      damping = improved ? Math.max(damping / 10, 1e-9) : damping * 10;
    }
    onProgress(iterations);
    if (!improved || relativeGain < RELATIVE_GAIN) break;
  }

  const blocks = linearise(knowledge, shared, own, steps, residuals);
  const eliminated = eliminate(blocks, 0, shared.length);
  const covariance = eliminated === null ? null : invertSymmetric(eliminated.reduced);
  if (eliminated === null || covariance === null) return fail({ kind: 'ill-conditioned' });

  const propagate = (output: (parameters: readonly number[]) => number): Propagation<Source> => {
    const slope = derivatives((parameters) => [output(parameters)], shared, steps.shared)[0]!;
    const sensitivity = covariance.map((row) => row.reduce((sum, value, i) => sum + value * slope[i]!, 0));
    const squares = new Map<Source, number>();
    const count = (source: Source, weight: number, influence: number): void => {
      squares.set(source, (squares.get(source) ?? 0) + weight * influence * influence);
    };
    knowledge.shared.sources.forEach((source, k) => {
      count(source, 1, product(blocks.prior.byShared[k]!, sensitivity));
    });
    blocks.frames.forEach((block, i) => {
      // The frame's own part of cov g: -D^-1 B (cov g).
      const { inverse, normal } = eliminated.frames[i]!;
      const crossed = normal.ownByShared.map((row) => product(row, sensitivity));
      const ownSensitivity = inverse.map((row) => -row.reduce((sum, value, k) => sum + value * crossed[k]!, 0));
      frames[i]!.sources.forEach((source, k) => {
        const influence = product(block.byShared[k]!, sensitivity) + product(block.byOwn[k]!, ownSensitivity);
        count(source, block.weights[k]!, influence);
      });
    });
    const bySource = new Map([...squares].map(([source, square]) => [source, Math.sqrt(square)]));
    const whole = Math.sqrt([...squares.values()].reduce((sum, square) => sum + square, 0));
    return { value: output(shared), standardUncertainty: whole, bySource };
  };
  return succeed({ shared, frames: own, covariance, frameResiduals: residuals.frames, iterations, cost, propagate });
}

function product(row: Float64Array, vector: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < row.length; i++) sum += row[i]! * vector[i]!;
  return sum;
}

interface Blocks {
  readonly prior: Omit<Block, 'byOwn'>;
  readonly frames: readonly Block[];
}

function linearise<Source extends string>(
  { shared: prior, frames, seenByFrames }: BundleKnowledge<Source>,
  shared: readonly number[],
  own: readonly (readonly number[])[],
  steps: BundleSteps,
  residuals: { readonly prior: readonly number[]; readonly frames: readonly (readonly number[])[] },
): Blocks {
  return {
    prior: {
      residuals: residuals.prior,
      weights: residuals.prior.map(() => 1),
      byShared: derivatives(prior.residuals, shared, steps.shared),
    },
    frames: frames.map((frame, i) => {
      const values = own[i]!;
      const here = residuals.frames[i]!;
      return {
        residuals: here,
        weights: here.map((r, k) => (frame.robust(k) ? robustWeight(r) : 1)),
        byShared: derivatives((s) => frame.residuals(s, values), shared, steps.shared, seenByFrames),
        byOwn: derivatives((o) => frame.residuals(shared, o), values, steps.own),
      };
    }),
  };
}

interface Eliminated {
  /** normal matrix and downhill direction of the shared parameters once the frames' own are eliminated */
  readonly reduced: number[][];
  readonly downhill: number[];
  readonly frames: readonly { readonly inverse: number[][]; readonly normal: FrameNormal }[];
}

/** Schur's complement of the frames' own parameters; null where a frame's own parameters are not determined. */
function eliminate({ prior, frames }: Blocks, damping: number, size: number): Eliminated | null {
  const reduced = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const downhill = new Array<number>(size).fill(0);
  const addRow = (row: Float64Array, weight: number, residual: number): void => {
    for (let a = 0; a < size; a++) {
      const weighted = weight * row[a]!;
      if (weighted === 0) continue;
      downhill[a]! -= weighted * residual;
      for (let b = 0; b <= a; b++) reduced[a]![b]! += weighted * row[b]!;
    }
  };
  prior.byShared.forEach((row, k) => {
    addRow(row, 1, prior.residuals[k]!);
  });
  for (const { byShared, weights, residuals } of frames) {
    byShared.forEach((row, k) => {
      addRow(row, weights[k]!, residuals[k]!);
    });
  }
  for (let a = 0; a < size; a++) reduced[a]![a]! *= 1 + damping;

  const eliminated: { inverse: number[][]; normal: FrameNormal }[] = [];
  for (const frame of frames) {
    const normal = normalOfFrame(frame, damping, size);
    const inverse = invertSymmetric(normal.ownByOwn);
    if (inverse === null) return null;
    // reduced -= B^T D^-1 B, downhill -= B^T D^-1 d
    const { ownByShared, ownDownhill } = normal;
    const own = ownByShared.length;
    for (let k = 0; k < own; k++) {
      const solved = new Float64Array(size);
      let solvedDownhill = 0;
      for (let j = 0; j < own; j++) {
        const factor = inverse[k]![j]!;
        const row = ownByShared[j]!;
        for (let b = 0; b < size; b++) solved[b]! += factor * row[b]!;
        solvedDownhill += factor * ownDownhill[j]!;
      }
      const row = ownByShared[k]!;
      for (let a = 0; a < size; a++) {
        const value = row[a]!;
        if (value === 0) continue;
        downhill[a]! -= value * solvedDownhill;
        for (let b = 0; b <= a; b++) reduced[a]![b]! -= value * solved[b]!;
      }
    }
    eliminated.push({ inverse, normal });
  }
  for (let a = 0; a < size; a++) for (let b = 0; b < a; b++) reduced[b]![a] = reduced[a]![b]!;
  return { reduced, downhill, frames: eliminated };
}

function normalOfFrame({ byShared, byOwn, weights, residuals }: Block, damping: number, size: number): FrameNormal {
  const own = byOwn[0]!.length;
  const ownByOwn = Array.from({ length: own }, () => new Array<number>(own).fill(0));
  const ownByShared = Array.from({ length: own }, () => new Float64Array(size));
  const ownDownhill = new Array<number>(own).fill(0);
  byOwn.forEach((row, k) => {
    const weight = weights[k]!;
    const shared = byShared[k]!;
    for (let a = 0; a < own; a++) {
      const weighted = weight * row[a]!;
      if (weighted === 0) continue;
      ownDownhill[a]! -= weighted * residuals[k]!;
      for (let b = 0; b < own; b++) ownByOwn[a]![b]! += weighted * row[b]!;
      const crossed = ownByShared[a]!;
      for (let b = 0; b < size; b++) crossed[b]! += weighted * shared[b]!;
    }
  });
  for (let a = 0; a < own; a++) ownByOwn[a]![a]! *= 1 + damping;
  return { ownByOwn, ownByShared, ownDownhill };
}

function solve(
  blocks: Blocks,
  damping: number,
  size: number,
): { readonly shared: readonly number[]; readonly frames: readonly (readonly number[])[] } | null {
  const eliminated = eliminate(blocks, damping, size);
  if (eliminated === null) return null;
  const inverse = invertSymmetric(eliminated.reduced);
  if (inverse === null) return null;
  const shared = inverse.map((row) => row.reduce((sum, value, i) => sum + value * eliminated.downhill[i]!, 0));
  const frames = eliminated.frames.map(({ inverse: own, normal }) => {
    const rest = normal.ownDownhill.map((value, k) => value - product(normal.ownByShared[k]!, shared));
    return own.map((row) => row.reduce((sum, value, k) => sum + value * rest[k]!, 0));
  });
  return { shared, frames };
}
