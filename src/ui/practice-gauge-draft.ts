import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { MeasurementId, MeasurementUnit } from '../core/catalogue/measurement.js';
import type { Gauge } from '../core/reading/gauge.js';
import { parseDecimal } from '../core/reading/parse-reading.js';
import { fieldNumber } from './numbers.js';

/** A gauge as it stands in the fields of its form; texts as typed. */
export interface GaugeDraft {
  readonly name: string;
  readonly serves: readonly MeasurementId[];
  readonly resolution: string;
  readonly zeroOffset: string;
  readonly bias: string;
  /** year-month-day as a field for dates gives it; empty for none */
  readonly checkedOn: string;
}

export const EMPTY_GAUGE_DRAFT: GaugeDraft = {
  name: '',
  serves: [],
  resolution: '',
  zeroOffset: '0',
  bias: '0',
  checkedOn: '',
};

/** Why a field of the form cannot be used. */
export type GaugeProblem =
  | 'empty'
  | 'not-a-number'
  | 'not-positive'
  /** larger than `GAUGE_LIMITS` says */
  | 'too-large'
  /** no measurement is chosen */
  | 'serves-nothing'
  /** lengths and angles together: a scale has one unit */
  | 'mixed-units'
  | 'in-future';

export type GaugeProblems = { readonly [Field in keyof GaugeDraft]?: GaugeProblem };

/** Chosen: coarser scales and larger amounts than any gauge for faces has are slips of typing. In the unit of the gauge. */
export const GAUGE_LIMITS = { resolution: 10, zeroOffset: 200, bias: 20 } as const;

/** The fields of the form with what a gauge says. */
export function draftOfGauge(gauge: Gauge): GaugeDraft {
  return {
    name: gauge.name,
    serves: gauge.serves,
    resolution: fieldNumber(gauge.resolution),
    zeroOffset: fieldNumber(gauge.zeroOffset),
    bias: fieldNumber(gauge.bias),
    checkedOn: gauge.checkedOn ?? '',
  };
}

/** The unit of a scale that serves these measurements; null where they have none in common, or there are none. */
export function unitOfGauge(serves: readonly MeasurementId[], catalogue: Catalogue): MeasurementUnit | null {
  const units = new Set(catalogue.filter(({ id }) => serves.includes(id)).map(({ unit }) => unit));
  const [unit] = units;
  return units.size === 1 && unit !== undefined ? unit : null;
}

/** The gauge that stands in the form, or what is wrong with which field; all that is wrong is told at once. `today` as year-month-day. */
export function parseGaugeDraft(
  draft: GaugeDraft,
  id: string,
  catalogue: Catalogue,
  today: string,
): { readonly gauge: Gauge; readonly problems: null } | { readonly gauge: null; readonly problems: GaugeProblems } {
  const problems: { -readonly [Field in keyof GaugeDraft]?: GaugeProblem } = {};
  const take = (field: 'resolution' | 'zeroOffset' | 'bias'): number => {
    const parsed = parseDecimal(draft[field]);
    if (!parsed.ok) {
      problems[field] = parsed.failure.kind;
      return 0;
    }
    if (field === 'resolution' && parsed.value <= 0) problems[field] = 'not-positive';
    else if (Math.abs(parsed.value) > GAUGE_LIMITS[field]) problems[field] = 'too-large';
    return parsed.value;
  };
  const name = draft.name.trim();
  if (name === '') problems.name = 'empty';
  if (draft.serves.length === 0) problems.serves = 'serves-nothing';
  else if (unitOfGauge(draft.serves, catalogue) === null) problems.serves = 'mixed-units';
  const [resolution, zeroOffset, bias] = [take('resolution'), take('zeroOffset'), take('bias')];
  // both as year-month-day: the order of the letters is the order of the days
  if (draft.checkedOn > today) problems.checkedOn = 'in-future';
  if (Object.keys(problems).length > 0) return { gauge: null, problems };
  const checkedOn = draft.checkedOn === '' ? null : draft.checkedOn;
  return { gauge: { id, name, serves: draft.serves, resolution, zeroOffset, bias, checkedOn }, problems: null };
}

/**
 * A scale reading for the worked example: the usual value of the first measurement that the gauge serves, as its scale would
 * show it. 27 where it serves none yet.
 */
export function exampleScale(
  gauge: Pick<Gauge, 'serves' | 'zeroOffset' | 'bias' | 'resolution'>,
  catalogue: Catalogue,
): number {
  const [first] = gauge.serves;
  const usual = catalogue.find(({ id }) => id === first)?.population.mean;
  if (usual === undefined) return 27;
  const scale = usual - gauge.zeroOffset + gauge.bias;
  return Math.round(scale / gauge.resolution) * gauge.resolution;
}
