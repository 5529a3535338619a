import { describe, expect, it } from 'vitest';
import { EXAMPLE_CAMERA_PROFILE } from '../../tests/support/example-profile.js';
import { MOST_VIEWS } from '../core/camera/profile-quality.js';
import { parseFromCardWorker, parseToCardWorker } from './card-messages.js';

const HEAD = { v: 1, id: 7 };
const BITMAP = { width: 4, height: 3, close: () => undefined };
const CORNER = { index: 0, xPx: 10, yPx: 20 };
const VIEW = { widthPx: 640, heightPx: 480, corners: [CORNER, { index: 23, xPx: 640, yPx: 0 }] };
/** What no view may be, in a request as in a reply. */
const BROKEN_VIEWS: readonly (readonly [string, object])[] = [
  ['a corner that the sheet does not have', { ...VIEW, corners: [{ ...CORNER, index: 24 }] }],
  ['a corner between two', { ...VIEW, corners: [{ ...CORNER, index: 0.5 }] }],
  ['a corner twice', { ...VIEW, corners: [CORNER, CORNER] }],
  ['a corner outside of the picture', { ...VIEW, corners: [{ ...CORNER, xPx: 640.5 }] }],
  ['a corner nowhere', { ...VIEW, corners: [{ ...CORNER, yPx: Number.NaN }] }],
  ['no corners', { widthPx: 640, heightPx: 480 }],
  ['no size', { ...VIEW, widthPx: 0 }],
  ['half a pixel', { ...VIEW, heightPx: 480.5 }],
  ['an absurd size', { ...VIEW, widthPx: 1e9 }],
];

describe('messages about the sheet to the card worker', () => {
  it('are read with all their parts', () => {
    const find = { ...HEAD, kind: 'find-board', bitmap: BITMAP };
    expect(parseToCardWorker(find)).toEqual(find);
    const make = { ...HEAD, kind: 'make-profile', views: [VIEW, VIEW] };
    expect(parseToCardWorker(make)).toEqual(make);
  });

  it.each(BROKEN_VIEWS)('are refused with %s', (_, view) => {
    expect(parseToCardWorker({ ...HEAD, kind: 'make-profile', views: [VIEW, view] })).toBeNull();
  });

  it('are refused without a picture, without views, and with too many of them', () => {
    expect(parseToCardWorker({ ...HEAD, kind: 'find-board' })).toBeNull();
    expect(parseToCardWorker({ ...HEAD, kind: 'make-profile' })).toBeNull();
    const many = (count: number) => ({ ...HEAD, kind: 'make-profile', views: new Array<object>(count).fill(VIEW) });
    expect(parseToCardWorker(many(MOST_VIEWS))).not.toBeNull();
    expect(parseToCardWorker(many(MOST_VIEWS + 1))).toBeNull();
  });
});

describe('messages about the sheet from the card worker', () => {
  it('are read with all their parts', () => {
    const found = { ...HEAD, kind: 'board-found', view: VIEW, workMs: 90 };
    expect(parseFromCardWorker(found)).toEqual(found);
    const made = { ...HEAD, kind: 'profile-made', profile: EXAMPLE_CAMERA_PROFILE, workMs: 900 };
    expect(parseFromCardWorker(made)).toEqual(made);
    for (const message of [found, made]) expect(parseFromCardWorker({ ...message, workMs: undefined })).toBeNull();
  });

  it.each(BROKEN_VIEWS)('are refused with %s', (_, view) => {
    expect(parseFromCardWorker({ ...HEAD, kind: 'board-found', view, workMs: 1 })).toBeNull();
  });

  it('are refused where any part of a profile is missing', () => {
    for (const part of Object.keys(EXAMPLE_CAMERA_PROFILE)) {
      const profile = { ...EXAMPLE_CAMERA_PROFILE, [part]: undefined };
      expect(parseFromCardWorker({ ...HEAD, kind: 'profile-made', profile, workMs: 1 }), part).toBeNull();
    }
  });

  it.each([
    [{ kind: 'no-board', cornersFound: 3, cornersNeeded: 6 }],
    [{ kind: 'too-few-views', views: 4, viewsNeeded: 6 }],
    [{ kind: 'views-of-different-size' }],
    [{ kind: 'views-too-alike' }],
    [{ kind: 'profile-misfit', rmsPx: 3, limitPx: 1.6 }],
  ])('carry every failure with its facts: %j', (failure) => {
    for (const kind of ['board-missing', 'profile-refused']) {
      const message = { ...HEAD, kind, failure, workMs: 1 };
      expect(parseFromCardWorker(message)).toEqual(message);
      for (const fact of Object.keys(failure)) {
        const without = { ...message, failure: { ...failure, [fact]: undefined } };
        expect(parseFromCardWorker(without), `without ${fact}`).toBeNull();
      }
    }
  });
});
