import { describe, expect, it } from 'vitest';
import { filledSheet } from '../../../tests/support/filled-sheet.js';
import version1Session from '../../../tests/fixtures/sessions/version-1.session.json' with { type: 'json' };
import version1Sheet from '../../../tests/fixtures/sessions/version-1.sheet.json' with { type: 'json' };
import { parseTypedSheet, sessionOfSheet } from './kept-sheet.js';
import { EMPTY_TYPED_SHEET } from './typed-sheet.js';

const NEW = { id: version1Session.id, at: '2027-01-02T08:00:00.000Z' };
const VERSION_1 = JSON.stringify(version1Sheet);

describe('a sheet of version 1', () => {
  const expected = filledSheet(
    { pdFar: '63,5', monoPdR: '32', apertureR: '10', headWidth: 'about 150' },
    {
      settings: {
        gaze: 'far',
        workingDistanceText: '350',
        covered: false,
        card: 'printed',
        checkLengthText: '149.5',
        cameraId: 'desk',
        profileId: 'p1',
      },
    },
  );
  const unnamed = {
    ...expected,
    readers: {
      first: { ...expected.readers.first, reader: '' },
      second: EMPTY_TYPED_SHEET.readers.second,
    },
  };

  it('becomes the first reader’s sheet', () => {
    expect(parseTypedSheet(VERSION_1)).toEqual(unnamed);
  });

  it('from before there were camera profiles has none', () => {
    const older = VERSION_1.replace(',"profileId":"p1"', '');
    expect(older).not.toContain('profile');
    expect(parseTypedSheet(older)).toEqual({ ...unnamed, settings: { ...unnamed.settings, profileId: null } });
  });

  it('is refused where it is damaged', () => {
    expect(parseTypedSheet(VERSION_1.replace('"templeWidth"', '"hatSize"'))).toBeNull();
    expect(parseTypedSheet(VERSION_1.replace('63,5', '6'.repeat(65)))).toBeNull();
  });

  it('is the sheet of a session that began when it was found', () => {
    const { camera, findings, origin, begunAt, changedAt } = sessionOfSheet(unnamed, NEW);
    expect([camera, origin, begunAt, changedAt]).toEqual([null, { kind: 'desk' }, NEW.at, NEW.at]);
    expect(Object.values(findings)).toEqual([0, 0, 0, 0, 0, 0]);
  });
});
