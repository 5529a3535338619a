import { describe, expect, it } from 'vitest';
import { openCvInNode } from '../../calibration/opencv-in-node.js';
import type { Camera } from '../../src/core/camera/pinhole.js';
import type { RgbaImage } from '../../src/core/camera/pixel-plane.js';
import { createBoardFinder } from '../../src/workers/card/board-finder.js';
import type { OpenCv } from '../../src/workers/card/open-cv.js';
import { countedOpenCv } from '../support/counted-open-cv.js';
import { BOARD_POSES, boardPose, paintBoard, projectedView } from '../support/painted-board.js';
import { seededRandom } from '../support/seeded-random.js';

// OpenCV itself, in Node, on drawings of the sheet through a camera whose every number is known.

const CAMERA: Camera = { fx: 490, fy: 490, cx: 322.5, cy: 238, distortion: [-0.12, 0.03, 0.001, -0.0005, 0] };
const SIZE = { widthPx: 640, heightPx: 480 };

async function openCv(): Promise<{ readonly cv: OpenCv }> {
  const { cv } = await openCvInNode();
  return { cv: cv as unknown as OpenCv };
}

function offsetsOf(image: RgbaImage, cv: OpenCv, pose: (typeof BOARD_POSES)[number], camera = CAMERA) {
  const found = createBoardFinder(cv)(image);
  if (!found.ok) throw new Error(JSON.stringify(found.failure));
  const truth = projectedView(camera, pose, image).corners;
  return found.value.corners.map((corner) => {
    const place = truth.find(({ index }) => index === corner.index);
    return { dx: corner.xPx - (place?.xPx ?? NaN), dy: corner.yPx - (place?.yPx ?? NaN) };
  });
}

describe('createBoardFinder', () => {
  it(
    'finds the corners of a sheet held level, tilted and upright where they were drawn',
    { timeout: 120_000 },
    async () => {
      const { cv } = await openCv();
      const offsets = [0, 2, 9, 11].flatMap((index) => {
        const pose = BOARD_POSES[index]!;
        const each = offsetsOf(paintBoard(CAMERA, pose, SIZE, seededRandom(index)), cv, pose);
        expect(each.length, `corners of pose ${index}`).toBe(24);
        return each;
      });
      const lengths = offsets.map(({ dx, dy }) => Math.hypot(dx, dy));
      const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
      // half a pixel would be the wrong convention
      expect(Math.abs(mean(offsets.map(({ dx }) => dx)))).toBeLessThan(0.01);
      expect(Math.abs(mean(offsets.map(({ dy }) => dy)))).toBeLessThan(0.01);
      // chosen: a profile to half a percent needs a tenth of a pixel; edges that run along the pixels' rows are the hardest
      expect(Math.sqrt(mean(lengths.map((length) => length ** 2)))).toBeLessThan(0.1);
      expect(Math.max(...lengths)).toBeLessThan(0.3);
    },
  );

  it('finds what is in the picture of a sheet that is partly out of it', { timeout: 60_000 }, async () => {
    const { cv } = await openCv();
    const pose = boardPose([8, 14, 4], [-190, -110, 320]);
    const inPicture = projectedView(CAMERA, pose, SIZE).corners.length;
    expect(inPicture).toBeLessThan(24);
    const offsets = offsetsOf(paintBoard(CAMERA, pose, SIZE, seededRandom(3)), cv, pose);
    expect(offsets.length).toBeGreaterThanOrEqual(6);
    expect(offsets.length).toBeLessThanOrEqual(inPicture);
    for (const { dx, dy } of offsets) expect(Math.hypot(dx, dy)).toBeLessThan(0.2);
  });

  it('reduces a large picture only for the search', { timeout: 120_000 }, async () => {
    const { cv } = await openCv();
    const large: Camera = { ...CAMERA, fx: 1600, fy: 1600, cx: 1051, cy: 748 };
    const size = { widthPx: 2100, heightPx: 1500 };
    const pose = BOARD_POSES[9]!;
    const offsets = offsetsOf(paintBoard(large, pose, size, seededRandom(4)), cv, pose, large);
    expect(offsets).toHaveLength(24);
    for (const { dx, dy } of offsets) expect(Math.hypot(dx, dy)).toBeLessThan(0.15);
  });

  it('says how much it found where that is too little', async () => {
    const { cv } = await openCv();
    const failure = { kind: 'no-board', cornersFound: 0, cornersNeeded: 6 };
    const empty = { widthPx: 64, heightPx: 48, data: new Uint8ClampedArray(4 * 64 * 48).fill(128) };
    expect(createBoardFinder(cv)(empty)).toEqual({ ok: false, failure });
    const farAside = paintBoard(CAMERA, boardPose([0, 0, 0], [-350, 0, 420]), SIZE, seededRandom(5));
    expect(createBoardFinder(cv)(farAside)).toMatchObject({ ok: false, failure: { kind: 'no-board' } });
  });

  it('finds nothing in a mirrored picture, whose markers read backwards', { timeout: 60_000 }, async () => {
    const { cv } = await openCv();
    const image = paintBoard(CAMERA, BOARD_POSES[0]!, SIZE, seededRandom(6));
    const data = new Uint8ClampedArray(image.data.length);
    for (let at = 0; at < data.length; at += 4) {
      const column = (at / 4) % SIZE.widthPx;
      data.set(image.data.subarray(at, at + 4), at + 4 * (SIZE.widthPx - 1 - 2 * column));
    }
    expect(createBoardFinder(cv)({ ...SIZE, data })).toMatchObject({ ok: false, failure: { kind: 'no-board' } });
  });

  it('deletes all that it makes on the heap of OpenCV, also when OpenCV throws', { timeout: 60_000 }, async () => {
    const counted = countedOpenCv((await openCv()).cv);
    const findBoard = createBoardFinder(counted.cv);
    expect(findBoard(paintBoard(CAMERA, BOARD_POSES[0]!, SIZE, seededRandom(7))).ok).toBe(true);
    // picture, corners, ids, marker corners and ids, dictionary, its ids, board, three sets of parameters, detector
    expect(counted.made()).toBe(12);
    expect(counted.alive()).toBe(0);
    expect(() => findBoard({ widthPx: 0, heightPx: 0, data: new Uint8ClampedArray(0) })).toThrow();
    expect(counted.alive()).toBe(0);
  });
});
