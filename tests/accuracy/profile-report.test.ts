import { describe, expect, it } from 'vitest';
import type { CameraProfile } from '../../src/core/camera/camera-profile.js';
import { BOARD_POSES, projectedView } from '../support/painted-board.js';
import {
  parseCameraTruth,
  parseProfileArguments,
  partBySize,
  profileFailureSentence,
  writeProfileReport,
  writtenProfile,
} from './profile-report.js';

const PROFILE: CameraProfile = {
  fx: 1000,
  fy: 1001,
  cx: 640,
  cy: 360,
  distortion: [-0.1, 0.01, 0.001, 0.002, 0],
  widthPx: 1280,
  heightPx: 720,
  uncertainty: { fx: 2, fy: 2.5, cx: 1, cy: 1.5, distortion: [0.002, 0.003, 0.0001, 0.0002, 0] },
  rmsPx: 0.05,
  viewCount: 12,
};

describe('parseProfileArguments', () => {
  it('reads the folder and the file', () => {
    expect(parseProfileArguments(['views'])).toEqual({ folder: 'views', jsonFile: null });
    expect(parseProfileArguments(['--json', 'out.json', 'views'])).toEqual({ folder: 'views', jsonFile: 'out.json' });
  });

  it.each([[[]], [['a', 'b']], [['a', '--json']], [['a', '--json', '--json']], [['a', '--profile']]])(
    'refuses %j',
    (words) => {
      expect(parseProfileArguments(words)).toBeNull();
    },
  );
});

describe('partBySize', () => {
  it('keeps the views of the most frequent size', () => {
    const named = (file: string, widthPx: number) => ({ file, view: { widthPx, heightPx: 480, corners: [] } });
    const { kept, others } = partBySize([named('a', 640), named('b', 800), named('c', 640)]);
    expect(kept.map(({ file }) => file)).toEqual(['a', 'c']);
    expect(others.map(({ file }) => file)).toEqual(['b']);
    expect(partBySize([named('a', 640), named('b', 800)]).kept.map(({ file }) => file)).toEqual(['b']);
    expect(partBySize([])).toEqual({ kept: [], others: [] });
  });
});

describe('parseCameraTruth', () => {
  it('reads intrinsics, with one coefficient or none', () => {
    const intrinsics = { fx: 1, fy: 2, cx: 3, cy: 4 };
    expect(parseCameraTruth({ ...intrinsics, distortion: null, views: [] })).toEqual({
      ...intrinsics,
      distortion: [0, 0, 0, 0, 0],
    });
    expect(parseCameraTruth({ ...intrinsics, distortion: { k1: -0.1 } })?.distortion[0]).toBe(-0.1);
    expect(parseCameraTruth([intrinsics])).toBeNull();
    expect(parseCameraTruth({ ...intrinsics, fx: '1' })).toBeNull();
  });
});

describe('writtenProfile', () => {
  it('has exactly the members of the promised file', () => {
    expect(JSON.parse(JSON.stringify(writtenProfile(PROFILE)))).toEqual({
      fx: 1000,
      fy: 1001,
      cx: 640,
      cy: 360,
      distortion: [-0.1, 0.01, 0.001, 0.002, 0],
      rmsPx: 0.05,
      sd: { fx: 2, fy: 2.5, cx: 1, cy: 1.5, distortion: [0.002, 0.003, 0.0001, 0.0002, 0] },
      views: 12,
    });
  });
});

describe('writeProfileReport', () => {
  const size = { widthPx: 1280, heightPx: 720 };
  const views = BOARD_POSES.map((pose) => projectedView(PROFILE, pose, size));

  it('prints values with their doubt, what was held, and the distance from a truth', () => {
    const report = writeProfileReport(PROFILE, views, { ...PROFILE, fx: 996, distortion: [-0.1, 0, 0, 0, 0] });
    expect(report).toMatch(/fx +1000\.00 ± 2\.00 px +truth 996\.00, off by 4\.00, 2\.0 sd/);
    expect(report).toMatch(/k3 +0\.00000 ± held/);
    expect(report).toContain('nothing is weak');
    expect(report).toContain('off by +0.402 %');
    expect(writeProfileReport(PROFILE, views, null)).not.toContain('truth');
  });

  it('names what is weak', () => {
    const report = writeProfileReport({ ...PROFILE, rmsPx: 0.9 }, views.slice(0, 2), null);
    for (const part of ['only 2 views', 'frame', 'tilt', 'corners fit to 0.90 px only']) expect(report).toContain(part);
  });
});

describe('profileFailureSentence', () => {
  it('says how many views there were and are needed', () => {
    expect(profileFailureSentence({ kind: 'too-few-views', views: 4, viewsNeeded: 6 })).toBe(
      'Too few usable views: 4; at least 6 are needed for a profile.',
    );
    expect(profileFailureSentence({ kind: 'no-board', cornersFound: 3, cornersNeeded: 6 })).toContain(
      '3 corners of the 6',
    );
  });
});
