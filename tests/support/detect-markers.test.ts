import { describe, expect, it } from 'vitest';
import { openCvInNode } from '../../calibration/opencv-in-node.js';
import { detectMarkers, paintRectangles } from './detect-markers.js';

describe('paintRectangles', () => {
  it('greys a pixel by the share that is covered', () => {
    // covered by hand: a quarter of the first pixel, half of the second, the whole of none
    const image = paintRectangles(3, 1, [{ leftPx: 0.5, topPx: 0.5, rightPx: 2, bottomPx: 1 }]);
    expect([...image.levels]).toEqual([191, 128, 255]);
  });
});

describe('detectMarkers', () => {
  it("finds the marker that OpenCV itself drew, with its corners on the marker's outer edge", async () => {
    const { cv } = await openCvInNode();
    const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50);
    const drawn = new cv.Mat();
    dictionary.generateImageMarker(7, 60, drawn, 1);
    const levels = new Uint8Array(100 * 100).fill(255);
    for (let row = 0; row < 60; row++) levels.set(drawn.data.subarray(row * 60, row * 60 + 60), (row + 20) * 100 + 30);
    drawn.delete();
    dictionary.delete();

    const found = await detectMarkers({ widthPx: 100, heightPx: 100, levels });
    expect(found.map((marker) => marker.id)).toEqual([7]);
    const expected = [
      [30, 20],
      [90, 20],
      [90, 80],
      [30, 80],
    ];
    found[0]?.corners.forEach((corner, index) => {
      // sub-pixel refinement draws corners inwards by up to about a tenth of a pixel
      expect(
        Math.hypot(corner.xPx - (expected[index]?.[0] ?? NaN), corner.yPx - (expected[index]?.[1] ?? NaN)),
      ).toBeLessThan(0.2);
    });
  });

  it('finds nothing on blank paper', async () => {
    expect(await detectMarkers(paintRectangles(80, 60, []))).toEqual([]);
  });
});
