import type { ReadingName } from '../core/catalogue/measurement.js';
import type { CentredLens } from '../core/lenses/frame-centration.js';
import { centredLens, nearInsetMm } from '../core/lenses/frame-centration.js';
import { POWER_CHANGE_LIMIT_D } from '../core/lenses/cost-of-difference.js';
import { strongestPowerD } from '../core/lenses/lens-power.js';
import type { LensPower, Prescription } from '../core/lenses/prescription.js';
import { STRONG_LENS_D } from '../core/lenses/question-prescription.js';
import { actingLens, compensatedLens } from '../core/lenses/vertex-distance.js';
import type { BothSides, Side } from '../core/units/side.js';
import type { SheetRow } from './rows.js';

/** What a lens that was tested at one distance from the eye does at another. */
export interface VertexEffect {
  /** fitted less tested, mm; positive: the lens sits farther from the eye */
  readonly furtherMm: number;
  /** what the prescribed lens acts as there */
  readonly actsAs: LensPower;
  /** the lens that would act as prescribed */
  readonly compensated: LensPower;
  /** whether the strongest power changes by half a step or more */
  readonly matters: boolean;
}

/** What the workshop works out for one lens in the chosen frame; null for what the readings do not tell. */
export interface LensInFrame extends CentredLens {
  readonly nearInsetMm: number | null;
  readonly vertex: VertexEffect | null;
}

export interface FrameWork {
  /** PD of each eye taken as half of the whole, because each was not measured */
  readonly isHalved: boolean;
  readonly lenses: BothSides<LensInFrame>;
}

/** What stands on the sheet, as numbers. */
type Values = { readonly [Name in ReadingName]?: number };

/** The values that count at each place: both readers' together, or the open reader's own. */
export function valuesOf(rows: readonly SheetRow[]): Values {
  return Object.fromEntries(
    rows.flatMap(({ fields }) => fields.flatMap(({ field, together }) => (together ? [[field, together.value]] : []))),
  );
}

/** Decentration, smallest blank, near inset and vertex effect of both lenses, as far as the readings tell. */
export function frameWork(
  values: Values,
  prescription: Prescription,
  given: { readonly workingDistanceMm: number; readonly effectiveDiameterMm: number | null },
): FrameWork {
  const isHalved = (values.monoPdR === undefined || values.monoPdL === undefined) && values.pdFar !== undefined;
  const half = values.pdFar === undefined ? null : values.pdFar / 2;
  const lensOf = (side: Side): LensInFrame => {
    const eye = prescription[side];
    const own = side === 'R' ? values.monoPdR : values.monoPdL;
    const pdMm = isHalved ? half : (own ?? null);
    const fittedMm = (side === 'R' ? values.backVertexDistanceR : values.backVertexDistanceL) ?? null;
    return {
      ...centredLens(side, values, { pdMm, effectiveDiameterMm: given.effectiveDiameterMm }),
      nearInsetMm: pdMm === null ? null : nearInsetMm(eye, pdMm, given.workingDistanceMm, fittedMm),
      vertex:
        fittedMm === null || prescription.vertexDistanceMm === null
          ? null
          : vertexEffect(eye, prescription.vertexDistanceMm, fittedMm),
    };
  };
  return { isHalved, lenses: { R: lensOf('R'), L: lensOf('L') } };
}

function vertexEffect(lens: LensPower, testedMm: number, fittedMm: number): VertexEffect {
  const furtherMm = fittedMm - testedMm;
  const actsAs = actingLens(lens, furtherMm);
  const compensated = compensatedLens(lens, testedMm, fittedMm);
  const changeD = strongestPowerD(actsAs) - strongestPowerD(lens);
  return { furtherMm, actsAs, compensated, matters: Math.abs(changeD) >= POWER_CHANGE_LIMIT_D };
}

/** Whether an effective diameter can belong to a box: it reaches at least across the larger side, and at most across its corners. */
export function fitsBox(effectiveDiameterMm: number, { boxLensWidth: a, boxLensHeight: b }: Values): boolean {
  if (a === undefined || b === undefined) return true;
  return effectiveDiameterMm >= Math.max(a, b) && effectiveDiameterMm <= Math.hypot(a, b);
}

/** What has to be on the sheet before lenses of this prescription can be ordered, and is not. */
export type LensCaution =
  /** lenses so strong that a millimetre matters: these readings are missing */
  | { readonly kind: 'strong'; readonly powerD: number; readonly missing: readonly ReadingName[] }
  /** the corridor has its place before each eye: these readings are missing */
  | { readonly kind: 'progressive'; readonly missing: readonly ReadingName[] }
  /** a segment has its height: these readings are missing */
  | { readonly kind: 'multifocal'; readonly missing: readonly ReadingName[] };

const EACH_EYE: readonly ReadingName[] = ['monoPdR', 'monoPdL'];
const HEIGHTS: readonly ReadingName[] = ['fittingHeightR', 'fittingHeightL'];
const VERTICES: readonly ReadingName[] = ['backVertexDistanceR', 'backVertexDistanceL'];

/** What to mind with lenses of this prescription (law.words of the collected facts: 5 D and above, common practice). */
export function lensCautions(values: Values, prescription: Prescription): readonly LensCaution[] {
  const missing = (names: readonly ReadingName[]): readonly ReadingName[] =>
    names.filter((name) => values[name] === undefined);
  const [R, L] = [strongestPowerD(prescription.R), strongestPowerD(prescription.L)];
  const powerD = Math.abs(L) > Math.abs(R) ? L : R;
  const cautions: LensCaution[] = [];
  if (Math.abs(powerD) >= STRONG_LENS_D) {
    cautions.push({ kind: 'strong', powerD, missing: missing([...EACH_EYE, ...HEIGHTS, ...VERTICES]) });
  }
  if (prescription.lensKind === 'progressive') {
    cautions.push({ kind: 'progressive', missing: missing([...EACH_EYE, ...HEIGHTS]) });
  }
  if (prescription.lensKind === 'multifocal') cautions.push({ kind: 'multifocal', missing: missing(HEIGHTS) });
  return cautions;
}
