import { describe, expect, it } from 'vitest';
import { boardPose, projectedView } from '../../../tests/support/painted-board.js';
import { findBoardPose } from './board-pose.js';
import { NO_DISTORTION, type Camera } from './pinhole.js';

const CAMERA: Camera = { fx: 984, fy: 980, cx: 645, cy: 352, distortion: [-0.12, 0.03, 0.001, -0.0005, 0] };
const SIZE = { widthPx: 1280, heightPx: 720 };

describe('findBoardPose', () => {
  it.each([
    [
      [0, 0, 0],
      [0, 0, 400],
    ],
    [
      [20, -30, 100],
      [-60, 40, 520],
    ],
    [
      [-35, 15, -170],
      [30, -50, 350],
    ],
  ] as const)('gives back a sheet turned by %j degrees, with its middle at %j mm', (turnDeg, middleMm) => {
    const pose = boardPose(turnDeg, middleMm);
    const found = findBoardPose(CAMERA, projectedView(CAMERA, pose, SIZE).corners);
    // exact corners: only rounding is left, some 1e-7 of the sheet's size
    found?.translationMm.forEach((mm, i) => expect(Math.abs(mm - pose.translationMm[i]!)).toBeLessThan(1e-3));
    found?.rotation.forEach((row, i) => row.forEach((entry, j) => expect(entry).toBeCloseTo(pose.rotation[i]![j]!, 5)));
    expect(found).not.toBeNull();
  });

  it('gives nothing for corners that do not span the sheet', () => {
    const plain: Camera = { ...CAMERA, distortion: NO_DISTORTION };
    const { corners } = projectedView(plain, boardPose([10, 5, 0], [0, 0, 400]), SIZE);
    expect(findBoardPose(plain, corners.slice(0, 3))).toBeNull();
    // six in one row of the sheet
    expect(findBoardPose(plain, corners.slice(0, 6))).toBeNull();
  });
});
