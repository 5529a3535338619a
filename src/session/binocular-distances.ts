import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { compareReaders } from '../core/reading/compare-readers.js';
import { parseReading } from '../core/reading/parse-reading.js';
import type { BinocularDistances } from '../core/record/dicom-distances.js';
import { gaugeOfReading } from '../core/record/practice.js';
import type { SessionRecord } from '../core/record/session-record.js';

/**
 * The pupil distances of both eyes that were read by hand, with the gauge's sum done: of both readers as one where they agree,
 * of the one who read; null where nobody did, it is no number, or the two differ.
 */
export function binocularDistances({ sheet }: SessionRecord, catalogue: Catalogue): BinocularDistances {
  return { distanceMm: readAs('pdFar', sheet, catalogue), nearMm: readAs('pdNear', sheet, catalogue) };
}

function readAs(name: ReadingName, { readers, settings }: SessionRecord['sheet'], catalogue: Catalogue): number | null {
  const gauge = gaugeOfReading(settings.practice, name);
  const { tolerance } = measurementOfReading(catalogue, name);
  const [first, second] = [readers.first, readers.second].map(({ readings }) =>
    parseReading(readings[name], name, catalogue, gauge),
  );
  if (first?.ok === true && second?.ok === true) {
    const { agree, together } = compareReaders(first.value, second.value, tolerance);
    return agree ? together.value : null;
  }
  if (first?.ok === true) return first.value.value;
  return second?.ok === true ? second.value.value : null;
}
