import type { MeasurementDefinition, MeasurementId } from '../core/catalogue/measurement.js';
import { words } from './language.js';

/** The pages that are about no single measurement. */
export const GENERAL_TOPICS = ['about', 'card', 'light', 'gauges', 'privacy'] as const;

export type GeneralTopic = (typeof GENERAL_TOPICS)[number];

/** A page of the help. */
export type HelpTopic = MeasurementId | GeneralTopic;

/** Whether a page is about no single measurement. */
export function isGeneralTopic(topic: HelpTopic): topic is GeneralTopic {
  return GENERAL_TOPICS.some((general) => general === topic);
}

/**
 * The measurements that are meant by `typed`: every word of it begins a word of one of their names. Those that are called just that come
 * first; otherwise they stay in their order.
 */
export function matchingMeasurements<Sought extends Pick<MeasurementDefinition, 'id'>>(
  typed: string,
  measurements: readonly Sought[],
): readonly Sought[] {
  const sought = termsOf(typed);
  if (sought.length === 0) return measurements;
  const whole = sought.join(' ');
  const isWhole = ({ id }: Sought): boolean => namesOf(id).some((name) => termsOf(name).join(' ') === whole);
  return measurements
    .filter(({ id }) => {
      const terms = namesOf(id).flatMap(termsOf);
      return sought.every((word) => terms.some((term) => term.startsWith(word)));
    })
    .toSorted((one, other) => Number(isWhole(other)) - Number(isWhole(one)));
}

function namesOf(id: MeasurementId): readonly string[] {
  const { name, shortName, alsoCalled } = words.measurements[id];
  return [name, shortName, ...alsoCalled];
}

function termsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];
}
