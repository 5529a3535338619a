import type { ReadingName } from '../catalogue/measurement.js';

/** Ways in which a reading goes wrong between the gauge and the sheet. */
export const SLIP_KINDS = [
  /** two neighbouring digits changed places: 36.5 for 63.5 */
  'digits-swapped',
  /** right and left changed places */
  'sides-swapped',
  /** the amount that the gauge needs was not added */
  'offset-forgotten',
  /** the amount that the gauge needs was added although the sheet adds it */
  'offset-twice',
  /** the near distance stands where the far one belongs */
  'near-for-distance',
  /** the far distance stands where the near one belongs */
  'distance-for-near',
  /** one eye's distance written where both belong: 31.5 for 63 */
  'half-for-whole',
  /** both eyes' distance written where one belongs: 63 for 31.5 */
  'whole-for-half',
  /** each eye was not measured but taken as half of the whole */
  'halved',
  /** the decimal point moved or was lost: 635 for 63.5 */
  'point-moved',
  /** written in centimetres: 6.35 for 63.5 */
  'centimetres',
  /** written in inches: 2.5 for 63.5 */
  'inches',
  /** two neighbouring rows of the sheet changed places, on one side or on both */
  'rows-swapped',
  /** the number of the neighbouring row was written again */
  'row-repeated',
  /** read at the wrong figure of the scale: ten more or less */
  'ten-off',
  /** one digit is wrong: 57 for 54 */
  'digit-wrong',
  /** the sign was lost or added: 3 for -3 */
  'sign-lost',
] as const;

export type SlipKind = (typeof SLIP_KINDS)[number];

/** One number that a slip would have replaced. */
export interface Restoration {
  readonly name: ReadingName;
  readonly written: number;
  /** what would have been meant; offered, never applied */
  readonly restored: number;
}

/** One thing that may have gone wrong. */
export interface Slip {
  readonly kind: SlipKind;
  /** one number; two where two changed places or two sides were taken as equal; four where both sides of two rows changed places */
  readonly restorations: readonly Restoration[];
}
