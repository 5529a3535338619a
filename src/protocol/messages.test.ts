import { describe, expect, it } from 'vitest';
import type { PictureFeatures } from '../core/camera/features.js';
import { parseFromCardWorker, parseToCardWorker } from './card-messages.js';
import { parseFromLandmarksWorker, parseToLandmarksWorker } from './landmarks-messages.js';
import { NO_ID, readableId } from './message.js';

const COVARIANCE = { xx: 0.1, xy: 0, yy: 0.1 };
const POINT = { xPx: 10, yPx: 20 };
const MEASURED = { ...POINT, covariance: COVARIANCE };
const IRIS = { centre: MEASURED, radiusPx: 9, radiusUncertaintyPx: 0.1, support: 0.8, source: 'edges' as const };
const LIDS = { upper: POINT, lower: POINT, uncertaintyPx: 0.5, source: 'edges' as const };

const FEATURES: PictureFeatures = {
  widthPx: 640,
  heightPx: 480,
  landmarks: [{ ...POINT, depthPx: -3 }],
  card: {
    source: 'markers',
    corners: [MEASURED, MEASURED, MEASURED, MEASURED],
    edgeSupport: [1, 1, 0.5, 1],
    position: 'upper-lip',
  },
  iris: { R: IRIS, L: IRIS },
  lids: { R: LIDS, L: LIDS },
  midline: { point: POINT, betweenPupils: null, uncertaintyPx: 1, source: 'landmarks' },
  outline: {
    head: { R: POINT, L: POINT },
    temple: { R: POINT, L: POINT },
    uncertaintyPx: 2,
    skinEdge: { R: POINT, L: POINT, uncertaintyPx: 1 },
  },
  pupil: {
    R: { centre: { ...POINT, covariance: { xx: 1, xy: 0, yy: 1 } }, radiusPx: 5, radiusUncertaintyPx: 0.2 },
    L: null,
  },
  bridge: [{ belowCrestMm: 10, R: POINT, L: POINT, uncertaintyPx: 2 }],
};

const BITMAP = { width: 4, height: 3, close: () => undefined };
const HEAD = { v: 1, id: 7 };

describe('messages to the workers', () => {
  it('are read with all their parts', () => {
    const byAddress = {
      ...HEAD,
      kind: 'load-landmarks',
      runtimeAddress: 'http://localhost/vision/',
      bundle: { kind: 'address', address: 'http://localhost/models/face-landmarks.task' },
    };
    const byBytes = { ...byAddress, bundle: { kind: 'bytes', bytes: new ArrayBuffer(3) } };
    expect(parseToLandmarksWorker(byAddress)).toEqual(byAddress);
    expect(parseToLandmarksWorker(byBytes)).toEqual(byBytes);
    expect(parseToLandmarksWorker({ ...HEAD, kind: 'find-landmarks', bitmap: BITMAP })).toMatchObject({
      bitmap: BITMAP,
    });
    expect(parseToLandmarksWorker({ ...HEAD, kind: 'cancel' })).toEqual({ ...HEAD, kind: 'cancel' });
    expect(parseToCardWorker({ ...HEAD, kind: 'load-card' })).toEqual({ ...HEAD, kind: 'load-card' });
    const find = { ...HEAD, kind: 'find-features', bitmap: BITMAP, landmarks: FEATURES.landmarks };
    expect(parseToCardWorker(find)).toEqual(find);
    expect(parseToCardWorker({ ...HEAD, kind: 'cancel' })).toEqual({ ...HEAD, kind: 'cancel' });
  });

  it.each([
    ['no object', null],
    ['an unknown kind', { ...HEAD, kind: 'dance' }],
    ['another version', { v: 2, id: 7, kind: 'cancel' }],
    ['no id', { v: 1, kind: 'cancel' }],
    ['an id that is no whole number', { v: 1, id: 0.5, kind: 'cancel' }],
    ['no picture', { ...HEAD, kind: 'find-landmarks' }],
    ['a bundle of a third kind', { ...HEAD, kind: 'load-landmarks', runtimeAddress: '', bundle: { kind: 'gift' } }],
    ['no address of the runtime', { ...HEAD, kind: 'load-landmarks', bundle: { kind: 'address', address: '' } }],
  ])('are refused with %s', (_, message) => {
    expect(parseToLandmarksWorker(message)).toBeNull();
  });

  it.each([
    ['landmarks that are no list', { ...HEAD, kind: 'find-features', bitmap: BITMAP, landmarks: {} }],
    ['a landmark without depth', { ...HEAD, kind: 'find-features', bitmap: BITMAP, landmarks: [POINT] }],
    ['an unknown kind', { ...HEAD, kind: 'find-landmarks', bitmap: BITMAP }],
  ])('of the card are refused with %s', (_, message) => {
    expect(parseToCardWorker(message)).toBeNull();
  });
});

describe('messages from the workers', () => {
  it('are read with all their parts', () => {
    const found = { ...HEAD, kind: 'landmarks-found', faceCount: 1, landmarks: FEATURES.landmarks, workMs: 12.5 };
    expect(parseFromLandmarksWorker(found)).toEqual(found);
    const loaded = { ...HEAD, kind: 'landmarks-loaded', loadMs: 600 };
    expect(parseFromLandmarksWorker(loaded)).toEqual(loaded);
    const features = { ...HEAD, kind: 'features-found', features: FEATURES, workMs: 90 };
    expect(parseFromCardWorker(features)).toEqual(features);
    const missing = { ...HEAD, kind: 'features-missing', failure: { kind: 'no-card' }, partial: FEATURES, workMs: 90 };
    expect(parseFromCardWorker(missing)).toEqual(missing);
    expect(parseFromCardWorker({ ...missing, partial: null })).toEqual({ ...missing, partial: null });
  });

  it.each([
    [{ kind: 'progress', share: 0.25 }],
    [{ kind: 'cancelled' }],
    [{ kind: 'fault', code: 'failed', detail: 'out of memory' }],
  ])('of both workers: %j', (body) => {
    expect(parseFromLandmarksWorker({ ...HEAD, ...body })).toEqual({ ...HEAD, ...body });
    expect(parseFromCardWorker({ ...HEAD, ...body })).toEqual({ ...HEAD, ...body });
  });

  it.each([
    ['a share over 1', { ...HEAD, kind: 'progress', share: 1.5 }],
    ['a fault of an unknown code', { ...HEAD, kind: 'fault', code: 'bored', detail: '' }],
    ['an unknown kind', { ...HEAD, kind: 'dance' }],
    ['another version', { v: 0, id: 7, kind: 'cancelled' }],
  ])('are refused with %s', (_, message) => {
    expect(parseFromLandmarksWorker(message)).toBeNull();
    expect(parseFromCardWorker(message)).toBeNull();
  });

  it.each([
    [{ kind: 'no-face' }],
    [{ kind: 'several-faces', count: 2 }],
    [{ kind: 'no-card' }],
    [{ kind: 'several-cards' }],
    [{ kind: 'card-not-flat', residualPx: 2 }],
    [{ kind: 'card-tilted', tiltDeg: 20, limitDeg: 15 }],
    [{ kind: 'head-turned', turnDeg: 20, limitDeg: 15 }],
    [{ kind: 'eyes-closed', side: 'both' }],
    [{ kind: 'iris-not-found', side: 'L' }],
    [{ kind: 'blurred', edgeWidthPx: 6, limitPx: 4 }],
    [{ kind: 'too-dark', meanLevel: 12, limitLevel: 40 }],
    [{ kind: 'implausible', irisMm: 14.2 }],
    [{ kind: 'too-far', pixelsPerMm: 0.9, limitPixelsPerMm: 1.2 }],
  ])('carry every failure with its facts: %j', (failure) => {
    const message = { ...HEAD, kind: 'features-missing', failure, partial: null, workMs: 1 };
    expect(parseFromCardWorker(message)).toEqual(message);
    for (const fact of Object.keys(failure).filter((name) => name !== 'kind')) {
      const without = { ...message, failure: { ...failure, [fact]: undefined } };
      expect(parseFromCardWorker(without), `without ${fact}`).toBeNull();
    }
  });

  it('are refused where any part of the features is missing or senseless', () => {
    const parsed = (features: object) => parseFromCardWorker({ ...HEAD, kind: 'features-found', features, workMs: 1 });
    for (const part of Object.keys(FEATURES)) expect(parsed({ ...FEATURES, [part]: undefined }), part).toBeNull();
    expect(parsed({ ...FEATURES, widthPx: Number.NaN })).toBeNull();
    expect(parsed({ ...FEATURES, iris: { R: IRIS } })).toBeNull();
    expect(parsed({ ...FEATURES, card: { ...FEATURES.card, source: 'guess' } })).toBeNull();
    expect(parsed({ ...FEATURES, card: { ...FEATURES.card, corners: [MEASURED, MEASURED, MEASURED] } })).toBeNull();
    expect(parsed({ ...FEATURES, card: { ...FEATURES.card, corners: [POINT, POINT, POINT, POINT] } })).toBeNull();
  });
});

describe('readableId', () => {
  it('reads the id of what cannot be read otherwise', () => {
    expect(readableId({ id: 12, kind: 'dance' })).toBe(12);
    expect(readableId('dance')).toBe(NO_ID);
    expect(readableId({ id: 'twelve' })).toBe(NO_ID);
  });
});
