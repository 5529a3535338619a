import { describe, expect, it } from 'vitest';
import type { Face } from './faces.js';
import { distinctFaces, eyeDistancePx, landmarksInPicture, regionAround } from './faces.js';

/** A face of 478 points of which only the iris centres matter, 468 the wearer's right (left in the picture). */
function face(centreX: number, centreY: number, eyesApartPx: number): Face {
  return Array.from({ length: 478 }, (_, index) => ({
    xPx: centreX + (index === 468 ? -eyesApartPx / 2 : index === 473 ? eyesApartPx / 2 : 0),
    yPx: centreY,
    depthPx: 0,
  }));
}

describe('landmarksInPicture', () => {
  it('puts points of a region where they lie in the picture, depth in the scale of the width', () => {
    const region = { xPx: 100, yPx: 50, widthPx: 200, heightPx: 400 };
    expect(landmarksInPicture([{ x: 0.5, y: 0.25, z: -0.1 }], region)).toEqual([{ xPx: 200, yPx: 150, depthPx: -20 }]);
  });
});

describe('distinctFaces', () => {
  it('takes one face that two regions show for one', () => {
    expect(distinctFaces([face(300, 200, 80), face(304, 199, 82)])).toHaveLength(1);
  });

  it('counts two people beside each other', () => {
    expect(distinctFaces([face(300, 200, 80), face(520, 210, 70)])).toHaveLength(2);
  });

  it('does not count a portrait on the card, or somebody far behind; the largest face comes first', () => {
    const faces = distinctFaces([face(310, 90, 12), face(300, 200, 80), face(600, 100, 31)]);
    expect(faces.map(eyeDistancePx)).toEqual([80]);
  });

  it('is empty without a face', () => {
    expect(distinctFaces([])).toEqual([]);
  });
});

describe('regionAround', () => {
  it('is a square with the face in its middle', () => {
    const region = regionAround(face(300, 200, 100));
    expect(region.widthPx).toBe(region.heightPx);
    expect(region.xPx + region.widthPx / 2).toBe(300);
    expect(region.yPx + region.heightPx / 2).toBe(200);
    // a face is some 2.3 eye distances wide, and is to fill a third
    expect(region.widthPx).toBe(690);
  });
});
