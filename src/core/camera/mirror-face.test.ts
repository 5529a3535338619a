import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import { meanOfLooks, mirrorIndices, unmirrored } from './mirror-face.js';

const INDICES = mirrorIndices(canonicalFace);

describe('mirrorIndices', () => {
  it('pairs all 478 landmarks: twice mirrored is where it was', () => {
    expect(INDICES).toHaveLength(478);
    INDICES.forEach((index, i) => expect(INDICES[index]).toBe(i));
  });

  it('changes the wearer’s sides and leaves the midline', () => {
    // eye corners, lids and sides of the face by the numbering of the landmark model
    expect([33, 133, 159, 145, 127, 234, 468].map((i) => INDICES[i])).toEqual([263, 362, 386, 374, 356, 454, 473]);
    expect([10, 168, 1, 152].map((i) => INDICES[i])).toEqual([10, 168, 1, 152]);
  });
});

describe('looks at a face', () => {
  const face = Array.from({ length: 478 }, (_, i) => ({ xPx: i, yPx: 2 * i, depthPx: -i }));

  it('are put in order', () => {
    const back = unmirrored(unmirrored(face, INDICES), INDICES);
    expect(back).toEqual(face);
    expect(unmirrored(face, INDICES)[33]).toEqual(face[263]);
  });

  it('have a mean', () => {
    const shifted = face.map(({ xPx, yPx, depthPx }) => ({ xPx: xPx + 2, yPx: yPx - 4, depthPx }));
    expect(meanOfLooks([face, shifted])[7]).toEqual({ xPx: 8, yPx: 12, depthPx: -7 });
  });
});
