import { describe, expect, it } from 'vitest';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { EMPTY_READER_SHEET } from '../core/record/reader-sheet.js';
import { asOpenedAt, deskAfter, isBlank, NEW_DESK, newSession } from './new-session.js';

const AT = '2026-11-25T10:00:00.000Z';

const full = filledSheet(
  { pdFar: '63', headWidth: '149' },
  {
    second: { pdFar: '64' },
    settings: { gaze: 'far', workingDistanceText: '350', cameraId: 'left' },
    practice: { hidden: ['irisDiameter'] },
  },
);

describe('the next session', () => {
  const next = newSession('b', AT, deskAfter(full, 'a'));

  it('has nothing of the wearer before, and all that belongs to the desk', () => {
    expect(next.sheet.readers).toEqual({
      first: { ...EMPTY_READER_SHEET, reader: 'A' },
      second: { ...EMPTY_READER_SHEET, reader: 'B' },
    });
    // the next wearer is asked to look into the camera again
    expect(next.sheet.settings).toEqual({ ...full.settings, gaze: 'camera' });
    expect(next).toMatchObject({ id: 'b', begunAt: AT, changedAt: AT, origin: { kind: 'desk' }, camera: null });
  });

  it('is blank until anything is written', () => {
    expect(isBlank(next)).toBe(true);
    expect(isBlank({ sheet: full, camera: null })).toBe(false);
    const { notes, prescription, readers } = next.sheet;
    expect(isBlank({ ...next, sheet: { ...next.sheet, notes: { ...notes, squint: true } } })).toBe(false);
    const eye = { ...prescription, R: { ...prescription.R, sphere: '1' } };
    expect(isBlank({ ...next, sheet: { ...next.sheet, prescription: eye } })).toBe(false);
    const cleared = { ...readers.first, history: [{ name: 'pdFar', text: '', by: '', at: AT }] as const };
    expect(isBlank({ ...next, sheet: { ...next.sheet, readers: { ...readers, first: cleared } } })).toBe(false);
  });
});

describe('a session that is opened at another desk', () => {
  it('keeps what its numbers depend on, and takes the desk’s cameras', () => {
    const desk = { ...NEW_DESK, settings: { ...NEW_DESK.settings, cameraId: 'right', covered: false } };
    const opened = asOpenedAt(desk, { ...newSession('a', AT, NEW_DESK), sheet: full });
    expect(opened.sheet.settings).toEqual({ ...full.settings, cameraId: 'right', covered: false });
  });
});
