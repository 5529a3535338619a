import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearCentrationDistanceMm, pdFarFromNearCentrationMm, pdFarFromPdShownMm, pdShownFromPdFarMm } from './gaze.js';

const pds = fc.double({ min: 40, max: 80, noNaN: true });
const distances = fc.double({ min: 200, max: 3000, noNaN: true });

describe('convergence of the pupils', () => {
  // P - 2 e sin(atan((P/2)/D)) with e = 10.5 (e from memory), plain arithmetic
  it.each([
    [63, 427, 61.455],
    [63, 600, 61.899],
    [63, 1000, 62.339],
  ])('a far PD of %d looking at %d mm', (far, distance, shown) => {
    expect(Math.abs(pdShownFromPdFarMm(far, distance) - shown)).toBeLessThan(0.001);
  });

  it('a PD of 61.899 seen from 600 mm is 63 far away', () => {
    expect(Math.abs(pdFarFromPdShownMm(61.899, 600) - 63)).toBeLessThan(0.002);
  });

  it('a PD of 64 at 500 mm shows as 62.66, as by the small-angle rule 1 - e/l', () => {
    expect(Math.abs(pdShownFromPdFarMm(64, 500) - 62.66)).toBeLessThan(0.005);
  });

  it('closes the chain from card and pixels to the far PD', () => {
    // own geometry: card 342.4 px, pupils 240 px, camera 500 mm before the pupils, card 15 mm before them
    const raw = (240 * 85.6) / 342.4;
    const shown = (raw * 500) / (500 - 15);
    expect(Math.abs(shown - 61.8557)).toBeLessThan(0.0001);
    expect(Math.abs(pdFarFromPdShownMm(shown, 500 + 10.5) - 63.1521)).toBeLessThan(0.002);
  });

  it('there and back is the same', () => {
    fc.assert(
      fc.property(pds, distances, (far, distance) => {
        const shown = pdShownFromPdFarMm(far, distance);
        expect(shown).toBeLessThan(far);
        expect(pdFarFromPdShownMm(shown, distance)).toBeCloseTo(far, 9);
      }),
    );
  });

  it('refuses a point between the eyes', () => {
    expect(() => pdShownFromPdFarMm(63, 15)).toThrow('well before');
  });
});

describe('near centration distance', () => {
  // P W / (W + s), textbooks of dispensing optics (seen in a text that reports them)
  it.each([
    [63, 400, 27, 59.0164],
    [63, 400, 25, 59.2941],
    [64, 350, 27, 59.4164],
    [66, 330, 27, 61.0084],
  ])('of %d at %d mm, %d mm before the centres of rotation', (far, working, s, near) => {
    expect(Math.abs(nearCentrationDistanceMm(far, working, 0, s) - near)).toBeLessThan(0.001);
  });

  // P - P / (1 + W (1/s - F/1000)): plus draws together, minus apart
  it.each([
    [-9, 59.755],
    [5, 58.44],
    [-5, 59.464],
  ])('of 63 at 400 mm through %d D', (power, near) => {
    expect(Math.abs(nearCentrationDistanceMm(63, 400, power) - near)).toBeLessThan(0.001);
  });

  it('is what one open eye at the working distance reads on a rule', () => {
    // one-eye technique with both eyes converged, own geometry
    expect(Math.abs(nearCentrationDistanceMm(63, 400) - 59.016)).toBeLessThan(0.001);
  });

  it('there and back is the same, and lies below the PD seen at the pupils', () => {
    fc.assert(
      fc.property(pds, distances, fc.double({ min: -20, max: 15, noNaN: true }), (far, working, power) => {
        const near = nearCentrationDistanceMm(far, working, power);
        expect(near).toBeLessThan(far);
        expect(pdFarFromNearCentrationMm(near, working, power)).toBeCloseTo(far, 9);
        expect(nearCentrationDistanceMm(far, working)).toBeLessThan(pdShownFromPdFarMm(far, working + 27));
      }),
    );
  });
});
