import type { ReadingName } from '../catalogue/measurement.js';

/** That a person looked at a number on purpose and stands for it. */
export interface Confirmation {
  /** what was entered at that place, as `textToConfirm` gives it; once that changes the confirmation counts no more */
  readonly text: string;
  /** the reader's name as it stood then; empty where none was typed */
  readonly by: string;
  /** ISO 8601 */
  readonly at: string;
}

export type Confirmations = { readonly [Name in ReadingName]?: Confirmation };
