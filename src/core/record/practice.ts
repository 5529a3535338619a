import type { Catalogue } from '../catalogue/catalogue.js';
import { definitionOfReading } from '../catalogue/definitions.js';
import type { Measurement, MeasurementId, ReadingName } from '../catalogue/measurement.js';
import { MEASUREMENT_GROUPS, type MeasurementGroup } from '../catalogue/measurement.js';
import type { StandardId } from '../lenses/centration-standards.js';
import type { Gauge } from '../reading/gauge.js';

export type { StandardId };

/** What belongs to the desk and not to a wearer: which rows are shown, how they are judged, with what they are read. */
export interface Practice {
  readonly hidden: readonly MeasurementId[];
  /** own tolerances in place of the catalogue's, in the unit of the measurement */
  readonly tolerances: { readonly [Id in MeasurementId]?: number };
  readonly gauges: readonly Gauge[];
  /** the gauge in use for a measurement, by its id; a plain rule where there is none */
  readonly gaugeInUse: { readonly [Id in MeasurementId]?: string };
  /** the blocks of the sheet in the order in which the practice measures; each once */
  readonly groupOrder: readonly MeasurementGroup[];
  readonly standard: StandardId;
}

/** Chosen: what a picture can check is shown from the start, and the rest is one choice away. */
export const DEFAULT_PRACTICE: Practice = {
  hidden: [],
  tolerances: {},
  gauges: [],
  gaugeInUse: {},
  groupOrder: MEASUREMENT_GROUPS,
  standard: 'ansi-z80.1',
};

/** The gauge that a measurement is read with; null for a plain rule. */
export function gaugeInUse(practice: Practice, id: MeasurementId): Gauge | null {
  const gaugeId = practice.gaugeInUse[id];
  return practice.gauges.find((gauge) => gauge.id === gaugeId && gauge.serves.includes(id)) ?? null;
}

/** The gauge that a place of the sheet is read with; null for a plain rule. */
export function gaugeOfReading(practice: Practice, name: ReadingName): Gauge | null {
  return gaugeInUse(practice, definitionOfReading(name).id);
}

/** The measurement as this practice judges it: with its own tolerance where it set one. */
export function judgedBy(practice: Practice, measurement: Measurement): Measurement {
  const value = practice.tolerances[measurement.id];
  if (value === undefined) return measurement;
  return { ...measurement, tolerance: { value, source: 'set by the practice', status: 'chosen' } };
}

/**
 * The measurements that the sheet shows, as the practice judges them: the blocks in its order, in each the order of the
 * catalogue.
 */
export function shownMeasurements(practice: Practice, catalogue: Catalogue): Catalogue {
  return practice.groupOrder.flatMap((group) =>
    catalogue
      .filter((measurement) => measurement.group === group && !practice.hidden.includes(measurement.id))
      .map((measurement) => judgedBy(practice, measurement)),
  );
}

/** The practice with the row of this measurement shown or hidden. */
export function withShown(practice: Practice, id: MeasurementId, isShown: boolean): Practice {
  const others = practice.hidden.filter((one) => one !== id);
  return { ...practice, hidden: isShown ? others : [...others, id] };
}

/** The practice with its own tolerance for a measurement; null goes back to the catalogue's. */
export function withTolerance(practice: Practice, id: MeasurementId, tolerance: number | null): Practice {
  return { ...practice, tolerances: withEntry(practice.tolerances, id, tolerance) };
}

/** The practice with this block one or more places earlier (negative) or later; at the ends it stays. */
export function withGroupMoved(practice: Practice, group: MeasurementGroup, by: number): Practice {
  const others = practice.groupOrder.filter((one) => one !== group);
  const place = Math.min(Math.max(practice.groupOrder.indexOf(group) + by, 0), others.length);
  return { ...practice, groupOrder: [...others.slice(0, place), group, ...others.slice(place)] };
}

/**
 * The practice with this gauge: a new one comes last, one with a known id takes that one's place. What it serves no more is
 * not read with it any more.
 */
export function withGauge(practice: Practice, gauge: Gauge): Practice {
  const isKnown = practice.gauges.some(({ id }) => id === gauge.id);
  return keptInUse({
    ...practice,
    gauges: isKnown ? practice.gauges.map((one) => (one.id === gauge.id ? gauge : one)) : [...practice.gauges, gauge],
  });
}

/** The practice without this gauge: what it was used for is read with a plain rule from now on. */
export function withoutGauge(practice: Practice, gaugeId: string): Practice {
  return keptInUse({ ...practice, gauges: practice.gauges.filter(({ id }) => id !== gaugeId) });
}

/** The practice with this gauge in use for a measurement; null for a plain rule. A gauge that does not serve it is not taken. */
export function withGaugeInUse(practice: Practice, id: MeasurementId, gaugeId: string | null): Practice {
  return keptInUse({ ...practice, gaugeInUse: withEntry(practice.gaugeInUse, id, gaugeId) });
}

/** Choices of gauges that are there no more, or do not serve the measurement, are dropped. */
export function keptInUse(practice: Practice): Practice {
  const kept = Object.entries(practice.gaugeInUse).filter(([id]) => gaugeInUse(practice, id as MeasurementId) !== null);
  return { ...practice, gaugeInUse: Object.fromEntries(kept) };
}

function withEntry<Value>(
  entries: { readonly [Id in MeasurementId]?: Value },
  id: MeasurementId,
  value: Value | null,
): { readonly [Id in MeasurementId]?: Value } {
  const others = Object.fromEntries(Object.entries(entries).filter(([one]) => one !== id));
  return value === null ? others : { ...others, [id]: value };
}
