import type { SweepMeasurement } from '../core/estimate/sweep.js';
import type { SweepFrame, SweepOutcome } from '../session/sweep-frames.js';
import { numberOfPlace } from '../session/sweep-frames.js';
import { words } from './language.js';

/** How many frames carried a sweep, and where the card slipped. */
export function sweepHeadline(
  { framesUsed, slippedFromFrame }: SweepMeasurement,
  frames: readonly SweepFrame[],
  outcome: SweepOutcome,
): string {
  const used = words.sweep.used(framesUsed, frames.length);
  return slippedFromFrame === null ? used : `${used} ${words.sweep.slipped(numberOfPlace(outcome, slippedFromFrame))}`;
}
