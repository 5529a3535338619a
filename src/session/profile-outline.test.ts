import { describe, expect, it } from 'vitest';
import type { BoardView } from '../core/camera/board.js';
import { BOARD_CORNER_COUNT, boardCornerMm } from '../core/camera/board.js';
import { cameraFromFieldOfView, project } from '../core/camera/pinhole.js';
import { BOARD_POSITIONS, nextPosition, positionsOf, type BoardPosition } from '../core/camera/profile-quality.js';
import { toCamera } from '../core/geometry/pose.js';
import { outlineOfPosition, poseOfPosition } from './profile-outline.js';

/** What a camera of this field of view shows of a sheet that is held where the outline asks for it. */
function viewOf(position: BoardPosition, widthPx: number, heightPx: number, fieldOfViewDeg: number): BoardView {
  const camera = cameraFromFieldOfView(widthPx, heightPx, (fieldOfViewDeg * Math.PI) / 180);
  const pose = poseOfPosition(position, widthPx, heightPx);
  const corners = Array.from({ length: BOARD_CORNER_COUNT }, (_, index) => {
    const { xMm, yMm } = boardCornerMm(index);
    // Who fills the outline with another camera stands at another distance, the same part of the picture.
    const [x, y, z] = toCamera(pose, [xMm, yMm, 0]);
    const usual = cameraFromFieldOfView(widthPx, heightPx, (66 * Math.PI) / 180);
    return { index, ...project(camera, [x, y, (z * camera.fx) / usual.fx]) };
  }).filter(({ xPx, yPx }) => xPx > 0 && yPx > 0 && xPx < widthPx && yPx < heightPx);
  return { widthPx, heightPx, corners };
}

describe.each([
  [1280, 720],
  [640, 480],
  [1920, 1080],
])('the outlines in a picture of %d x %d', (widthPx, heightPx) => {
  it.each(BOARD_POSITIONS)('show “%s” when they are filled', (position) => {
    expect([...positionsOf(viewOf(position, widthPx, heightPx, 66))]).toContain(position);
  });

  it('show all that is asked for, with twelve views at most, and end', () => {
    const views: BoardView[] = [];
    for (let position = nextPosition(views); position !== null; position = nextPosition(views)) {
      views.push(viewOf(position, widthPx, heightPx, 66));
      expect(views.length).toBeLessThanOrEqual(12);
    }
    expect(views.length).toBeGreaterThanOrEqual(8);
  });

  it('stand in the frame, but for the tilted and the upright ones wholly', () => {
    for (const position of BOARD_POSITIONS) {
      const inside = outlineOfPosition(position, widthPx, heightPx).filter(
        ({ xPx, yPx }) => xPx >= 0 && yPx >= 0 && xPx <= widthPx && yPx <= heightPx,
      );
      expect(inside.length, position).toBeGreaterThanOrEqual(3);
    }
  });
});

describe('the outline of a tilted sheet', () => {
  it('is higher on the side that is to come nearer', () => {
    const [leftTop, rightTop, rightBottom, leftBottom] = outlineOfPosition('tilted-left', 1280, 720);
    const left = (leftBottom?.yPx ?? NaN) - (leftTop?.yPx ?? NaN);
    const right = (rightBottom?.yPx ?? NaN) - (rightTop?.yPx ?? NaN);
    expect(left).toBeGreaterThan(1.2 * right);
  });
});
