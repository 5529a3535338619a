import { describe, expect, it } from 'vitest';
import { gatherSweeps, parseTruth } from './truth.js';

const ENTRY = {
  file: 'a.jpg',
  width: 640,
  height: 480,
  fx: 611,
  fy: 612,
  cx: 320,
  cy: 240,
  distortion: { k1: -0.04 },
  gaze: 'far',
  truePdFar: 65.9,
  truePdAsShown: 65.8,
  eyePlaneDistance: 471.8,
  pupilPx: { R: [224, 183], L: [309, 191] },
  card: {
    kind: 'dark',
    position: 'chin',
    occluded: true,
    cornersPx: [
      [1, 2],
      [3, 4],
      [5, 6],
      [7, 8],
    ],
  },
};

describe('parseTruth', () => {
  it('reads an entry, each value under our name for it', () => {
    const [truth] = parseTruth([ENTRY]);
    expect(truth?.camera).toEqual({ widthPx: 640, heightPx: 480, fx: 611, fy: 612, cx: 320, cy: 240, k1: -0.04 });
    expect(truth?.valuesMm.pdFar).toBe(65.9);
    expect(truth?.valuesMm.pdShown).toBe(65.8);
    expect(truth?.valuesMm.distance).toBe(471.8);
    expect(truth?.valuesMm.headWidth).toBeNull();
    expect(truth?.pupilsPx).toEqual({ R: [224, 183], L: [309, 191] });
    expect(truth?.cardPx?.[2]).toEqual([5, 6]);
    expect([truth?.cardKind, truth?.cardPosition, truth?.occluded]).toEqual(['dark', 'chin', true]);
  });

  it('takes no distortion as none', () => {
    expect(parseTruth([{ ...ENTRY, distortion: null }])[0]?.camera?.k1).toBe(0);
  });

  it('leaves out what is not there', () => {
    const [truth] = parseTruth([{ file: 'b.jpg', gaze: 'camera' }]);
    expect(truth).toMatchObject({ camera: null, pupilsPx: null, cardPx: null, cardKind: null, occluded: null });
  });

  it('tells how a picture was taken', () => {
    const [truth] = parseTruth([{ ...ENTRY, yawDeg: -7, irisRgb: [100, 50, 20] }]);
    expect(truth?.distanceMm).toBe(471.8);
    expect(truth?.yawDeg).toBe(-7);
    expect(truth?.pixelsPerMm).toBeCloseTo(611 / 471.8, 12);
    // by hand: 21.26 + 35.76 + 1.444
    expect(truth?.irisBrightness).toBeCloseTo(58.464, 9);
    expect(parseTruth([ENTRY])[0]).toMatchObject({ yawDeg: null, irisBrightness: null, frameOf: null });
  });

  it('says what is wrong with a file that is none', () => {
    expect(() => parseTruth({})).toThrow('list');
    expect(() => parseTruth([{ gaze: 'far' }])).toThrow('file');
    expect(() => parseTruth([{ file: 'c.jpg', gaze: 'up' }])).toThrow('c.jpg');
    expect(() => parseTruth([{ file: 'd.jpg', gaze: 'far', sweep: 's' }])).toThrow('"frame"');
  });
});

describe('gatherSweeps', () => {
  const frameOf = (sweep: string, frame: number, changes: object = {}) => ({
    ...ENTRY,
    file: `${sweep}-${frame}.jpg`,
    sweep,
    frame,
    slippedFromFrame: null,
    ...changes,
  });

  it('puts the frames of each sweep in order, among stills and other sweeps', () => {
    const sweeps = gatherSweeps(
      parseTruth([frameOf('b', 1), ENTRY, frameOf('a', 5), frameOf('b', 0), frameOf('b', 10), frameOf('b', 2)]),
    );
    expect(sweeps.map(({ sweep }) => sweep)).toEqual(['b', 'a']);
    expect(sweeps[0]?.frames.map(({ frame, truth }) => [frame, truth.file])).toEqual([
      [0, 'b-0.jpg'],
      [1, 'b-1.jpg'],
      [2, 'b-2.jpg'],
      [10, 'b-10.jpg'],
    ]);
  });

  it('knows what all frames share, and not what differs', () => {
    const [sweep] = gatherSweeps(
      parseTruth([
        frameOf('a', 0, { gaze: 'camera', truePdAsShown: 64.1, eyePlaneDistance: 400, truePdFar: 65.90004 }),
        frameOf('a', 1, { gaze: 'camera', truePdAsShown: 64.3, eyePlaneDistance: 500 }),
      ]),
    );
    expect(sweep?.gaze).toBe('camera');
    expect(sweep?.camera?.fx).toBe(611);
    expect(sweep?.valuesMm.pdFar).toBeCloseTo(65.9, 4);
    expect(sweep?.valuesMm.pdShown).toBeNull();
    expect(sweep?.valuesMm.headWidth).toBeNull();
    expect(sweep?.distanceMm).toBe(450);
    expect(sweep?.pixelsPerMm).toBeCloseTo((611 / 400 + 611 / 500) / 2, 12);
    expect([sweep?.cardKind, sweep?.cardPosition, sweep?.occluded]).toEqual(['dark', 'chin', true]);
  });

  it('tells a card that never slips from one that slips and one of which nothing is said', () => {
    const slipOf = (slippedFromFrame: unknown) =>
      gatherSweeps(parseTruth([frameOf('a', 0, { slippedFromFrame })]))[0]?.slip;
    expect(slipOf(null)).toEqual({ fromFrame: null });
    expect(slipOf(14)).toEqual({ fromFrame: 14 });
    expect(slipOf(undefined)).toBeNull();
  });
});
