import type { Tolerance } from '../catalogue/measurement.js';
import type { Estimate } from '../estimate/estimate.js';
import type { Reading } from '../reading/reading.js';
import { enNumber } from '../statistics/en-number.js';
import { NORMAL_95 } from '../statistics/normal.js';
import type { CannotTellReason, Comparison, Finding } from './finding.js';
import { ROUNDING_SLACK } from './rounding-slack.js';

/**
 * What a hand reading and the camera's estimate of the same measurement say together; both in the unit of the measurement.
 *
 * | difference | doubts (95 %) | finding |
 * | --- | --- | --- |
 * | within the tolerance | both within it | agrees |
 * | within the tolerance | one beyond it | cannot tell: closeness may be luck |
 * | beyond the tolerance | E_n beyond 1 | disagrees, even if the camera is coarse |
 * | beyond the tolerance | E_n within 1 | cannot tell: the doubts may explain it |
 *
 * E_n as in ISO 13528, with both intervals at 95 %.
 */
export function compareReading(reading: Reading, estimate: Estimate, tolerance: Tolerance): Finding {
  const difference = reading.value - estimate.value;
  const handExpanded = NORMAL_95 * reading.standardUncertainty;
  const cameraExpanded = NORMAL_95 * estimate.standardUncertainty;
  const differenceExpanded = Math.hypot(handExpanded, cameraExpanded);
  const comparison: Comparison = {
    name: reading.name,
    difference,
    differenceLow: difference - differenceExpanded,
    differenceHigh: difference + differenceExpanded,
    handExpanded,
    cameraExpanded,
    enNumber: enNumber(
      { value: reading.value, expandedUncertainty: handExpanded },
      { value: estimate.value, expandedUncertainty: cameraExpanded },
    ),
    tolerance,
  };
  const within = Math.abs(difference) <= tolerance.value + ROUNDING_SLACK;
  const reason = within ? doubtWithin(comparison) : doubtBeyond(comparison);
  if (reason !== null) return { kind: 'cannot-tell', comparison, reason };
  return { kind: within ? 'agrees' : 'disagrees', comparison };
}

function doubtWithin({ cameraExpanded, handExpanded, tolerance }: Comparison): CannotTellReason | null {
  if (cameraExpanded > tolerance.value) return { kind: 'camera-too-uncertain', neededCameraExpanded: tolerance.value };
  if (handExpanded > tolerance.value) return { kind: 'hand-too-uncertain', neededHandExpanded: tolerance.value };
  return null;
}

function doubtBeyond(comparison: Comparison): CannotTellReason | null {
  const { cameraExpanded, handExpanded, tolerance } = comparison;
  if (Math.abs(comparison.enNumber) > 1) return null;
  const difference = Math.abs(comparison.difference);
  if (handExpanded >= difference) return { kind: 'hand-too-uncertain', neededHandExpanded: tolerance.value };
  // E_n reaches 1 where the two doubts together just span the difference
  const deciding = Math.sqrt(difference ** 2 - handExpanded ** 2);
  if (cameraExpanded > tolerance.value) {
    return { kind: 'camera-too-uncertain', neededCameraExpanded: Math.min(deciding, tolerance.value) };
  }
  return { kind: 'between', neededCameraExpanded: deciding };
}
