import { describe, expect, it } from 'vitest';
import { EXAMPLE_GAUGES } from '../../../calibration/tables.js';
import version2Sheet from '../../../tests/fixtures/sessions/version-2.sheet.json' with { type: 'json' };
import { filledSheet } from '../../../tests/support/filled-sheet.js';
import { parseTypedSheet } from './kept-sheet.js';
import { NO_PRESCRIPTION } from './typed-prescription.js';
import type { TypedSheet } from './typed-sheet.js';

const AT = '2026-11-25T10:00:00.000Z';

// Written as version 2 wrote it.
const written = JSON.stringify(version2Sheet);

/** The same without corrections, on which the rest can be read off plainly. */
const plain = filledSheet(
  { pdFar: '63,5', headWidth: 'about 150', apicalRadius: '10 loose 9 fits', monoPdR: '31' },
  {
    second: { pdFar: '64' },
    settings: { gaze: 'far', cameraId: 'desk', profileId: 'p1' },
    practice: {
      hidden: ['irisDiameter'],
      tolerances: { headWidth: 3 },
      gauges: [
        {
          id: 'head-calipers',
          name: 'Head calipers',
          serves: ['headWidth', 'templeWidth'],
          resolution: 0.5,
          zeroOffset: -2,
          bias: 0.3,
          checkedOn: '2026-05-04',
        },
        {
          id: 'rule',
          name: 'Long rule',
          serves: ['overallSideLength'],
          resolution: 1,
          zeroOffset: 0,
          bias: 0,
          checkedOn: null,
        },
      ],
      gaugeInUse: { headWidth: 'head-calipers' },
      groupOrder: ['frame', 'eyes', 'head', 'nose', 'sides'],
      standard: 'iso-21987',
    },
  },
);
const sheet: TypedSheet = {
  ...plain,
  readers: {
    ...plain.readers,
    first: {
      ...plain.readers.first,
      // Each correction tells what had stood there before it: the first one of a place, also what was entered first.
      history: [
        { name: 'pdFar', text: '36.5', by: '', at: null },
        { name: 'pdFar', text: '63', by: 'A', at: '2026-11-25T09:58:00.000Z' },
        { name: 'monoPdR', text: '33', by: '', at: null },
        { name: 'monoPdR', text: '31', by: 'A', at: '2026-11-25T09:58:30.000Z' },
        { name: 'pdFar', text: '63,5', by: 'B', at: '2026-11-25T09:59:00.000Z' },
      ],
    },
  },
  reader: 'second',
  notes: { wearer: '17', squint: true, light: 'dim', remark: 'right eye turns in' },
  prescription: {
    ...NO_PRESCRIPTION,
    R: {
      ...NO_PRESCRIPTION.R,
      sphere: '-4,25',
      cylinder: '-0,75',
      axis: '12',
      prismVertical: '1',
      baseVertical: 'down',
    },
    vertexDistance: '13',
    lensKind: 'progressive',
  },
  confirmations: { pdFar: { text: '63,5 | 64', by: 'A', at: AT } },
};

describe('a sheet of version 2', () => {
  it('comes back as it was typed, with both readers, the practice, and a history in place of its corrections', () => {
    expect(parseTypedSheet(written)).toEqual(sheet);
  });

  it('comes back with the longest text in every field, and as many gauges as a practice had', () => {
    const longest = 'x'.repeat(200);
    const long = structuredClone(version2Sheet);
    Object.assign(long.confirmations, { pdFar: { text: `${longest} | ${longest}`, by: longest, at: AT } });
    Object.assign(long.settings.practice, { gauges: EXAMPLE_GAUGES, gaugeInUse: {} });
    const read = parseTypedSheet(JSON.stringify(long));
    expect(read?.confirmations.pdFar?.text).toBe(`${longest} | ${longest}`);
    expect(read?.settings.practice.gauges).toEqual(EXAMPLE_GAUGES);
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
    const groupOrder = ['frame', 'head', 'nose', 'sides', 'eyes'];
    expect(parseTypedSheet(JSON.stringify(strange))).toEqual({
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
