import { describe, expect, it } from 'vitest';
import { ID1_CARD } from '../../../calibration/tables.js';
import { CARD_CORNERS_MM, REFERENCE_CARD } from './reference-card.js';

describe('REFERENCE_CARD', () => {
  it('has the sizes of the calibration table', () => {
    expect(REFERENCE_CARD).toMatchObject({
      widthMm: ID1_CARD.widthMm.value,
      heightMm: ID1_CARD.heightMm.value,
      thicknessMm: ID1_CARD.thicknessMm.value,
      cornerRadiusMm: ID1_CARD.cornerRadiusMm.value,
    });
  });

  it('has the proportions of ID-1 and straight sides of 79.24 and 47.62 mm between its round corners', () => {
    const { widthMm, heightMm, cornerRadiusMm } = REFERENCE_CARD;
    expect(widthMm / heightMm).toBeCloseTo(1.585773, 6);
    expect(widthMm - 2 * cornerRadiusMm).toBeCloseTo(79.24, 9);
    expect(heightMm - 2 * cornerRadiusMm).toBeCloseTo(47.62, 9);
  });

  it('is uncertain by half the range of its limits over root three: 0.053 mm of a PD of 63', () => {
    expect(REFERENCE_CARD.relativeSizeUncertainty).toBeCloseTo(0.000843, 6);
    expect(63 * REFERENCE_CARD.relativeSizeUncertainty).toBeCloseTo(0.0531, 4);
    const { low, high } = ID1_CARD.widthLimitsMm;
    expect((high - low) / 2 / 85.6 / Math.sqrt(3)).toBeCloseTo(REFERENCE_CARD.relativeSizeUncertainty, 6);
  });

  it('has sharp corners from the top left clockwise as seen, in its own plane', () => {
    expect(CARD_CORNERS_MM).toEqual([
      [-42.8, -26.99, 0],
      [42.8, -26.99, 0],
      [42.8, 26.99, 0],
      [-42.8, 26.99, 0],
    ]);
  });
});
