import { describe, expect, it } from 'vitest';
import { parseTruth } from './truth.js';

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

  it('says what is wrong with a file that is none', () => {
    expect(() => parseTruth({})).toThrow('list');
    expect(() => parseTruth([{ gaze: 'far' }])).toThrow('file');
    expect(() => parseTruth([{ file: 'c.jpg', gaze: 'up' }])).toThrow('c.jpg');
  });
});
