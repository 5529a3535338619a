import type { DioptreFailure, DioptreRules, TypedDioptres } from '../core/lenses/parse-dioptres.js';
import { parseDioptres } from '../core/lenses/parse-dioptres.js';
import type { EyePrescription, LensKind, Prescription } from '../core/lenses/prescription.js';
import { parseDecimal } from '../core/reading/parse-reading.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { Side } from '../core/units/side.js';
import { SIDES } from '../core/units/side.js';
import type { TypedEye, TypedPrescription } from '../core/record/typed-prescription.js';

/** The fields of one eye in the order in which they are typed. */
export const EYE_FIELDS = [
  'sphere',
  'cylinder',
  'axis',
  'add',
  'prismHorizontal',
  'baseHorizontal',
  'prismVertical',
  'baseVertical',
] as const satisfies readonly (keyof TypedEye)[];

export type EyeField = (typeof EYE_FIELDS)[number];

/** A field of the prescription; the eyes' fields with their side. */
export type PrescriptionPlace =
  { readonly side: Side; readonly field: EyeField } | { readonly side: null; readonly field: 'vertexDistance' };

/** Why what stands in a field cannot be used. */
export type EntryFailure =
  | Exclude<DioptreFailure, { kind: 'empty' }>
  /** the field must be filled before anything follows from the prescription; it is only not there yet */
  | { readonly kind: 'missing' }
  /** an axis is a whole number of degrees from 1 to 180; 0 is written as 180 */
  | { readonly kind: 'no-axis'; readonly value: number }
  /** an axis means nothing without a cylinder: one of both is wrong */
  | { readonly kind: 'axis-without-cylinder' };

export interface PlacedFailure {
  readonly place: PrescriptionPlace;
  readonly failure: EntryFailure;
}

/** What was typed that cannot be used, or is not there yet. */
export interface PrescriptionFailure {
  /** nothing at all was typed for either eye */
  readonly isEmpty: boolean;
  readonly failures: readonly PlacedFailure[];
}

/** A prescription that is read, with what is unusual in how it is written. */
export interface PrescriptionEntry {
  readonly prescription: Prescription;
  /** fields with an eighth of a dioptre */
  readonly eighths: readonly PrescriptionPlace[];
}

const SPHERE: DioptreRules = { sign: 'required', lowest: -30, highest: 30, isInSteps: true };
const CYLINDER: DioptreRules = { sign: 'required', lowest: -15, highest: 15, isInSteps: true };
const ADDITION: DioptreRules = { sign: 'positive', lowest: 0.5, highest: 4, isInSteps: true };
/** Chosen: prisms beyond this are no spectacle lenses. Oblique ones come resolved into parts that are no steps. */
const PRISM: DioptreRules = { sign: 'positive', lowest: 0, highest: 30, isInSteps: false };

/** Vertex distances that are believed, mm. Chosen: from a lens that touches the lashes to one on the tip of a nose. */
const VERTEX_LIMITS_MM = { lowest: 5, highest: 30 } as const;

/** Effective diameters that are believed, mm. Chosen: from a child's smallest frame to the largest shields. */
const DIAMETER_LIMITS_MM = { lowest: 25, highest: 95 } as const;

/** Whether anything was typed for an eye. */
function isEyeEmpty(eye: TypedEye): boolean {
  return EYE_FIELDS.every((field) => eye[field].trim() === '');
}

/** The prescription that was typed, or what keeps it from being one, field by field. Nothing typed is changed or filled in. */
export function parsePrescription(typed: TypedPrescription): Result<PrescriptionEntry, PrescriptionFailure> {
  if (SIDES.every((side) => isEyeEmpty(typed[side]))) return fail({ isEmpty: true, failures: [] });
  const failures: PlacedFailure[] = [];
  const eighths: PrescriptionPlace[] = [];
  const eyeOf = (side: Side): EyePrescription => {
    const eye = new EyeReader(side, typed[side], failures, eighths);
    return eye.read(typed.lensKind);
  };
  const [R, L] = [eyeOf('R'), eyeOf('L')];
  const vertexDistanceMm = lengthIn(typed.vertexDistance, VERTEX_LIMITS_MM);
  if (vertexDistanceMm !== null && !vertexDistanceMm.ok) {
    failures.push({ place: { side: null, field: 'vertexDistance' }, failure: vertexDistanceMm.failure });
  }
  if (failures.length > 0) return fail({ isEmpty: false, failures });
  return succeed({
    prescription: {
      R,
      L,
      vertexDistanceMm: vertexDistanceMm?.ok === true ? vertexDistanceMm.value : null,
      lensKind: typed.lensKind,
    },
    eighths,
  });
}

/** Reads the fields of one eye and notes what fails. Where a field fails, its value is nothing and is never used. */
class EyeReader {
  constructor(
    private readonly side: Side,
    private readonly typed: TypedEye,
    private readonly failures: PlacedFailure[],
    private readonly eighths: PrescriptionPlace[],
  ) {}

  read(lensKind: LensKind): EyePrescription {
    const sphereD = this.dioptres('sphere', SPHERE, true);
    const cylinderD = this.dioptres('cylinder', CYLINDER, false);
    return {
      sphereD,
      cylinderD,
      axisDeg: this.axis(cylinderD),
      addD: this.dioptres('add', ADDITION, lensKind !== 'single-vision'),
      prism: {
        horizontal: {
          amount: this.prism('prismHorizontal', 'baseHorizontal'),
          base: this.typed.baseHorizontal === 'out' ? 'out' : 'in',
        },
        vertical: {
          amount: this.prism('prismVertical', 'baseVertical'),
          base: this.typed.baseVertical === 'down' ? 'down' : 'up',
        },
      },
    };
  }

  private dioptres(field: EyeField, rules: DioptreRules, isNeeded: boolean): number {
    const parsed: Result<TypedDioptres, DioptreFailure> = parseDioptres(this.typed[field], rules);
    if (parsed.ok) {
      if (parsed.value.isEighth) this.eighths.push({ side: this.side, field });
      return parsed.value.value;
    }
    if (parsed.failure.kind !== 'empty') this.fail(field, parsed.failure);
    else if (isNeeded) this.fail(field, { kind: 'missing' });
    return 0;
  }

  private axis(cylinderD: number): number {
    const { cylinder, axis: typed } = this.typed;
    const axis = parseDecimal(typed);
    const isCylinderRead = parseDioptres(cylinder, CYLINDER).ok || cylinder.trim() === '';
    if (!axis.ok) {
      if (axis.failure.kind === 'not-a-number') this.fail('axis', axis.failure);
      else if (cylinderD !== 0) this.fail('axis', { kind: 'missing' });
      return 180;
    }
    const { value } = axis;
    if (!Number.isInteger(value) || value < 1 || value > 180) this.fail('axis', { kind: 'no-axis', value });
    else if (isCylinderRead && cylinderD === 0) this.fail('axis', { kind: 'axis-without-cylinder' });
    return cylinderD === 0 ? 180 : value;
  }

  private prism(field: 'prismHorizontal' | 'prismVertical', base: 'baseHorizontal' | 'baseVertical'): number {
    const amount = this.dioptres(field, PRISM, false);
    if (amount > 0 && this.typed[base] === '') this.fail(base, { kind: 'missing' });
    // a base without a prism is an amount that was forgotten
    if (this.typed[base] !== '' && this.typed[field].trim() === '') this.fail(field, { kind: 'missing' });
    return amount;
  }

  private fail(field: EyeField, failure: EntryFailure): void {
    this.failures.push({ place: { side: this.side, field }, failure });
  }
}

/** A length in mm within limits; null where nothing was typed. */
function lengthIn(
  typed: string,
  limits: { readonly lowest: number; readonly highest: number },
): Result<number, Extract<EntryFailure, { kind: 'not-a-number' | 'beyond-limits' }>> | null {
  const parsed = parseDecimal(typed);
  if (!parsed.ok) return parsed.failure.kind === 'empty' ? null : fail({ kind: 'not-a-number', typed });
  const { value } = parsed;
  return value >= limits.lowest && value <= limits.highest
    ? succeed(value)
    : fail({ kind: 'beyond-limits', value, lowest: limits.lowest, highest: limits.highest });
}

/** The effective diameter of the chosen frame's shape, mm; null where nothing was typed. */
export function parseEffectiveDiameter(
  typed: string,
): Result<number, Extract<EntryFailure, { kind: 'not-a-number' | 'beyond-limits' }>> | null {
  return lengthIn(typed, DIAMETER_LIMITS_MM);
}
