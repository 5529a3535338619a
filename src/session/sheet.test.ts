import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { seededRandom } from '../../tests/support/seeded-random.js';
import { sampleCamera } from '../../tests/support/sample-sessions.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { handlePoint, MIDLINE_HANDLE } from './handles.js';
import type { Picture } from './ports.js';
import type { PictureState } from './picture-state.js';
import { measuredKind, pictureOf } from './picture-state.js';
import type { SheetEvent, SheetState } from './sheet.js';
import { openReader, openSheet, typedSheet, sheetReducer } from './sheet.js';
import { NO_PRESCRIPTION } from '../core/record/typed-prescription.js';
import { NO_NOTES } from '../core/record/wearer-notes.js';

const features = exampleFeatures();
// The reducer only hands the bitmap on; Node has none.
const picture: Picture = { bitmap: {} as ImageBitmap, widthPx: 1280, heightPx: 720, name: 'face.jpg' };

function after(events: readonly SheetEvent[], from: SheetState = openSheet(null)): SheetState {
  return events.reduce(sheetReducer, from);
}

const MEASURED: readonly SheetEvent[] = [
  { kind: 'picture-awaited' },
  { kind: 'picture-opened', picture },
  { kind: 'features-found', features },
];

function moveMidline(byPx: number, gesture: number): SheetEvent {
  const { xPx, yPx } = features.midline.point;
  return { kind: 'handle-moved', handle: MIDLINE_HANDLE, to: { xPx: xPx + byPx, yPx }, gesture };
}

function midlineShift(state: PictureState): number {
  if (state.kind !== 'measured' && state.kind !== 'placing') throw new Error(`no marking in ${state.kind}`);
  return handlePoint(state.marking.features, MIDLINE_HANDLE).xPx - features.midline.point.xPx;
}

const AT = '2026-11-25T10:00:00.000Z';

describe('notes and prescription', () => {
  it('change field by field', () => {
    const state = after([
      { kind: 'notes-changed', change: { light: 'dim' } },
      { kind: 'notes-changed', change: { squint: true } },
      { kind: 'prescription-changed', change: { R: { sphere: '-4', axis: '10' } } },
      { kind: 'prescription-changed', change: { R: { sphere: '-4.25' }, vertexDistance: '12' } },
    ]);
    expect(state.notes).toEqual({ ...NO_NOTES, light: 'dim', squint: true });
    expect(state.prescription).toEqual({
      ...NO_PRESCRIPTION,
      R: { ...NO_PRESCRIPTION.R, sphere: '-4.25', axis: '10' },
      vertexDistance: '12',
    });
  });

  it('are cut off where no hand would have typed on', () => {
    const long = 'a'.repeat(500);
    const state = after([
      { kind: 'notes-changed', change: { remark: long } },
      { kind: 'prescription-changed', change: { L: { add: long } } },
      { kind: 'reader-named', reader: 'first', name: long },
    ]);
    expect(state.notes.remark).toHaveLength(200);
    expect(state.prescription.L.add).toHaveLength(200);
    expect(openReader(state).reader).toHaveLength(200);
  });
});

describe('a picture', () => {
  it('goes from awaited over opened to measured', () => {
    expect(after(MEASURED.slice(0, 1)).picture).toEqual({ kind: 'working', picture: null, progress: null });
    expect(pictureOf(after(MEASURED.slice(0, 2)).picture)).toBe(picture);
    expect(after(MEASURED).picture).toMatchObject({ kind: 'measured', picture, marking: { features } });
  });

  it('leaves an answer alone that comes after it was put away', () => {
    const away = after([...MEASURED.slice(0, 2), { kind: 'picture-put-away' }]);
    expect(after([{ kind: 'features-found', features }], away)).toBe(away);
    const failure = { failure: { kind: 'no-face' }, partial: null } as const;
    expect(after([{ kind: 'finding-failed', failure }], away)).toBe(away);
    const progress = { stage: 'finding-face', share: null } as const;
    expect(after([{ kind: 'progress-made', progress }], away)).toBe(away);
  });

  it('covers the estimates again when the next one comes', () => {
    const shown = after([...MEASURED, { kind: 'estimates-shown-alone', shown: true }]);
    expect(shown.alone).toBe(true);
    expect(after([moveMidline(1, 1)], shown).alone).toBe(true);
    expect(after([{ kind: 'picture-awaited' }], shown).alone).toBe(false);
  });

  it('lets the corners be placed where the face was found, and estimates nothing before they are vouched for', () => {
    const failed = after([
      ...MEASURED.slice(0, 2),
      { kind: 'finding-failed', failure: { failure: { kind: 'no-card' }, partial: features } },
    ]);
    expect(failed.picture).toMatchObject({ kind: 'failed', failure: { kind: 'no-card' } });
    const placing = after([{ kind: 'placing-started' }], failed);
    expect(placing.picture.kind).toBe('placing');
    const vouched = after([{ kind: 'corners-vouched' }], placing);
    expect(vouched.picture).toMatchObject({ kind: 'measured', marking: { features: { card: { source: 'hand' } } } });
  });

  it('has no corners to place where no face was found', () => {
    const failed = after([
      ...MEASURED.slice(0, 2),
      { kind: 'finding-failed', failure: { failure: { kind: 'no-face' }, partial: null } },
    ]);
    expect(after([{ kind: 'placing-started' }], failed)).toBe(failed);
  });
});

describe('edits', () => {
  it('can all be reset to what was found', () => {
    const reset = after([...MEASURED, moveMidline(5, 1), moveMidline(9, 2), { kind: 'reset-to-found' }]);
    expect(reset.picture).toMatchObject({ marking: { features } });
    expect(midlineShift(reset.picture)).toBe(0);
  });
});

describe('a sheet that is opened again', () => {
  it('is what was typed, with every text entered and its history', () => {
    const sheet = filledSheet({ pdFar: '61' }, { practice: { standard: 'iso-21987' } });
    const opened = openSheet(sheet);
    expect(typedSheet(opened)).toEqual(sheet);
    expect(openReader(opened).entered.pdFar).toBe('61');
  });

  it('has what the camera said before, without its picture, until the next one is measured', () => {
    const camera = sampleCamera(seededRandom(1), AT);
    const opened = openSheet(null, camera);
    expect(opened.picture).toEqual({ kind: 'recorded', camera });
    expect(pictureOf(opened.picture)).toBeNull();
    expect(measuredKind(opened.picture)).toBe(camera.kind);
    expect(after(MEASURED, opened).picture.kind).toBe('measured');
    expect(after([{ kind: 'picture-put-away' }], opened).picture.kind).toBe('none');
  });
});
