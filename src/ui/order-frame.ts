import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Decentration } from '../core/lenses/frame-centration.js';
import {
  boxCorners,
  boxedCentreDistanceMm,
  inwardDecentrationMm,
  smallestBlankMm,
  smallestBlankOfDiameterMm,
  upwardDecentrationMm,
} from '../core/lenses/frame-centration.js';
import type { Side } from '../core/units/side.js';
import type { Order } from '../session/order.js';

/** What follows from the frame's sizes and the eyes' places; null where a number is missing for it. Lengths in mm. */
export interface OrderedFrame {
  readonly boxedCentreDistanceMm: number | null;
  readonly lenses: Readonly<Record<Side, OrderedLens>>;
  /** the blank follows from the shape's effective diameter, or, without one, from the corners of its box */
  readonly blankFrom: 'effective-diameter' | 'box';
}

export interface OrderedLens {
  /** towards the nose; negative: outward */
  readonly inwardMm: number | null;
  /** null without a fitting height: the centre then lies on the horizontal centre line */
  readonly upMm: number | null;
  /** smallest uncut lens whose optical centre lies in its middle */
  readonly blankMm: number | null;
}

/** What follows from the numbers of the order, and from no others. `effectiveDiameterMm` null where nobody typed a usable one. */
export function orderedFrame(order: Order, effectiveDiameterMm: number | null): OrderedFrame {
  const values = new Map<ReadingName, number>(
    order.lines.flatMap((line) => line.values.map(({ name, value }) => [name, value] as const)),
  );
  const boxWidthMm = values.get('boxLensWidth');
  const boxHeightMm = values.get('boxLensHeight');
  const distanceBetweenLensesMm = values.get('distanceBetweenLenses');
  const frame =
    boxWidthMm === undefined || distanceBetweenLensesMm === undefined ? null : { boxWidthMm, distanceBetweenLensesMm };
  const lens = (side: Side): OrderedLens => {
    const pdMm = values.get(side === 'R' ? 'monoPdR' : 'monoPdL');
    const heightMm = values.get(side === 'R' ? 'fittingHeightR' : 'fittingHeightL');
    const inwardMm = frame === null || pdMm === undefined ? null : inwardDecentrationMm(frame, pdMm);
    const upMm =
      heightMm === undefined || boxHeightMm === undefined ? null : upwardDecentrationMm(heightMm, boxHeightMm);
    if (inwardMm === null) return { inwardMm, upMm, blankMm: null };
    const centre: Decentration = { inwardMm, upMm: upMm ?? 0 };
    const blankMm =
      effectiveDiameterMm !== null
        ? smallestBlankOfDiameterMm(effectiveDiameterMm, centre)
        : boxWidthMm !== undefined && boxHeightMm !== undefined
          ? smallestBlankMm(boxCorners(boxWidthMm, boxHeightMm), centre)
          : null;
    return { inwardMm, upMm, blankMm };
  };
  return {
    boxedCentreDistanceMm: frame === null ? null : boxedCentreDistanceMm(frame),
    lenses: { R: lens('R'), L: lens('L') },
    blankFrom: effectiveDiameterMm === null ? 'box' : 'effective-diameter',
  };
}
