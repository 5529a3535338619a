import type { MeasurementId } from '../catalogue/measurement.js';

/**
 * A hand instrument. What is typed is what its scale shows; the value follows from it: scale reading plus `zeroOffset` less
 * `bias`. Lengths in millimetres, angles in degrees, as the measurements that it serves.
 */
export interface Gauge {
  readonly id: string;
  /** what the practice calls it */
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
