import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue, measurementOfReading } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Order } from '../session/order.js';
import { orderedFrame } from './order-frame.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function orderWith(numbers: { readonly [Name in ReadingName]?: number }): Order {
  const lines = (Object.entries(numbers) as [ReadingName, number][]).map(([name, value]) => ({
    measurement: measurementOfReading(catalogue, name),
    values: [
      { name, side: null, value, text: String(value), standardUncertainty: 0.3, reconciled: null, by: '', at: '' },
    ],
  }));
  return { lines, doubts: [], unconfirmed: [] };
}

const FRAME = { boxLensWidth: 52, boxLensHeight: 34, distanceBetweenLenses: 18 };

describe('what follows from the frame in the order', () => {
  it('is worked out from the numbers of the order', () => {
    const frame = orderedFrame(orderWith({ ...FRAME, monoPdR: 31.5, monoPdL: 36, fittingHeightR: 20 }), 54);
    // by hand: (52 + 18) / 2 - 31.5 = 3.5 in, 20 - 34 / 2 = 3 up, 54 + 2 sqrt(3.5² + 3²) + 2 = 65.22
    expect(frame.boxedCentreDistanceMm).toBe(70);
    expect(frame.lenses.R).toMatchObject({ inwardMm: 3.5, upMm: 3 });
    expect(Math.abs((frame.lenses.R.blankMm ?? 0) - 65.22)).toBeLessThan(0.005);
    // 35 - 36: outward; without a height on the horizontal centre line: 54 + 2 + 2
    expect(frame.lenses.L).toEqual({ inwardMm: -1, upMm: null, blankMm: 58 });
    expect(frame.blankFrom).toBe('effective-diameter');
  });

  it('takes the corners of the box where no effective diameter is known', () => {
    const frame = orderedFrame(orderWith({ ...FRAME, monoPdR: 35, fittingHeightR: 17 }), null);
    // by hand: no decentration, the diagonal of 52 by 34 and 2 mm
    expect(Math.abs((frame.lenses.R.blankMm ?? 0) - (Math.hypot(52, 34) + 2))).toBeLessThan(1e-9);
    expect(frame.blankFrom).toBe('box');
  });

  it('says nothing of a lens whose numbers are not in the order', () => {
    const { boxLensWidth, boxLensHeight } = FRAME;
    const frame = orderedFrame(orderWith({ boxLensWidth, boxLensHeight, monoPdR: 31.5 }), 54);
    expect(frame.boxedCentreDistanceMm).toBeNull();
    expect(frame.lenses.R).toEqual({ inwardMm: null, upMm: null, blankMm: null });
  });
});
