import { describe, expect, it } from 'vitest';
import { BOARD_POSES, boardPose, projectedView } from '../../../tests/support/painted-board.js';
import type { BoardView } from './board.js';
import type { CameraProfile } from './camera-profile.js';
import { NO_DISTORTION, type Camera } from './pinhole.js';
import {
  BOARD_POSITIONS,
  boardMovementPx,
  findBoardPlacement,
  isNewView,
  judgeViews,
  nextPosition,
  positionsOf,
  weaknessesOfProfile,
} from './profile-quality.js';

/** A camera as it is assumed where none is known: 1280 px over 66 degrees make a focal length of 985.5 px. */
const CAMERA: Camera = { fx: 985.5, fy: 985.5, cx: 640, cy: 360, distortion: NO_DISTORTION };
const SIZE = { widthPx: 1280, heightPx: 720 };

function viewOf(...pose: Parameters<typeof boardPose>): BoardView {
  return projectedView(CAMERA, boardPose(...pose), SIZE);
}

describe('findBoardPlacement', () => {
  it('tells slopes, turn, size and place of the sheet', () => {
    // turned about y (down) by +20 degrees, x goes to (cos, 0, -sin): the right side comes nearer, so the slope is negative
    const across = findBoardPlacement(viewOf([0, 20, 0], [0, 0, 500]));
    expect(across?.tiltAcrossDeg).toBeCloseTo(-20, 0);
    expect(across?.tiltDownDeg).toBeCloseTo(0, 0);
    const down = findBoardPlacement(viewOf([20, 0, 0], [0, 0, 500]));
    expect(Math.abs(down?.tiltDownDeg ?? 0)).toBeCloseTo(20, 0);
    expect(down?.tiltAcrossDeg).toBeCloseTo(0, 0);
    const turned = findBoardPlacement(viewOf([0, 0, 90], [100, -50, 500]));
    expect(turned?.turnDeg).toBeCloseTo(90, 3);
    // 210 mm at 500 mm through 985.5 px in 1280 px; the middle at 640 + 985.5 / 5 px and 360 - 985.5 / 10 px
    expect(turned?.sizeShare).toBeCloseTo((210 * 985.5) / 500 / 1280, 3);
    expect(turned?.middle.xShare).toBeCloseTo((640 + 985.5 / 5) / 1280, 4);
    expect(turned?.middle.yShare).toBeCloseTo((360 - 985.5 / 10) / 720, 4);
  });

  it('calls that side nearer which looks larger', () => {
    for (const turn of [25, -25]) {
      const view = viewOf([0, turn, 0], [0, 0, 450]);
      const lengthOf = (from: number, to: number) => {
        const [a, b] = [view.corners[from]!, view.corners[to]!];
        return Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);
      };
      // corners 0 and 18 end the leftmost column, 5 and 23 the rightmost
      const isLeftLarger = lengthOf(0, 18) > lengthOf(5, 23);
      expect([...positionsOf(view)].filter((position) => position.startsWith('tilted'))).toEqual([
        isLeftLarger ? 'tilted-left' : 'tilted-right',
      ]);
      const upright = viewOf([turn, 0, 0], [0, 0, 450]);
      const width = (from: number, to: number) => Math.abs(upright.corners[from]!.xPx - upright.corners[to]!.xPx);
      const isTopLarger = width(0, 5) > width(18, 23);
      expect([...positionsOf(upright)].filter((position) => position.startsWith('tilted'))).toEqual([
        isTopLarger ? 'tilted-top' : 'tilted-bottom',
      ]);
    }
  });

  it('gives nothing where too little of the sheet is there', () => {
    const { corners } = viewOf([0, 0, 0], [0, 0, 500]);
    expect(findBoardPlacement({ ...SIZE, corners: corners.slice(0, 3) })).toBeNull();
    expect(positionsOf({ ...SIZE, corners: corners.slice(0, 5) }).size).toBe(0);
  });
});

describe('nextPosition', () => {
  it('asks for one position after the other until all were shown, and then for nothing', () => {
    // each position is served by the first pose that shows it
    const views = BOARD_POSES.map((pose) => projectedView(CAMERA, pose, SIZE));
    const taken: BoardView[] = [];
    for (let step = 0; step <= BOARD_POSITIONS.length; step++) {
      const asked = nextPosition(taken);
      if (asked === null) break;
      const view = views.find((each) => positionsOf(each).has(asked));
      expect(view, asked).toBeDefined();
      taken.push(view!);
    }
    expect(nextPosition(taken)).toBeNull();
    expect(taken.length).toBeGreaterThanOrEqual(8);
  });

  it('begins in the middle, and asks for a position no more once a view has shown it', () => {
    expect(nextPosition([])).toBe('middle');
    expect(nextPosition([viewOf([0, 0, 0], [0, 0, 450])])).toBe('nearer');
    expect(nextPosition([viewOf([0, 0, 0], [0, 0, 330])])).toBe('farther');
  });
});

describe('boardMovementPx and isNewView', () => {
  const [a, moved] = [viewOf([0, 0, 0], [0, 0, 500]), viewOf([0, 0, 0], [10, 0, 500])];

  it('measure how far the corners moved', () => {
    // 10 mm at 500 mm through 985.5 px
    expect(boardMovementPx(a, moved)).toBeCloseTo(19.71, 6);
    expect(boardMovementPx(a, { ...SIZE, corners: [] })).toBeNull();
  });

  it('take a view for new when it moved by more than a twentieth of the width from all earlier ones', () => {
    expect(isNewView(moved, [])).toBe(true);
    expect(isNewView(moved, [a])).toBe(false);
    const far = viewOf([0, 0, 0], [60, 0, 500]);
    expect(isNewView(far, [a])).toBe(true);
    expect(isNewView(far, [a, far])).toBe(false);
  });
});

describe('judgeViews', () => {
  it('has nothing to say against a dozen views to all sides', () => {
    const quality = judgeViews(BOARD_POSES.map((pose) => projectedView(CAMERA, pose, SIZE)));
    expect(quality.weaknesses).toEqual([]);
    expect(quality.viewCount).toBe(12);
    // tilted by 33 and -35 degrees about the one axis, 34 and -33 about the other
    expect(quality.tiltAcrossSpreadDeg).toBeCloseTo(68, 0);
    expect(quality.tiltDownSpreadDeg).toBeCloseTo(67, 0);
    expect(quality.nearestSizeShare! / quality.farthestSizeShare!).toBeCloseTo(640 / 330, 2);
  });

  it('counts the cells with corners', () => {
    const corner = (index: number, xPx: number, yPx: number) => ({ index, xPx, yPx });
    // cells of 160 x 120 px: two corners in the first one, one in the last one
    const view = { ...SIZE, corners: [corner(0, 10, 10), corner(1, 159, 119), corner(2, 1279, 719)] };
    const { coverage, coveredCells } = judgeViews([view]);
    expect(coverage).toBeCloseTo(2 / 48, 9);
    expect([coveredCells[0], coveredCells[47]]).toEqual([true, true]);
  });

  it('names all that is weak about views that are all alike', () => {
    const views = [450, 460, 470].map((z) => viewOf([0, 0, 0], [0, 0, z]));
    const { weaknesses } = judgeViews(views);
    expect(weaknesses.map(({ kind }) => kind)).toEqual([
      'few-views',
      'little-coverage',
      'corners-uncovered',
      'little-tilt',
      'little-tilt',
      'one-distance',
    ]);
    expect(weaknesses[0]).toEqual({ kind: 'few-views', views: 3, wanted: 8 });
    expect(weaknesses[2]).toMatchObject({ corners: ['left-top', 'right-top', 'right-bottom', 'left-bottom'] });
    expect(weaknesses[5]).toMatchObject({ ratio: expect.closeTo(470 / 450, 3) as number });
  });

  it('says of no views that all is missing', () => {
    expect(judgeViews([])).toMatchObject({
      viewCount: 0,
      coverage: 0,
      nearestSizeShare: null,
      farthestSizeShare: null,
    });
  });
});

describe('weaknessesOfProfile', () => {
  const profile: CameraProfile = {
    ...CAMERA,
    ...SIZE,
    uncertainty: { fx: 1, fy: 1, cx: 1, cy: 1, distortion: [0.001, 0.001, 0.0001, 0.0001, 0] },
    rmsPx: 0.1,
    viewCount: 10,
  };

  it('names a doubtful focal length and a poor fit', () => {
    expect(weaknessesOfProfile(profile)).toEqual([]);
    const doubtful = { ...profile, uncertainty: { ...profile.uncertainty, fy: 9.855 } };
    expect(weaknessesOfProfile(doubtful)).toEqual([
      { kind: 'focal-length-doubtful', relativeUncertainty: 0.01, wanted: 0.003 },
    ]);
    expect(weaknessesOfProfile({ ...profile, rmsPx: 0.49 })).toEqual([
      { kind: 'poor-fit', rmsPx: 0.49, wantedPx: 0.25 },
    ]);
    // twice as many pixels: twice as much is allowed
    expect(weaknessesOfProfile({ ...profile, widthPx: 2560, rmsPx: 0.49 })).toEqual([]);
  });
});
