import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { handlePoint, MIDLINE_HANDLE } from './handles.js';
import type { Picture } from './ports.js';
import type { PictureState, SheetEvent, SheetState } from './sheet.js';
import { openSheet, ownSheet, pictureOf, sheetReducer } from './sheet.js';
import { DEFAULT_SHEET_SETTINGS, NO_READINGS } from './typed-sheet.js';

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

describe('readings', () => {
  it('are kept as typed, and count once they are entered', () => {
    const typed = after([{ kind: 'reading-typed', field: 'pdFar', text: '63,5 ' }]);
    expect(typed.readings.pdFar).toBe('63,5 ');
    expect(typed.entered.pdFar).toBe('');
    expect(after([{ kind: 'reading-entered', field: 'pdFar' }], typed).entered.pdFar).toBe('63,5 ');
  });

  it('can be brought back after the sheet was cleared, until something is typed', () => {
    const full = after([
      { kind: 'reading-typed', field: 'headWidth', text: '150' },
      { kind: 'settings-changed', change: { gaze: 'far', workingDistanceText: '350' } },
      ...MEASURED,
    ]);
    const cleared = after([{ kind: 'sheet-cleared' }], full);
    expect(cleared.readings).toEqual(NO_READINGS);
    expect(cleared.picture.kind).toBe('none');
    expect(cleared.settings.gaze).toBe('camera');
    expect(cleared.settings.workingDistanceText).toBe('350');
    expect(after([{ kind: 'clearing-undone' }], cleared).entered.headWidth).toBe('150');
    const typedOn = after([{ kind: 'reading-typed', field: 'pdFar', text: '6' }, { kind: 'clearing-undone' }], cleared);
    expect(typedOn.readings).toEqual({ ...NO_READINGS, pdFar: '6' });
  });
});

describe('a picture', () => {
  it('goes from awaited over opened to measured', () => {
    expect(after(MEASURED.slice(0, 1)).picture).toEqual({ kind: 'working', picture: null, progress: null });
    expect(pictureOf(after(MEASURED.slice(0, 2)).picture)).toBe(picture);
    expect(after(MEASURED).picture).toMatchObject({ kind: 'measured', picture, marking: { features, past: [] } });
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
  it('of one gesture are undone together, and redone', () => {
    const edited = after([...MEASURED, moveMidline(1, 1), moveMidline(2, 1), moveMidline(3, 1), moveMidline(9, 2)]);
    expect(midlineShift(edited.picture)).toBeCloseTo(9, 9);
    const once = after([{ kind: 'undone' }], edited);
    expect(midlineShift(once.picture)).toBeCloseTo(3, 9);
    const twice = after([{ kind: 'undone' }], once);
    expect(midlineShift(twice.picture)).toBe(0);
    expect(after([{ kind: 'undone' }], twice)).toBe(twice);
    const again = after([{ kind: 'redone' }, { kind: 'redone' }], twice);
    expect(midlineShift(again.picture)).toBeCloseTo(9, 9);
    expect(after([{ kind: 'redone' }], again)).toBe(again);
  });

  it('forget what was undone once something new is moved', () => {
    const state = after([...MEASURED, moveMidline(5, 1), { kind: 'undone' }, moveMidline(2, 2), { kind: 'redone' }]);
    expect(midlineShift(state.picture)).toBeCloseTo(2, 9);
  });

  it('start anew with the same gesture after an undo', () => {
    const state = after([...MEASURED, moveMidline(5, 1), { kind: 'undone' }, moveMidline(2, 1), { kind: 'undone' }]);
    expect(midlineShift(state.picture)).toBe(0);
  });

  it('can all be reset to what was found, and the reset undone', () => {
    const reset = after([...MEASURED, moveMidline(5, 1), moveMidline(9, 2), { kind: 'reset-to-found' }]);
    expect(reset.picture).toMatchObject({ marking: { features } });
    expect(midlineShift(after([{ kind: 'undone' }], reset).picture)).toBeCloseTo(9, 9);
  });
});

describe('the demo', () => {
  const sheet = { readings: { ...NO_READINGS, pdFar: '61' }, settings: DEFAULT_SHEET_SETTINGS };

  it('puts the own sheet aside and gives it back, however often it is loaded', () => {
    const own = after([
      { kind: 'reading-typed', field: 'pdFar', text: '58' },
      { kind: 'settings-changed', change: { covered: false } },
    ]);
    const shown = after(
      [
        { kind: 'demo-loaded', sheet },
        { kind: 'demo-loaded', sheet },
      ],
      own,
    );
    expect(shown.readings.pdFar).toBe('61');
    expect(shown.entered.pdFar).toBe('61');
    expect(ownSheet(shown)).toEqual({ readings: own.readings, settings: own.settings });
    const back = after([{ kind: 'demo-left' }], shown);
    expect(back.readings.pdFar).toBe('58');
    expect(back.settings.covered).toBe(false);
    expect(back.putAside).toBeNull();
  });

  it('is not what is kept, even while it is edited or cleared', () => {
    const edited = after([
      { kind: 'demo-loaded', sheet },
      { kind: 'reading-typed', field: 'headWidth', text: '1' },
      { kind: 'sheet-cleared' },
    ]);
    expect(ownSheet(edited).readings).toEqual(NO_READINGS);
    expect(edited.putAside).not.toBeNull();
  });
});
