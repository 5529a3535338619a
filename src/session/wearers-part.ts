import type { Confirmations } from '../core/record/confirmation.js';
import type { Entries } from './entries.js';
import { clearedReaders, hasWritten } from './entries.js';
import type { TypedEye, TypedPrescription } from '../core/record/typed-prescription.js';
import { NO_PRESCRIPTION } from '../core/record/typed-prescription.js';
import { clipText } from '../core/record/typed-text.js';
import type { WearerNotes } from '../core/record/wearer-notes.js';
import { NO_NOTES } from '../core/record/wearer-notes.js';

/** All on the sheet that belongs to one wearer: it goes when the next one comes. */
export interface WearersPart {
  readonly readers: Entries['readers'];
  readonly notes: WearerNotes;
  readonly prescription: TypedPrescription;
  readonly confirmations: Confirmations;
}

/** What changes of a prescription: whole eyes, or single fields of them. */
export type PrescriptionChange = Partial<Omit<TypedPrescription, 'R' | 'L'>> & {
  readonly R?: Partial<TypedEye>;
  readonly L?: Partial<TypedEye>;
};

/** The sheet as the next wearer finds it; the readers keep their names. */
export function forNextWearer({ readers }: WearersPart): WearersPart {
  return { readers: clearedReaders(readers), notes: NO_NOTES, prescription: NO_PRESCRIPTION, confirmations: {} };
}

/** Whether anything stands there that would be missed. */
export function isWorthKeeping({ readers, notes, prescription }: WearersPart): boolean {
  const isWritten = [readers.first, readers.second].some((one) => hasWritten(one) || one.history.length > 0);
  return isWritten || !isSame(notes, NO_NOTES) || !isSame(prescription, NO_PRESCRIPTION);
}

/** What was put away, under the readers' names of this moment. */
export function broughtBack(before: WearersPart, readers: Entries['readers']): WearersPart {
  return {
    ...before,
    readers: {
      first: { ...before.readers.first, reader: readers.first.reader },
      second: { ...before.readers.second, reader: readers.second.reader },
    },
  };
}

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

/** Both are made from the same fields in the same order. */
function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
