import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import { succeed } from '../core/result.js';
import { exampleMeasurement } from '../../tests/support/example-sweep.js';
import type { SheetEvent, SheetState } from './sheet.js';
import { openSheet, sheetReducer } from './sheet.js';

// Which camera profile counts follows from what took the picture or the sweep.

const camera = { label: 'Cam A', widthPx: 1280, heightPx: 720 };
const byCamera = { kind: 'camera', camera } as const;

const after = (events: readonly SheetEvent[], from: SheetState = openSheet(null)): SheetState =>
  events.reduce(sheetReducer, from);

function sweep(origin: 'camera' | 'pictures'): readonly SheetEvent[] {
  const ids = [0, 1, 2, 3, 4, 5];
  return [
    { kind: 'sweep-begun', origin, expected: null },
    ...ids.map((id): SheetEvent => ({ kind: 'frame-taken', id })),
    ...ids.map((id): SheetEvent => ({
      kind: 'frame-settled',
      id,
      outcome: { kind: 'found', features: exampleFeatures() },
      thumbnail: null,
      kept: null,
    })),
  ];
}

function measured(state: SheetState): SheetState {
  const basis = { frames: state.sweep?.frames ?? [], settings: DEFAULT_MEASURING_SETTINGS };
  const result = succeed(exampleMeasurement(['used', 'used', 'used', 'used', 'used', 'used']));
  return sheetReducer(state, { kind: 'sweep-measured', outcome: { basis, result } });
}

describe('a picture', () => {
  it('is from a file unless it is said which camera took it', () => {
    const taken = after([{ kind: 'picture-awaited', takenBy: byCamera }]);
    expect(taken.takenBy).toEqual(byCamera);
    expect(after([{ kind: 'picture-awaited' }], taken).takenBy).toEqual({ kind: 'files' });
  });
});

describe('a sweep', () => {
  it('is of its own camera as soon as it takes the place of what was there, and not before', () => {
    const told: SheetEvent = { kind: 'sweep-camera-told', camera };
    const complete = after([{ kind: 'picture-awaited' }, ...sweep('camera'), told, { kind: 'frames-complete' }]);
    expect(complete.takenBy).toEqual({ kind: 'files' });
    expect(complete.sweep?.takenBy).toEqual(byCamera);
    expect(measured(complete).takenBy).toEqual(byCamera);
  });

  it('by a camera that cannot be told is not taken for one from files', () => {
    expect(measured(after([...sweep('camera'), { kind: 'frames-complete' }])).takenBy).toEqual({
      kind: 'camera',
      camera: null,
    });
  });

  it('from files takes the place of a picture by a camera', () => {
    const before = after([{ kind: 'picture-awaited', takenBy: byCamera }]);
    expect(measured(after([...sweep('pictures'), { kind: 'frames-complete' }], before)).takenBy).toEqual({
      kind: 'files',
    });
  });
});
