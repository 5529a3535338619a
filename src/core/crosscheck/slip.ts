import type { ReadingName } from '../catalogue/measurement.js';

/** Ways in which a reading goes wrong between the gauge and the sheet. */
export type SlipKind =
  /** two neighbouring digits changed places: 36.5 for 63.5 */
  | 'digits-swapped'
  /** right and left changed places */
  | 'sides-swapped'
  /** one eye's distance written where both belong: 31.5 for 63 */
  | 'half-for-whole'
  /** both eyes' distance written where one belongs: 63 for 31.5 */
  | 'whole-for-half'
  /** the decimal point moved or was lost: 635 for 63.5 */
  | 'point-moved'
  /** written in centimetres: 6.35 for 63.5 */
  | 'centimetres'
  /** written in inches: 2.5 for 63.5 */
  | 'inches'
  /** read at the wrong figure of the scale: ten more or less */
  | 'ten-off'
  /** one digit is wrong: 57 for 54 */
  | 'digit-wrong'
  /** the near distance stands where the far one belongs */
  | 'near-for-distance'
  /** the far distance stands where the near one belongs */
  | 'distance-for-near'
  /** two rows of the sheet changed places */
  | 'rows-swapped';

/** One number that a slip would have replaced. */
export interface Restoration {
  readonly name: ReadingName;
  readonly written: number;
  /** what would have been meant; offered, never applied */
  readonly restored: number;
}

/** A likely cause of what does not fit. */
export interface Slip {
  readonly kind: SlipKind;
  /** one number, or two where two changed places; the reading that was asked for comes first */
  readonly restorations: readonly Restoration[];
  /**
   * share among the causes considered, 0 to 1. The weights of the kinds are chosen, not counted, so this ranks;
   * it is no probability to be shown.
   */
  readonly weight: number;
}
