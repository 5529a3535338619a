/** The wearer's own side, never the picture's. In an unmirrored picture the wearer's right eye stands on the left. */
export type Side = 'R' | 'L';

/** Both sides in the order in which they are written: R before L. */
export const SIDES: readonly Side[] = ['R', 'L'];

/** One value for each of the wearer's sides. */
export interface BothSides<Value> {
  readonly R: Value;
  readonly L: Value;
}
