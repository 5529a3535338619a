import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { handlePoint, MIDLINE_HANDLE } from './handles.js';
import type { Picture } from './ports.js';
import type { PictureState } from './picture-state.js';
import { pictureOf } from './picture-state.js';
import { EMPTY_READER_SHEET, NO_READINGS } from '../core/record/reader-sheet.js';
import type { SheetEvent, SheetState } from './sheet.js';
import { openReader, openSheet, ownSheet, sheetReducer } from './sheet.js';
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

describe('clearing', () => {
  const full = after(
    [
      { kind: 'reading-typed', field: 'headWidth', text: '150' },
      { kind: 'reading-entered', field: 'headWidth', at: AT },
      { kind: 'readings-confirmed', names: ['pdFar'], at: AT },
      { kind: 'notes-changed', change: { squint: true, wearer: '17' } },
      { kind: 'prescription-changed', change: { R: { sphere: '-4' }, lensKind: 'progressive' } },
      { kind: 'practice-changed', change: { hidden: ['irisDiameter'] } },
      { kind: 'settings-changed', change: { gaze: 'far', workingDistanceText: '350' } },
      { kind: 'reader-chosen', reader: 'second' },
      ...MEASURED,
    ],
    openSheet(filledSheet({ pdFar: '63', headWidth: '149' }, { second: { pdFar: '64' } })),
  );
  const cleared = after([{ kind: 'sheet-cleared' }], full);

  it('takes all that belongs to the wearer, and leaves what belongs to the desk', () => {
    expect(ownSheet(cleared)).toEqual({
      readers: {
        first: { ...EMPTY_READER_SHEET, reader: 'A' },
        second: { ...EMPTY_READER_SHEET, reader: 'B' },
      },
      reader: 'first',
      notes: NO_NOTES,
      prescription: NO_PRESCRIPTION,
      confirmations: {},
      // the next wearer is asked to look into the camera again
      settings: { ...full.settings, gaze: 'camera' },
    });
    expect(cleared.settings.workingDistanceText).toBe('350');
    expect(cleared.settings.practice.hidden).toEqual(['irisDiameter']);
    expect(cleared.picture.kind).toBe('none');
  });

  it('can be undone, under the names that the readers have by then', () => {
    const back = after(
      [
        { kind: 'reader-named', reader: 'second', name: 'C' },
        { kind: 'reader-chosen', reader: 'second' },
        { kind: 'clearing-undone' },
      ],
      cleared,
    );
    expect(back.readers).toEqual({ first: full.readers.first, second: { ...full.readers.second, reader: 'C' } });
    expect(back.readers.first.history).toHaveLength(2);
    expect(back.notes).toEqual(full.notes);
    expect(back.prescription).toEqual(full.prescription);
    expect(back.confirmations).toEqual(full.confirmations);
    expect(back.cleared).toBeNull();
  });

  const TYPED_SINCE: readonly SheetEvent[] = [
    { kind: 'reading-typed', field: 'pdFar', text: '6' },
    { kind: 'notes-changed', change: { remark: 'in a hurry' } },
    { kind: 'prescription-changed', change: { L: { sphere: '1' } } },
  ];

  it.each(TYPED_SINCE)(
    'can still be undone once something else is there, which then changes places with it: $kind',
    (event) => {
      const on = after([event], cleared);
      expect(on.cleared).toEqual(cleared.cleared);
      const back = after([{ kind: 'clearing-undone' }], on);
      expect(back.readers).toEqual(full.readers);
      expect(back.notes).toEqual(full.notes);
      expect(back.cleared?.why).toBe('exchanged');
      const forth = after([{ kind: 'clearing-undone' }], back);
      expect(ownSheet(forth)).toEqual({ ...ownSheet(on), reader: forth.reader });
      expect(forth.cleared).toMatchObject({ part: { notes: full.notes } });
    },
  );

  it('can be undone after an empty sheet was cleared once more, but not after it was dismissed', () => {
    expect(after([{ kind: 'sheet-cleared' }], cleared).cleared).toEqual(cleared.cleared);
    const dismissed = after([{ kind: 'clearing-dismissed' }], cleared);
    expect(dismissed.cleared).toBeNull();
    expect(after([{ kind: 'clearing-undone' }], dismissed)).toBe(dismissed);
    expect(after([{ kind: 'clearing-dismissed' }], dismissed)).toBe(dismissed);
  });

  it('gives way to the next clearing of something', () => {
    const next = after([...TYPED_SINCE, { kind: 'sheet-cleared' }], cleared);
    expect(next.cleared).toMatchObject({ why: 'cleared', part: { notes: { remark: 'in a hurry' } } });
  });

  it('brings no confirmation back that another gauge has made another number of', () => {
    const gauge = {
      id: 'x',
      name: 'X',
      serves: ['binocularPd'],
      resolution: 1,
      zeroOffset: 2,
      bias: 0,
      checkedOn: null,
    } as const;
    const change = { gauges: [gauge], gaugeInUse: { binocularPd: 'x' } } as const;
    const back = after([{ kind: 'practice-changed', change }, { kind: 'clearing-undone' }], cleared);
    expect(full.confirmations.pdFar).toBeDefined();
    expect(back.confirmations.pdFar).toBeUndefined();
  });

  it('of an empty sheet is nothing to undo', () => {
    expect(after([{ kind: 'sheet-cleared' }]).cleared).toBeNull();
  });
});

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
  const sheet = filledSheet({ pdFar: '61' }, { practice: { standard: 'iso-21987' } });

  it('puts the whole own sheet aside and gives it back, however often it is loaded', () => {
    const own = after(
      [
        { kind: 'settings-changed', change: { covered: false } },
        { kind: 'practice-changed', change: { hidden: ['irisDiameter'] } },
        { kind: 'prescription-changed', change: { R: { sphere: '-1' } } },
        { kind: 'readings-confirmed', names: ['pdFar'], at: AT },
      ],
      openSheet(filledSheet({ pdFar: '58' }, { second: { pdFar: '58.5' } })),
    );
    const shown = after(
      [
        { kind: 'demo-loaded', sheet },
        { kind: 'demo-loaded', sheet },
      ],
      own,
    );
    expect(openReader(shown).entered.pdFar).toBe('61');
    expect(shown.settings.practice.standard).toBe('iso-21987');
    expect(ownSheet(shown)).toEqual(ownSheet(own));
    const back = after([{ kind: 'demo-left' }], shown);
    expect(back).toEqual(own);
  });

  it('is not what is kept, even while it is edited or cleared', () => {
    const edited = after([
      { kind: 'demo-loaded', sheet },
      { kind: 'reading-typed', field: 'headWidth', text: '1' },
      { kind: 'sheet-cleared' },
    ]);
    expect(ownSheet(edited).readers.first.readings).toEqual(NO_READINGS);
    expect(edited.putAside).not.toBeNull();
  });
});
