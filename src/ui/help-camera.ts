import type { MeasurementDefinition, MeasurementId } from '../core/catalogue/measurement.js';
import type { SometimesEstimated } from '../core/estimate/estimate.js';
import { isEstimateName } from '../core/estimate/most-helpful.js';

/** What the camera has to say of a measurement. */
export type CameraSay = 'nothing' | 'always' | 'pupil' | 'rims' | 'iris';

const SOMETIMES: Readonly<Record<SometimesEstimated, 'pupil' | 'rims'>> = {
  pupilDiameterR: 'pupil',
  pupilDiameterL: 'pupil',
  distanceBetweenRims10: 'rims',
  distanceBetweenRims15: 'rims',
};

function isSometimes(name: string): name is SometimesEstimated {
  return Object.hasOwn(SOMETIMES, name);
}

/** Whether the camera estimates a measurement, and how. */
export function cameraSayOf({ id, fields }: Pick<MeasurementDefinition, 'id' | 'fields'>): CameraSay {
  const name = fields[0]?.name;
  if (name === undefined || !isEstimateName(name)) return 'nothing';
  if (isSometimes(name)) return SOMETIMES[name];
  return id === 'irisDiameter' ? 'iris' : 'always';
}

/** Median and 95th percentile of the error, mm. */
export interface MeasuredErrors {
  readonly half: number;
  readonly most: number;
}

/** Errors without a camera profile, on rendered heads: the README's table of how sure it is. Null where it says nothing. */
export const MEASURED_ERRORS: Readonly<
  Partial<Record<MeasurementId, { readonly picture: MeasuredErrors; readonly sweep: MeasuredErrors }>>
> = {
  binocularPd: { picture: { half: 0.42, most: 1.5 }, sweep: { half: 0.09, most: 0.26 } },
  monocularPd: { picture: { half: 0.38, most: 1.1 }, sweep: { half: 0.21, most: 0.63 } },
  lidAperture: { picture: { half: 0.24, most: 0.9 }, sweep: { half: 0.11, most: 0.42 } },
  headWidth: { picture: { half: 2.7, most: 8.8 }, sweep: { half: 1.6, most: 2.5 } },
  templeWidth: { picture: { half: 4.1, most: 11.7 }, sweep: { half: 2.9, most: 10.5 } },
};
