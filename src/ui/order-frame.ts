import type { CentredLens } from '../core/lenses/frame-centration.js';
import { boxedCentreDistanceMm, centredLens } from '../core/lenses/frame-centration.js';
import type { Side } from '../core/units/side.js';
import type { Order } from '../session/order.js';
import { valuesOfOrder } from '../session/order.js';

/** What follows from the frame's sizes and the eyes' places; null where a number is missing for it. Lengths in mm. */
export interface OrderedFrame {
  readonly boxedCentreDistanceMm: number | null;
  readonly lenses: Readonly<Record<Side, OrderedLens>>;
  /** the blank follows from the shape's effective diameter, or, without one, from the corners of its box */
  readonly blankFrom: 'effective-diameter' | 'box';
}

export interface OrderedLens extends Omit<CentredLens, 'blank'> {
  /** smallest uncut lens whose optical centre lies in its middle */
  readonly blankMm: number | null;
}

/** What follows from the numbers of the order, and from no others. `effectiveDiameterMm` null where nobody typed a usable one. */
export function orderedFrame(order: Order, effectiveDiameterMm: number | null): OrderedFrame {
  const values = valuesOfOrder(order);
  const { boxLensWidth: boxWidthMm, distanceBetweenLenses: distanceBetweenLensesMm } = values;
  const lens = (side: Side): OrderedLens => {
    const pdMm = (side === 'R' ? values.monoPdR : values.monoPdL) ?? null;
    const { inwardMm, upMm, blank } = centredLens(side, values, { pdMm, effectiveDiameterMm });
    return { inwardMm, upMm, blankMm: blank?.diameterMm ?? null };
  };
  return {
    boxedCentreDistanceMm:
      boxWidthMm === undefined || distanceBetweenLensesMm === undefined
        ? null
        : boxedCentreDistanceMm({ boxWidthMm, distanceBetweenLensesMm }),
    lenses: { R: lens('R'), L: lens('L') },
    blankFrom: effectiveDiameterMm === null ? 'box' : 'effective-diameter',
  };
}
