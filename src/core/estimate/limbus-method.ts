/** An iris seen from the front: its centre along the horizontal, and its radius, in one unit and frame. */
export interface IrisAcross {
  readonly centre: number;
  readonly radius: number;
}

/**
 * What the limbus method reads: from the outer (temporal) iris edge of the first eye to the inner (nasal) edge of the second.
 * It is the distance of the centres, plus what the first iris is larger than the second (common practice).
 */
export function limbusToLimbus(first: IrisAcross, second: IrisAcross): number {
  return Math.abs(second.centre - first.centre) + first.radius - second.radius;
}
