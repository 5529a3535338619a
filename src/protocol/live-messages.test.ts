import { describe, expect, it } from 'vitest';
import { exampleSight } from '../../tests/support/example-sight.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import { parseFromCardWorker, parseToCardWorker } from './card-messages.js';
import { parseFromLiveWorker, parseToLiveWorker } from './live-messages.js';

const HEAD = { v: 1, id: 7 };
const BITMAP = { width: 4, height: 3, close: () => undefined };
const POINT = { xPx: 10, yPx: 20 };
const CORNERS = [POINT, POINT, POINT, POINT];
const EYES = {
  irisCentre: { R: POINT, L: POINT },
  irisRadiusPx: { R: 9, L: 9 },
  middle: POINT,
  spanPx: 100,
  rollRad: 0.1,
};
const SEE = {
  ...HEAD,
  kind: 'see-frame',
  bitmap: BITMAP,
  frameId: 3,
  takenMs: 120.5,
  isSearched: true,
  found: { frameId: 2, corners: CORNERS },
  settings: DEFAULT_MEASURING_SETTINGS,
};
const SEEN = {
  ...HEAD,
  kind: 'frame-seen',
  bitmap: BITMAP,
  sight: exampleSight(),
  eyes: EYES,
  times: { landmarksMs: 12, readingMs: 1, followingMs: 3 },
};

describe('messages to the live worker', () => {
  it('are read with all their parts', () => {
    const load = { ...HEAD, kind: 'load-live', runtimeAddress: 'vision/', bundle: { kind: 'address', address: 'a' } };
    expect(parseToLiveWorker(load)).toEqual(load);
    expect(parseToLiveWorker(SEE)).toEqual(SEE);
    expect(parseToLiveWorker({ ...SEE, found: null })).toMatchObject({ found: null });
    expect(parseToLiveWorker({ ...HEAD, kind: 'cancel' })).toEqual({ ...HEAD, kind: 'cancel' });
  });

  it.each([
    ['no bitmap', { bitmap: {} }],
    ['no number of the frame', { frameId: '3' }],
    ['no time', { takenMs: NaN }],
    ['an outline of three corners', { found: { frameId: 2, corners: CORNERS.slice(1) } }],
    ['settings of another kind', { settings: { gaze: 'down' } }],
    ['another version', { v: 2 }],
    ['an unknown kind', { kind: 'look' }],
  ])('are refused with %s', (_, changes) => {
    expect(parseToLiveWorker({ ...SEE, ...changes })).toBeNull();
  });
});

describe('messages from the live worker', () => {
  it('are read with all their parts', () => {
    expect(parseFromLiveWorker(SEEN)).toEqual(SEEN);
    const nothing = { ...SEEN, eyes: null, sight: { ...exampleSight(), face: null, card: null, estimate: null } };
    expect(parseFromLiveWorker(nothing)).toEqual(nothing);
    expect(parseFromLiveWorker({ ...HEAD, kind: 'live-loaded', loadMs: 4 })).toMatchObject({ loadMs: 4 });
    expect(parseFromLiveWorker({ ...HEAD, kind: 'cancelled' })).toMatchObject({ kind: 'cancelled' });
  });

  it.each([
    ['no sight', { sight: null }],
    ['a face without irises', { sight: { ...exampleSight(), face: {} } }],
    ['a card of three corners', { sight: { ...exampleSight(), card: { corners: CORNERS.slice(1), edgeSupport: [] } } }],
    ['an estimate that is no number', { sight: { ...exampleSight(), estimate: { pdFarMm: NaN } } }],
    ['eyes without a direction', { eyes: { ...EYES, rollRad: undefined } }],
    ['no times', { times: {} }],
  ])('are refused with %s', (_, changes) => {
    expect(parseFromLiveWorker({ ...SEEN, ...changes })).toBeNull();
  });
});

describe('the search of a card', () => {
  it('is asked and answered', () => {
    const ask = { ...HEAD, kind: 'search-card', bitmap: BITMAP, eyes: EYES };
    expect(parseToCardWorker(ask)).toEqual(ask);
    expect(parseToCardWorker({ ...ask, eyes: {} })).toBeNull();
    for (const corners of [CORNERS, null]) {
      const found = { ...HEAD, kind: 'card-searched', corners, workMs: 90 };
      expect(parseFromCardWorker(found)).toEqual(found);
    }
    expect(parseFromCardWorker({ ...HEAD, kind: 'card-searched', corners: [POINT], workMs: 90 })).toBeNull();
  });
});
