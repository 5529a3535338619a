import { describe, expect, it } from 'vitest';
import { exampleProfile } from '../../tests/support/example-profile.js';
import { measuringSettings, parsePrintScale, parseWorkingDistance } from './measuring-settings.js';
import { FROM_FILES } from './profile-choice.js';
import { DEFAULT_SHEET_SETTINGS } from '../core/record/typed-sheet.js';

describe('a working distance', () => {
  it('is read with point or comma', () => {
    expect(parseWorkingDistance(' 350,5 ')).toEqual({ ok: true, value: 350.5 });
  });

  it.each(['', '40 cm', '4e2', '-400'])('is not read from %j', (text) => {
    expect(parseWorkingDistance(text).ok).toBe(false);
  });

  it('is refused in centimetres or metres', () => {
    expect(parseWorkingDistance('40')).toMatchObject({ failure: { kind: 'beyond-limits' } });
    expect(parseWorkingDistance('4000')).toMatchObject({ failure: { kind: 'beyond-limits' } });
  });
});

describe('measuring settings', () => {
  it('use the measured print scale whichever card was named: markers are on the printed one only', () => {
    const scaled = { ...DEFAULT_SHEET_SETTINGS, checkLengthText: '145.5' };
    // 145.5 of 150 mm
    expect(measuringSettings({ ...scaled, card: 'printed' }, [], FROM_FILES).printScale).toBeCloseTo(0.97, 12);
    expect(measuringSettings({ ...scaled, card: 'bought' }, [], FROM_FILES).printScale).toBeCloseTo(0.97, 12);
  });

  it('fall back where a length cannot be used', () => {
    const settings = measuringSettings(
      {
        ...DEFAULT_SHEET_SETTINGS,
        card: 'printed',
        checkLengthText: '15',
        workingDistanceText: 'arm',
      },
      [],
      FROM_FILES,
    );
    expect(settings).toMatchObject({ printScale: 1, workingDistanceMm: 400 });
  });

  it('tell an unmeasured print from one that cannot be used', () => {
    expect(parsePrintScale('  ')).toBeNull();
    expect(parsePrintScale('long')).toEqual({ ok: false, failure: { kind: 'not-a-number' } });
  });

  it('hand on the profile that was chosen for files, and none where it is on the shelf no more', () => {
    const shelf = [exampleProfile({ id: 'a' })];
    const choose = (profileId: string | null) =>
      measuringSettings({ ...DEFAULT_SHEET_SETTINGS, profileId }, shelf, FROM_FILES);
    expect(choose('a').profile).toBe(shelf[0]?.profile);
    expect(choose('b').profile).toBeNull();
    expect(choose(null).profile).toBeNull();
  });

  it('hand on the profile of the camera that took the picture, whatever was chosen for files', () => {
    const shelf = [exampleProfile({ id: 'a', cameraLabel: null }), exampleProfile({ id: 'b', cameraLabel: 'Cam B' })];
    const taken = (label: string) =>
      measuringSettings({ ...DEFAULT_SHEET_SETTINGS, profileId: 'a' }, shelf, {
        kind: 'camera',
        camera: { label, widthPx: 1280, heightPx: 720 },
      }).profile;
    expect(taken('Cam B')).toBe(shelf[1]?.profile);
    expect(taken('Cam C')).toBeNull();
  });
});
