import { describe, expect, it } from 'vitest';
import { EXAMPLE_GAUGES } from '../../../calibration/tables.js';
import { filledSheet } from '../../../tests/support/filled-sheet.js';
import { parseTypedSheet, writeTypedSheet } from './kept-sheet.js';
import { NO_READINGS } from './reader-sheet.js';
import { NO_PRESCRIPTION } from './typed-prescription.js';
import type { TypedSheet } from './typed-sheet.js';

const AT = '2026-11-25T10:00:00.000Z';

const filled = filledSheet(
  { pdFar: '63,5', headWidth: 'about 150', apicalRadius: '10 loose 9 fits' },
  {
    second: { pdFar: '64' },
    settings: { gaze: 'far', cameraId: 'desk', profileId: 'p1' },
    practice: {
      hidden: ['irisDiameter'],
      tolerances: { headWidth: 3 },
      gauges: EXAMPLE_GAUGES,
      gaugeInUse: { headWidth: 'head-calipers' },
      groupOrder: ['frame', 'eyes', 'head', 'nose', 'sides'],
      standard: 'iso-21987',
    },
  },
);
const sheet: TypedSheet = {
  ...filled,
  readers: {
    ...filled.readers,
    first: { ...filled.readers.first, corrections: [{ name: 'pdFar', earlier: '36.5', by: 'A', at: AT }] },
  },
  reader: 'second',
  notes: { wearer: '17', squint: true, light: 'dim', remark: 'right eye turns in' },
  prescription: { ...NO_PRESCRIPTION, R: { ...NO_PRESCRIPTION.R, sphere: '-4,25', baseVertical: 'down' } },
  confirmations: { pdFar: { text: '63,5 | 64', by: 'A', at: AT } },
};
const written = writeTypedSheet(sheet);

describe('a kept sheet', () => {
  it('comes back as it was typed, with both readers and the practice', () => {
    expect(parseTypedSheet(written)).toEqual(sheet);
  });

  it('comes back with the longest text in every field', () => {
    const longest = 'x'.repeat(200);
    const long = { ...sheet, confirmations: { pdFar: { text: `${longest} | ${longest}`, by: longest, at: AT } } };
    expect(parseTypedSheet(writeTypedSheet(long))).toEqual(long);
  });

  it('loses what the catalogue does not know, and nothing else', () => {
    const strange = JSON.parse(written) as Record<string, Record<string, Record<string, object>>>;
    Object.assign(strange.readers!.first!.readings!, { hatSize: '58' });
    (strange.readers!.first!.corrections as object[]).push({ name: 'hatSize', earlier: '57', by: '', at: AT });
    Object.assign(strange.confirmations!, { hatSize: { text: '58', by: '', at: AT } });
    const practice = strange.settings!.practice!;
    (practice.hidden as string[]).push('hatSize', 'irisDiameter');
    Object.assign(practice.tolerances!, { hatSize: 1 });
    Object.assign(practice.gaugeInUse!, { hatSize: 'tape', templeWidth: 'lost', binocularPd: 'head-calipers' });
    (practice.gauges as { serves: string[] }[])[0]!.serves.push('hatSize');
    (practice.groupOrder as string[]).splice(1, 1, 'feet');
    const read = parseTypedSheet(JSON.stringify(strange));
    const groupOrder = ['frame', 'head', 'nose', 'sides', 'eyes'];
    expect(read).toEqual({
      ...sheet,
      settings: { ...sheet.settings, practice: { ...sheet.settings.practice, groupOrder } },
    });
  });

  it('has empty fields where a place was not known yet', () => {
    const older = JSON.parse(written) as { readers: { first: { readings: Record<string, string> } } };
    delete older.readers.first.readings.apicalRadius;
    expect(parseTypedSheet(JSON.stringify(older))?.readers.first.readings).toEqual({
      ...sheet.readers.first.readings,
      apicalRadius: '',
    });
  });

  it.each([
    ['no JSON', '{'],
    ['another thing', '[]'],
    ['a later version', written.replace('"version":2', '"version":3')],
    ['a number where text belongs', written.replace('"63,5"', '63.5')],
    ['a missing part', written.replace('"notes"', '"remarks"')],
    ['an unknown choice', written.replace('"far"', '"down"')],
    ['text that nobody typed', written.replace('63,5', '6'.repeat(201))],
    ['no time where one belongs', written.replace(AT, 'at noon')],
    ['a gauge without a step', written.replace('"resolution":0.5', '"resolution":0')],
    ['a tolerance below nothing', written.replace('"headWidth":3', '"headWidth":-3')],
  ])('is refused where it holds %s', (_what, kept) => {
    expect(kept).not.toBe(written);
    expect(parseTypedSheet(kept)).toBeNull();
  });
});

// As version 1 was written while there were seven fields and one reader.
const VERSION_1 = `{"version":1,"readings":{"pdFar":"63,5","monoPdR":"32","monoPdL":"","apertureR":"10","apertureL":"","headWidth":"about 150",
"templeWidth":""},"settings":{"gaze":"far","workingDistanceText":"350","covered":false,"card":"printed","checkLengthText":"149.5","cameraId":"desk",
"profileId":"p1"}}`;

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
  const unnamed: TypedSheet = {
    ...expected,
    readers: {
      first: { ...expected.readers.first, reader: '' },
      second: { reader: '', readings: NO_READINGS, corrections: [] },
    },
  };

  it('becomes the first reader’s sheet', () => {
    expect(parseTypedSheet(VERSION_1)).toEqual(unnamed);
  });

  it('from before there were camera profiles has none', () => {
    const older = VERSION_1.replace(',\n"profileId":"p1"', '');
    expect(older).not.toContain('profile');
    expect(parseTypedSheet(older)).toEqual({ ...unnamed, settings: { ...unnamed.settings, profileId: null } });
  });

  it('is refused where it is damaged', () => {
    expect(parseTypedSheet(VERSION_1.replace('"templeWidth"', '"hatSize"'))).toBeNull();
    expect(parseTypedSheet(VERSION_1.replace('63,5', '6'.repeat(65)))).toBeNull();
  });
});
