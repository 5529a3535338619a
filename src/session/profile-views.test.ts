import { describe, expect, it } from 'vitest';
import type { BoardView } from '../core/camera/board.js';
import { BOARD_CORNER_COUNT, boardCornerMm } from '../core/camera/board.js';
import { cameraFromFieldOfView, project } from '../core/camera/pinhole.js';
import { BOARD_POSITIONS, type BoardPosition } from '../core/camera/profile-quality.js';
import { toCamera } from '../core/geometry/pose.js';
import { poseOfPosition } from './profile-outline.js';
import { askedPosition, judgeFrame, viewsOfOneSize } from './profile-views.js';

const camera = cameraFromFieldOfView(1280, 720, (66 * Math.PI) / 180);

function viewOf(position: BoardPosition, shiftPx = 0): BoardView {
  const pose = poseOfPosition(position, 1280, 720);
  const corners = Array.from({ length: BOARD_CORNER_COUNT }, (_, index) => {
    const { xMm, yMm } = boardCornerMm(index);
    const { xPx, yPx } = project(camera, toCamera(pose, [xMm, yMm, 0]));
    return { index, xPx: xPx + shiftPx, yPx };
  });
  return { widthPx: 1280, heightPx: 720, corners };
}

const middle = viewOf('middle');

describe('a frame', () => {
  it('without the sheet gives nothing', () => {
    expect(judgeFrame(null, middle, [])).toBe('no-sheet');
  });

  it('is waited for until the sheet stands still', () => {
    expect(judgeFrame(middle, null, [])).toBe('moving');
    expect(judgeFrame(middle, viewOf('middle', 12), [])).toBe('moving');
    expect(judgeFrame(middle, viewOf('middle', 2), [])).toBe('worth-taking');
  });

  it('like one that was taken adds nothing', () => {
    expect(judgeFrame(viewOf('middle', 30), viewOf('middle', 30), [middle])).toBe('nothing-new');
  });

  it('elsewhere that shows no position anew and covers hardly more adds nothing', () => {
    // 80 px, a sixteenth of the width: another place, within the middle all the same
    expect(judgeFrame(viewOf('middle', 80), viewOf('middle', 80), [middle])).toBe('nothing-new');
  });

  it('in a position of its own is worth taking', () => {
    const tilted = viewOf('tilted-left');
    expect(judgeFrame(tilted, tilted, [middle])).toBe('worth-taking');
  });

  it('in another place is worth taking once all positions were shown', () => {
    const all = BOARD_POSITIONS.map((position) => viewOf(position));
    const again = viewOf('middle', 80);
    expect(judgeFrame(again, again, all)).toBe('worth-taking');
  });
});

describe('views of several sizes', () => {
  it('keep those of the commonest size, in their order', () => {
    const large = { view: middle };
    const small = { view: { ...middle, widthPx: 640, heightPx: 360 } };
    expect(viewsOfOneSize([small, large, large])).toEqual([large, large]);
    expect(viewsOfOneSize([small, large])).toEqual([small]);
    expect(viewsOfOneSize([])).toEqual([]);
  });
});

describe('the position that is asked for', () => {
  it('is the first that was not shown, leaving out what was skipped', () => {
    expect(askedPosition([])).toBe('middle');
    expect(askedPosition([middle])).toBe('nearer');
    expect(askedPosition([middle], new Set(['nearer']))).toBe('farther');
  });

  it('ends when all were shown', () => {
    expect(askedPosition(BOARD_POSITIONS.map((position) => viewOf(position)))).toBeNull();
  });

  it('goes on with any view where all but few were skipped', () => {
    expect(askedPosition([middle], new Set(BOARD_POSITIONS))).toBe('middle');
    expect(
      askedPosition(
        Array.from({ length: 8 }, () => middle),
        new Set(BOARD_POSITIONS),
      ),
    ).toBeNull();
  });
});
