import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { exampleMeasurement, examplePicture, FOUND } from '../../tests/support/example-sweep.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import type { Gauge } from '../core/reading/gauge.js';
import { withGauge, withGaugeInUse } from '../core/record/practice.js';
import { correctionsOf, isContinuedBy, lastEntered } from '../core/record/reading-history.js';
import { READER_IDS } from '../core/record/reader-sheet.js';
import { succeed } from '../core/result.js';
import { standingConfirmation } from './entries.js';
import { handlePoint, MIDLINE_HANDLE } from './handles.js';
import type { Picture } from './ports.js';
import type { SheetEvent, SheetState } from './sheet.js';
import { openSheet, picturesOf, typedSheet } from './sheet.js';
import type { SheetInTime, SheetTimeEvent } from './undo.js';
import { beginTime, heldPictures, MOST_PIXELS, MOST_STEPS, nextAct, timeReducer } from './undo.js';

const AT = '2026-11-25T10:00:00.000Z';
const LATER = '2026-11-25T11:00:00.000Z';
const UNDO: SheetTimeEvent = { kind: 'undone', at: LATER };
const REDO: SheetTimeEvent = { kind: 'redone', at: LATER };
const LEFT: SheetTimeEvent = { kind: 'place-left' };

const features = exampleFeatures();

function after(events: readonly SheetTimeEvent[], from: SheetInTime = beginTime(openSheet(null))): SheetInTime {
  return events.reduce(timeReducer, from);
}

function typed(field: (typeof READING_NAMES)[number], ...texts: readonly string[]): readonly SheetTimeEvent[] {
  return [
    ...texts.map((text): SheetEvent => ({ kind: 'reading-typed', field, text })),
    { kind: 'reading-entered', field, at: AT },
    LEFT,
  ];
}

function measured(picture: Picture): readonly SheetEvent[] {
  return [
    { kind: 'picture-awaited', at: AT },
    { kind: 'picture-opened', picture },
    { kind: 'features-found', features },
  ];
}

function moveMidline(byPx: number, gesture: number): SheetEvent {
  const { xPx, yPx } = features.midline.point;
  return { kind: 'handle-moved', handle: MIDLINE_HANDLE, to: { xPx: xPx + byPx, yPx }, gesture };
}

function midlineShift({ picture }: SheetState): number {
  if (picture.kind !== 'measured') throw new Error(`no marking in ${picture.kind}`);
  return handlePoint(picture.marking.features, MIDLINE_HANDLE).xPx - features.midline.point.xPx;
}

function pictureOf(name: string, megapixels = 1): Picture {
  return { ...examplePicture(name), widthPx: megapixels * 1000, heightPx: 1000 };
}

function readingsOf({ now }: SheetInTime) {
  return now.readers[now.reader].readings;
}

describe('typing', () => {
  it('is one step until the field is left, and the history only grows', () => {
    const time = after([...typed('pdFar', '6', '63', '63.5'), ...typed('pdFar', '36.5')]);
    expect(time.past).toHaveLength(2);
    expect(nextAct(time, 'past')).toEqual({ kind: 'reading', name: 'pdFar', text: '36.5' });
    const once = after([UNDO], time);
    expect(readingsOf(once).pdFar).toBe('63.5');
    expect(once.now.readers.first.entered.pdFar).toBe('63.5');
    expect(once.now.readers.first.history.map(({ text, at }) => [text, at])).toEqual([
      ['63.5', AT],
      ['36.5', AT],
      ['63.5', LATER],
    ]);
    // what was undone stays on the sheet, struck through like any correction
    expect(correctionsOf(once.now.readers.first.history).map(({ earlier }) => earlier)).toEqual(['63.5', '36.5']);
    expect(readingsOf(after([UNDO], once)).pdFar).toBe('');
    expect(readingsOf(after([UNDO, REDO, REDO], once)).pdFar).toBe('36.5');
  });

  it('is undone before the field is left, too, and leaves no entry then', () => {
    const time = after([...typed('pdFar', '63'), { kind: 'reading-typed', field: 'pdFar', text: '63x' }, UNDO]);
    expect(readingsOf(time).pdFar).toBe('63');
    expect(time.now.readers.first.history).toHaveLength(1);
    expect(after([{ kind: 'reading-entered', field: 'pdFar', at: LATER }], time)).toBe(time);
  });

  it('goes on in one step while the field keeps the focus, although something came by itself', () => {
    const time = after([
      ...measured(pictureOf('a')).slice(0, 2),
      { kind: 'notes-changed', change: { wearer: 'M' } },
      { kind: 'features-found', features },
      { kind: 'notes-changed', change: { wearer: 'Mo' } },
    ]);
    expect(time.past.map(({ act }) => act.kind)).toEqual(['picture', 'note']);
    const undone = after([UNDO], time);
    expect(undone.now.notes.wearer).toBe('');
    // what was found meanwhile stays
    expect(undone.now.picture.kind).toBe('measured');
  });

  it('is no step where it ends as it began', () => {
    const time = after([
      { kind: 'notes-changed', change: { remark: 'x' } },
      { kind: 'notes-changed', change: { remark: '' } },
    ]);
    expect(time.past).toEqual([]);
  });

  it('in another field or another place is another step', () => {
    const time = after([
      { kind: 'prescription-changed', change: { R: { sphere: '-4' } } },
      { kind: 'prescription-changed', change: { R: { sphere: '-4.25' } } },
      { kind: 'prescription-changed', change: { L: { sphere: '-4' } } },
      { kind: 'prescription-changed', change: { vertexDistance: '12' } },
    ]);
    expect(time.past.map(({ act }) => act)).toEqual([
      { kind: 'prescription', side: 'R', field: 'sphere' },
      { kind: 'prescription', side: 'L', field: 'sphere' },
      { kind: 'prescription', side: null, field: 'vertexDistance' },
    ]);
  });

  it('on one reader’s sheet is undone there, whichever is open by then', () => {
    const time = after([...typed('pdFar', '63'), { kind: 'reader-chosen', reader: 'second' }, LEFT, UNDO, UNDO]);
    expect(time.now.reader).toBe('first');
    expect(readingsOf(time).pdFar).toBe('');
  });
});

describe('something new', () => {
  it('forgets what was undone; what comes by itself does not', () => {
    const undone = after([...typed('pdFar', '63'), ...typed('pdNear', '60'), UNDO]);
    expect(after([{ kind: 'settings-changed', change: { covered: false } }], undone).future).toHaveLength(1);
    const anew = after(typed('pdNear', '61'), undone);
    expect(anew.future).toEqual([]);
    expect(after([REDO], anew)).toBe(anew);
  });

  it('is nothing of the desk', () => {
    const time = after([
      { kind: 'settings-changed', change: { covered: false, cameraId: 'a', workingDistanceText: '350' } },
      { kind: 'practice-changed', change: { hidden: ['binocularPd'] } },
    ]);
    expect(time.past).toEqual([]);
    expect(after([UNDO], time)).toBe(time);
  });
});

describe('handles', () => {
  it('of one gesture are undone together, and redone', () => {
    const edited = after([
      ...measured(pictureOf('a')),
      ...[1, 2, 3].map((px) => moveMidline(px, 1)),
      moveMidline(9, 2),
    ]);
    const once = after([UNDO], edited);
    expect(midlineShift(once.now)).toBeCloseTo(3, 9);
    expect(midlineShift(after([UNDO], once).now)).toBe(0);
    expect(midlineShift(after([UNDO, REDO, REDO], once).now)).toBeCloseTo(9, 9);
  });

  it('start anew with the same gesture after an undo', () => {
    const time = after([...measured(pictureOf('a')), moveMidline(5, 1), UNDO, moveMidline(2, 1), UNDO]);
    expect(midlineShift(time.now)).toBe(0);
  });

  it('come back after a reset', () => {
    const time = after([...measured(pictureOf('a')), moveMidline(5, 1), { kind: 'reset-to-found' }, UNDO]);
    expect(midlineShift(time.now)).toBeCloseTo(5, 9);
  });
});

describe('a picture', () => {
  const [a, b] = [pictureOf('a'), pictureOf('b')];

  it('comes back with its marks where it was replaced or put away', () => {
    const time = after([...measured(a), moveMidline(5, 1), ...measured(b), { kind: 'picture-put-away' }]);
    expect(heldPictures(time)).toEqual(new Set([a, b]));
    const once = after([UNDO], time);
    expect(picturesOf(once.now)).toEqual(new Set([b]));
    const twice = after([UNDO], once);
    expect(picturesOf(twice.now)).toEqual(new Set([a]));
    expect(midlineShift(twice.now)).toBeCloseTo(5, 9);
    expect(twice.now.takenAt).toBe(AT);
  });

  it('that is still looked at gives way to the one before, and is not had again', () => {
    const working = measured(b).slice(0, 2);
    const time = after([...measured(a), ...working, UNDO]);
    expect(picturesOf(time.now)).toEqual(new Set([a]));
    expect(time.future).toEqual([]);
    expect(heldPictures(time)).toEqual(new Set([a]));
    // and where a third takes its place, or it is stopped, the one before is what comes back
    const third = after([...measured(a), ...working, ...measured(pictureOf('c')), UNDO]);
    expect(picturesOf(third.now)).toEqual(new Set([a]));
    const stopped = after([...measured(a), ...working, { kind: 'picture-put-away' }]);
    expect(stopped.now.picture.kind).toBe('none');
    expect(picturesOf(after([UNDO], stopped).now)).toEqual(new Set([a]));
  });

  it('comes back from under a sweep that failed', () => {
    const time = after([
      ...measured(a),
      moveMidline(5, 1),
      { kind: 'sweep-begun', origin: 'video', expected: null },
      { kind: 'sweep-failed', failure: { kind: 'video-broken' } },
      UNDO,
    ]);
    expect(time.now.sweep).toBeNull();
    expect(midlineShift(time.now)).toBe(0);
  });

  it('falls off with its step where many were brought', () => {
    const most = Math.floor(MOST_PIXELS / 8e6);
    const pictures = Array.from({ length: most + 5 }, (_, index) => pictureOf(`picture ${index}`, 8));
    const time = after(pictures.flatMap(measured));
    // the one that is shown, and as many as steps may hold
    expect(heldPictures(time)).toEqual(new Set(pictures.slice(-most - 1)));
  });
});

describe('a sweep', () => {
  it('gives way to the picture before it, and a frame that was left out comes back', () => {
    const before = after(measured(pictureOf('a')));
    const collected = after(SWEEP, before);
    const time = after([outcomeOf(collected)], collected);
    expect(nextAct(time, 'past')).toEqual({ kind: 'sweep' });
    const without = after([{ kind: 'frame-left-out', id: 2, isLeftOut: true }], time);
    const measuredAnew = after([outcomeOf(without)], without);
    const undone = after([UNDO], measuredAnew);
    expect(undone.now.picture).toMatchObject({ kind: 'swept' });
    expect(framesLeftOut(undone)).toEqual([]);
    expect(framesLeftOut(after([REDO], undone))).toEqual([2]);
    expect(picturesOf(after([UNDO], undone).now)).toEqual(picturesOf(before.now));
  });
});

describe('a confirmation', () => {
  it('does not come back for a number that another gauge makes another value of', () => {
    const gauge: Gauge = { ...GAUGE, zeroOffset: 0 };
    const begun = openSheet(filledSheet({ pdFar: '63' }));
    const practice = withGaugeInUse(withGauge(begun.settings.practice, gauge), 'binocularPd', gauge.id);
    const time = after(
      [
        { kind: 'practice-changed', change: practice },
        { kind: 'readings-confirmed', names: ['pdFar'], at: AT },
        { kind: 'confirmation-withdrawn', names: ['pdFar'] },
      ],
      beginTime(begun),
    );
    expect(standing(after([UNDO], time))).toBe(true);
    const changed = withGauge(practice, { ...gauge, zeroOffset: 2 });
    expect(standing(after([{ kind: 'practice-changed', change: changed }, UNDO], time))).toBe(false);
  });

  it('goes with a gauge that is chosen, and comes back with the one before', () => {
    const begun = openSheet(filledSheet({ pdFar: '63' }));
    const practice = withGauge(begun.settings.practice, GAUGE);
    const time = after(
      [
        { kind: 'practice-changed', change: practice },
        { kind: 'readings-confirmed', names: ['pdFar'], at: AT },
        { kind: 'practice-changed', change: { gaugeInUse: { binocularPd: GAUGE.id } } },
      ],
      beginTime(begun),
    );
    expect(nextAct(time, 'past')).toEqual({ kind: 'gauge', measurement: 'binocularPd' });
    expect(standing(time)).toBe(false);
    expect(standing(after([UNDO], time))).toBe(true);
  });
});

it('keeps no more steps than are wanted', () => {
  const texts = Array.from({ length: MOST_STEPS + 20 }, (_, index) => String(index));
  const time = after(texts.flatMap((text) => typed('pdFar', text)));
  expect(time.past).toHaveLength(MOST_STEPS);
  expect(readingsOf(after(Array<SheetTimeEvent>(MOST_STEPS + 50).fill(UNDO), time)).pdFar).toBe('19');
});

describe('any sequence of events', () => {
  it('is undone to the first state and redone to the last, and what is stored follows', () => {
    fc.assert(
      fc.property(fc.array(blocks, { maxLength: 30 }), (events) => {
        const first = beginTime(openSheet(filledSheet({ pdFar: '63', apertureR: '10' })));
        const last = after(events.flat(), first);
        const undone = after(Array<SheetTimeEvent>(last.past.length).fill(UNDO), last);
        expect(shown(undone.now)).toEqual(shown(first.now));
        // what had been undone before is not part of the last state
        const redone = after(Array<SheetTimeEvent>(last.past.length).fill(REDO), undone);
        expect(shown(redone.now)).toEqual(shown(last.now));
        for (const reader of READER_IDS) {
          const [one, two, three] = [last, undone, redone].map(({ now }) => typedSheet(now).readers[reader].history);
          if (one === undefined || two === undefined || three === undefined) throw new Error('three histories');
          expect(isContinuedBy(one, two) && isContinuedBy(two, three)).toBe(true);
          const { entered } = undone.now.readers[reader];
          for (const name of READING_NAMES) {
            if (two.some((entry) => entry.name === name)) expect(lastEntered(two, name)).toBe(entered[name]);
          }
        }
      }),
      { numRuns: 300, seed: 20261125 },
    );
  });
});

const GAUGE: Gauge = {
  id: 'long',
  name: 'Long rule',
  serves: ['binocularPd'],
  resolution: 0.5,
  zeroOffset: 2,
  bias: 0,
  checkedOn: null,
};

function standing({ now }: SheetInTime): boolean {
  return standingConfirmation(now, 'pdFar') !== null;
}

function framesLeftOut({ now }: SheetInTime): readonly number[] {
  if (now.picture.kind !== 'swept') throw new Error(`no sweep but ${now.picture.kind}`);
  return now.picture.frames.filter(({ isLeftOut }) => isLeftOut).map(({ id }) => id);
}

const IDS = [0, 1, 2, 3, 4, 5];
const SWEEP: readonly SheetEvent[] = [
  { kind: 'sweep-begun', origin: 'pictures', expected: 6, at: AT },
  ...IDS.map((id): SheetEvent => ({ kind: 'frame-taken', id })),
  ...IDS.map((id): SheetEvent => ({
    kind: 'frame-settled',
    id,
    outcome: FOUND,
    thumbnail: examplePicture(`frame ${id}`),
    kept: null,
  })),
  { kind: 'frames-complete' },
];

/** What the adjustment says of the frames that stand there now. */
function outcomeOf({ now }: SheetInTime): SheetEvent {
  const frames = now.sweep?.frames ?? (now.picture.kind === 'swept' ? now.picture.frames : []);
  return {
    kind: 'sweep-measured',
    outcome: {
      basis: { frames, settings: DEFAULT_MEASURING_SETTINGS },
      result: succeed(exampleMeasurement(IDS.map(() => 'used'))),
    },
  };
}

/** All that is undone, without the histories, which only grow. */
function shown(state: SheetState) {
  const { readers, reader, notes, prescription, confirmations, settings, picture, takenAt, alone } = state;
  const sheets = READER_IDS.map((id) => {
    const { readings, entered, reader: name } = readers[id];
    return { readings, entered, name };
  });
  return { sheets, reader, notes, prescription, confirmations, settings, picture, takenAt, alone };
}

/** Events as they come: each block is what one hand does, and what follows of it by itself. */
const field = fc.constantFrom('pdFar' as const, 'apertureR' as const, 'headWidth' as const);
const text = fc.constantFrom('', '6', '63', '63.5', '36', 'loose 3');
const at = fc.constant(AT);
const one = fc.oneof<fc.Arbitrary<SheetTimeEvent>[]>(
  fc.constant(LEFT),
  fc.constant(UNDO),
  fc.constant(REDO),
  fc.record({ kind: fc.constant('reading-typed' as const), field, text }),
  fc.record({ kind: fc.constant('reading-entered' as const), field, at }),
  fc.record({ kind: fc.constant('reader-chosen' as const), reader: fc.constantFrom(...READER_IDS) }),
  fc.record({ kind: fc.constant('reader-named' as const), reader: fc.constantFrom(...READER_IDS), name: text }),
  fc.record({ kind: fc.constant('readings-confirmed' as const), names: fc.array(field), at }),
  fc.record({ kind: fc.constant('confirmation-withdrawn' as const), names: fc.array(field) }),
  fc.record({ kind: fc.constant('notes-changed' as const), change: fc.record({ remark: text }) }),
  fc.record({ kind: fc.constant('notes-changed' as const), change: fc.record({ squint: fc.boolean() }) }),
  fc.record({
    kind: fc.constant('prescription-changed' as const),
    change: fc.record({ R: fc.record({ sphere: text }) }),
  }),
  fc.record({
    kind: fc.constant('settings-changed' as const),
    change: fc.record({ gaze: fc.constantFrom('camera' as const, 'far' as const) }),
  }),
  fc.record({ kind: fc.constant('estimates-shown-alone' as const), shown: fc.boolean() }),
  fc.tuple(field, text).map(([name, restored]): SheetEvent => ({
    kind: 'restoration-taken',
    restorations: [{ name, written: 36, restored: Number.parseFloat(restored) || 61 }],
    at: AT,
  })),
  fc.constant<SheetEvent>({ kind: 'picture-put-away' }),
  fc.tuple(fc.nat({ max: 20 }), fc.nat({ max: 3 })).map(([px, gesture]) => moveMidline(px, gesture)),
  fc.constant<SheetEvent>({ kind: 'reset-to-found' }),
);
const blocks = fc.oneof(
  { weight: 12, arbitrary: one.map((event) => [event]) },
  { weight: 1, arbitrary: fc.constantFrom('a', 'b').map((name) => measured(pictureOf(name))) },
  // half of the way, and an answer that comes too late
  { weight: 1, arbitrary: fc.constantFrom('c', 'd').map((name) => [...measured(pictureOf(name)).slice(0, 2), UNDO]) },
);
