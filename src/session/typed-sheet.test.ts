import { describe, expect, it } from 'vitest';
import { DEFAULT_SHEET_SETTINGS, NO_READINGS, parseTypedSheet, writeTypedSheet } from './typed-sheet.js';

const sheet = {
  readings: { ...NO_READINGS, pdFar: '63,5', headWidth: 'about 150' },
  settings: { ...DEFAULT_SHEET_SETTINGS, gaze: 'far', cameraId: 'desk', profileId: 'p1' },
} as const;

describe('a kept sheet', () => {
  it('comes back as it was typed', () => {
    expect(parseTypedSheet(writeTypedSheet(sheet))).toEqual(sheet);
  });

  it('from before there were camera profiles is read, and has none', () => {
    const older = writeTypedSheet(sheet).replace(',"profileId":"p1"', '');
    expect(older).not.toContain('profile');
    expect(parseTypedSheet(older)).toEqual({ ...sheet, settings: { ...sheet.settings, profileId: null } });
  });

  it.each([
    ['no JSON', '{'],
    ['another thing', '[]'],
    ['an older or newer version', writeTypedSheet(sheet).replace('"version":1', '"version":2')],
    ['a number where text belongs', writeTypedSheet(sheet).replace('"63,5"', '63.5')],
    ['a missing field', writeTypedSheet(sheet).replace('"headWidth"', '"hatSize"')],
    ['an unknown choice', writeTypedSheet(sheet).replace('"far"', '"down"')],
    ['text that nobody typed', writeTypedSheet(sheet).replace('63,5', '6'.repeat(65))],
  ])('is refused where it holds %s', (_what, kept) => {
    expect(parseTypedSheet(kept)).toBeNull();
  });
});
