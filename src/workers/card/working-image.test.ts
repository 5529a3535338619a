import { describe, expect, it } from 'vitest';
import type { Landmark, PictureFeatures } from '../../core/camera/features.js';
import { featuresInPicture, landmarksInFrame, workingFrame } from './working-image.js';

function outline(left: number, top: number, right: number, bottom: number): readonly Landmark[] {
  return [
    { xPx: left, yPx: top, depthPx: 0 },
    { xPx: right, yPx: bottom, depthPx: 10 },
  ];
}

describe('workingFrame', () => {
  it('leaves one larger side of the face free around it, within the picture', () => {
    expect(workingFrame(4000, 3000, outline(2000, 1000, 2200, 1300))).toEqual({
      xPx: 1700,
      yPx: 700,
      widthPx: 800,
      heightPx: 900,
      scale: 1,
    });
    expect(workingFrame(1280, 720, outline(500, 200, 700, 500))).toEqual({
      xPx: 200,
      yPx: 0,
      widthPx: 800,
      heightPx: 720,
      scale: 1,
    });
  });

  it('shrinks an enormous face to 1600 pixels', () => {
    expect(workingFrame(8000, 6000, outline(2000, 1000, 4800, 4200)).scale).toBe(0.5);
  });

  it('is the whole picture without a face', () => {
    expect(workingFrame(640, 480, [])).toEqual({ xPx: 0, yPx: 0, widthPx: 640, heightPx: 480, scale: 1 });
  });
});

describe('featuresInPicture', () => {
  const frame = { xPx: 100, yPx: 40, widthPx: 400, heightPx: 300, scale: 0.5 };
  const picture = { widthPx: 4000, heightPx: 3000, landmarks: outline(150, 100, 350, 300) };

  it('takes features back to where they lie in the picture, lengths by the scale, variances by its square', () => {
    const point = { xPx: 10, yPx: 20 };
    const measured = { ...point, covariance: { xx: 0.04, xy: 0.01, yy: 0.09 } };
    const iris = { centre: measured, radiusPx: 9, radiusUncertaintyPx: 0.1, support: 0.8, source: 'edges' as const };
    const lids = { upper: point, lower: point, uncertaintyPx: 0.5, source: 'edges' as const };
    const found: PictureFeatures = {
      widthPx: 200,
      heightPx: 150,
      landmarks: landmarksInFrame(picture.landmarks, frame),
      card: {
        source: 'edges',
        corners: [measured, measured, measured, measured],
        edgeSupport: [1, 0.5, 1, 1],
        position: 'chin',
      },
      iris: { R: iris, L: iris },
      pupil: { R: { centre: measured, radiusPx: 3, radiusUncertaintyPx: 0.4 }, L: null },
      lids: { R: lids, L: lids },
      midline: { point, betweenPupils: point, uncertaintyPx: 1, source: 'landmarks' },
      outline: {
        head: { R: point, L: point },
        temple: { R: point, L: point },
        uncertaintyPx: 2,
        skinEdge: { R: point, L: point, uncertaintyPx: 1 },
      },
      bridge: [{ belowCrestMm: 10, R: point, L: point, uncertaintyPx: 1.5 }],
    };
    // by hand: 100 + 10 / 0.5 and 40 + 20 / 0.5; variances over 0.25
    const there = { xPx: 120, yPx: 80 };
    const measuredThere = { ...there, covariance: { xx: 0.16, xy: 0.04, yy: 0.36 } };
    const irisThere = { ...iris, centre: measuredThere, radiusPx: 18, radiusUncertaintyPx: 0.2 };
    const lidsThere = { ...lids, upper: there, lower: there, uncertaintyPx: 1 };
    expect(featuresInPicture(found, frame, picture)).toEqual({
      ...picture,
      card: { ...found.card, corners: [measuredThere, measuredThere, measuredThere, measuredThere] },
      iris: { R: irisThere, L: irisThere },
      pupil: { R: { centre: measuredThere, radiusPx: 6, radiusUncertaintyPx: 0.8 }, L: null },
      lids: { R: lidsThere, L: lidsThere },
      midline: { point: there, betweenPupils: there, uncertaintyPx: 2, source: 'landmarks' },
      outline: {
        head: { R: there, L: there },
        temple: { R: there, L: there },
        uncertaintyPx: 4,
        skinEdge: { R: there, L: there, uncertaintyPx: 2 },
      },
      bridge: [{ belowCrestMm: 10, R: there, L: there, uncertaintyPx: 3 }],
    });
  });

  it('takes landmarks the other way', () => {
    expect(landmarksInFrame([{ xPx: 120, yPx: 80, depthPx: -8 }], frame)).toEqual([{ xPx: 10, yPx: 20, depthPx: -4 }]);
  });
});
