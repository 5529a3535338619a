import { describe, expect, it } from 'vitest';
import type { MeasuredPoint, PictureFeatures } from '../core/camera/features.js';
import { exampleFeatures } from '../../tests/support/example-features.js';
import {
  CARD_HANDLES,
  eyeHandles,
  HAND_CORNER_PX,
  HAND_IRIS_PX,
  HAND_LID_PX,
  HAND_MIDLINE_SHARE,
  handleKey,
  handlePoint,
  MIDLINE_HANDLE,
  moveHandle,
  vouchForCorners,
} from './handles.js';

const features = exampleFeatures();
const variance = (point: MeasuredPoint): number => point.covariance.xx;

/** Example features whose eyes stand on a line that falls by 3 px for every 4 px to the right: all directions are exact. */
function leaning(): PictureFeatures {
  const { R, L } = features.iris;
  return {
    ...features,
    iris: {
      R: { ...R, centre: { ...R.centre, xPx: 400, yPx: 300 } },
      L: { ...L, centre: { ...L.centre, xPx: 480, yPx: 360 } },
    },
  };
}

describe('handles', () => {
  it('have a name each', () => {
    const all = [...CARD_HANDLES, MIDLINE_HANDLE, ...eyeHandles('R'), ...eyeHandles('L')];
    expect(new Set(all.map(handleKey)).size).toBe(4 + 1 + 2 * 4);
  });

  it('stand where they were moved to', () => {
    for (const handle of [...CARD_HANDLES, ...eyeHandles('R').slice(0, 1)]) {
      const moved = moveHandle(features, handle, { xPx: 123.5, yPx: 234.25 });
      expect(handlePoint(moved, handle)).toMatchObject({ xPx: 123.5, yPx: 234.25 });
    }
  });

  it('stay inside the picture', () => {
    const moved = moveHandle(features, { kind: 'card-corner', corner: 1 }, { xPx: -50, yPx: 1e6 });
    expect(handlePoint(moved, { kind: 'card-corner', corner: 1 })).toMatchObject({ xPx: 0, yPx: features.heightPx });
  });

  it('move one corner of the card, with the doubt of a hand, and leave the others and their doubt', () => {
    const moved = moveHandle(features, { kind: 'card-corner', corner: 2 }, { xPx: 10, yPx: 20 });
    expect(moved.card.source).toBe('hand');
    expect(moved.card.corners[0]).toEqual(features.card.corners[0]);
    expect(moved.card.corners[3]).toEqual(features.card.corners[3]);
    expect(variance(moved.card.corners[2])).toBeCloseTo(HAND_CORNER_PX ** 2, 12);
    expect(moved.card.edgeSupport).toEqual([1, 1, 1, 1]);
  });

  it('keep the radius when the iris centre moves, and the centre when its edge moves', () => {
    const shifted = moveHandle(features, { kind: 'iris-centre', side: 'R' }, { xPx: 500, yPx: 300 });
    expect(shifted.iris.R.radiusPx).toBe(features.iris.R.radiusPx);
    expect(shifted.iris.R.source).toBe('hand');
    expect(shifted.iris.L).toBe(features.iris.L);
    const { xPx, yPx } = features.iris.L.centre;
    // a triangle of 6, 8 and 10
    const grown = moveHandle(features, { kind: 'iris-edge', side: 'L' }, { xPx: xPx + 6, yPx: yPx + 8 });
    expect(grown.iris.L.radiusPx).toBeCloseTo(10, 9);
    expect(grown.iris.L.radiusUncertaintyPx).toBe(HAND_IRIS_PX);
    expect(grown.iris.L.centre).toEqual(features.iris.L.centre);
  });

  it('keep lids on the head’s vertical through the pupil', () => {
    const head = leaning();
    // From (400, 300), the vertical of this head runs along (-3, 4) / 5; the foot of (400, 325) lies 20 px along it.
    const moved = moveHandle(head, { kind: 'lid-lower', side: 'R' }, { xPx: 400, yPx: 325 });
    expect(moved.lids.R.lower.xPx).toBeCloseTo(388, 9);
    expect(moved.lids.R.lower.yPx).toBeCloseTo(316, 9);
    expect(moved.lids.R.uncertaintyPx).toBe(HAND_LID_PX);
    expect(moved.lids.R.upper).toEqual(head.lids.R.upper);
  });

  it('let the lids follow the pupil sideways', () => {
    const { xPx, yPx } = features.iris.L.centre;
    // Level eyes: moving one along their own line only shifts its lids by the same.
    const moved = moveHandle(features, { kind: 'iris-centre', side: 'L' }, { xPx: xPx + 5, yPx });
    expect(moved.lids.L.upper.xPx).toBeCloseTo(xPx + 5, 9);
    expect(moved.lids.L.upper.yPx).toBeCloseTo(features.lids.L.upper.yPx, 9);
    expect(moved.lids.L.source).toBe(features.lids.L.source);
  });

  it('move the midline only along the line of the eyes, with the doubt of a hand', () => {
    const { point } = features.midline;
    const moved = moveHandle(features, MIDLINE_HANDLE, { xPx: point.xPx + 7, yPx: point.yPx + 40 });
    expect(moved.midline.point.xPx).toBeCloseTo(point.xPx + 7, 9);
    expect(moved.midline.point.yPx).toBeCloseTo(point.yPx, 9);
    const { R, L } = features.iris;
    const apartPx = Math.hypot(L.centre.xPx - R.centre.xPx, L.centre.yPx - R.centre.yPx);
    expect(moved.midline.source).toBe('hand');
    expect(moved.midline.uncertaintyPx).toBeCloseTo(HAND_MIDLINE_SHARE * apartPx, 9);
  });

  it('vouch for all four corners where they stand', () => {
    const vouched = vouchForCorners(features);
    vouched.card.corners.forEach((corner, index) => {
      expect(corner).toMatchObject({ xPx: features.card.corners[index]?.xPx, yPx: features.card.corners[index]?.yPx });
      expect(variance(corner)).toBeCloseTo(HAND_CORNER_PX ** 2, 12);
    });
    expect(vouched.card.source).toBe('hand');
  });
});
