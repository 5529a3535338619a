import type { TypedEye, TypedPrescription } from '../core/record/typed-prescription.js';
import { clipText } from '../core/record/typed-text.js';
import type { WearerNotes } from '../core/record/wearer-notes.js';

/** What changes of a prescription: whole eyes, or single fields of them. */
export type PrescriptionChange = Partial<Omit<TypedPrescription, 'R' | 'L'>> & {
  readonly R?: Partial<TypedEye>;
  readonly L?: Partial<TypedEye>;
};

export function changedNotes(notes: WearerNotes, change: Partial<WearerNotes>): WearerNotes {
  return clipped({ ...notes, ...change });
}

export function changedPrescription(typed: TypedPrescription, change: PrescriptionChange): TypedPrescription {
  const eyes = { R: clipped({ ...typed.R, ...change.R }), L: clipped({ ...typed.L, ...change.L }) };
  return clipped({ ...typed, ...change, ...eyes });
}

/** All text of an object as its fields keep it. */
function clipped<Typed extends object>(typed: Typed): Typed {
  const entries = Object.entries(typed) as readonly [string, unknown][];
  return Object.fromEntries(
    entries.map(([name, value]) => [name, typeof value === 'string' ? clipText(value) : value]),
  ) as Typed;
}
