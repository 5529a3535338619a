import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../calibration/tables.js';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { exampleProfile } from '../../tests/support/example-profile.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { bracketedEnglish, strangeTexts } from '../../tests/support/pseudo-language.js';
import { reconciledSheet } from '../../tests/support/reconciled-sheet.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import { NO_PRESCRIPTION } from '../core/record/typed-prescription.js';
import type { TypedSheet } from '../core/record/typed-sheet.js';
import { DEFAULT_SHEET_SETTINGS } from '../core/record/typed-sheet.js';
import { sheetMisfits } from '../session/misfits.js';
import { openSheet } from '../session/sheet.js';
import { AVAILABLE_LANGUAGES, firstAvailable, loadWords } from './available-languages.js';
import { CameraDialog } from './camera-dialog.js';
import { CostPanel } from './cost-panel.js';
import type { Equipment } from './equipment.js';
import { EquipmentContext } from './equipment.js';
import { Page } from './help-pages.js';
import { GENERAL_TOPICS } from './help-topics.js';
import { completeEnglish, dateText, ENGLISH_TAG, speak, words, type Words } from './language.js';
import { MisfitList } from './misfit-list.js';
import { NotesPanel } from './notes-panel.js';
import { OrderDialog } from './order-dialog.js';
import { PaperFacts } from './paper-facts.js';
import { PicturePanel } from './picture-panel.js';
import { PracticeDialog } from './practice-dialog.js';
import { PrescriptionPanel } from './prescription-panel.js';
import { PrintDialog } from './print-dialog.js';
import { ProfileDialog } from './profile-dialog.js';
import { ReadingsSheet } from './readings-sheet.js';
import { RowDetails } from './row-details.js';
import { SettingsDialog } from './settings-dialog.js';
import { Speaking } from './speaking.js';
import { SweepDialog } from './sweep-dialog.js';
import { Profiles } from './use-profiles.js';
import type { SheetInHand } from './use-sheet.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

/** A wearer with slips, repeats, trials, numbers that are none, a second reader and strong lenses. */
const TYPED: TypedSheet = {
  ...filledSheet(
    {
      pdFar: '61',
      monoPdR: '36 35.5 42',
      monoPdL: '35',
      pdNear: '66,5 mm',
      apertureR: '10',
      apertureL: '-1',
      headWidth: '154',
      templeWidth: '170',
      apicalRadius: '9 loose 8 fits 7 tight',
      crestHeightR: '5',
      crestHeightL: '12',
      boxLensWidth: '52',
      boxLensHeight: '34',
      distanceBetweenLenses: '18',
      fittingHeightR: '20',
      fittingHeightL: '21',
      pupilDiameterR: 'wide',
    },
    {
      second: { pdFar: '71', monoPdR: '36', monoPdL: '35', headWidth: '164' },
      practice: { gauges: EXAMPLE_GAUGES, gaugeInUse: { headWidth: 'head-calipers', crestHeight: 'end-rule' } },
    },
  ),
  notes: { wearer: '', squint: true, light: null, remark: '' },
  prescription: {
    ...NO_PRESCRIPTION,
    R: {
      ...NO_PRESCRIPTION.R,
      sphere: '-6.25',
      cylinder: '-5',
      axis: '90',
      prismHorizontal: '2',
      baseHorizontal: 'in',
    },
    L: { ...NO_PRESCRIPTION.L, sphere: '+0.13' },
  },
};

function sheetInHand(): SheetInHand {
  const state = openSheet(TYPED);
  const { rows, reconciliation } = reconciledSheet(state, catalogue);
  return {
    isInvented: false,
    state,
    dispatch: () => undefined,
    settings: DEFAULT_MEASURING_SETTINGS,
    measurement: null,
    rows,
    reconciliation,
    misfits: sheetMisfits(rows, reconciliation, catalogue),
    measurePicture: () => undefined,
    stopMeasuring: () => undefined,
    sweep: {},
    bringFiles: () => undefined,
  } as unknown as SheetInHand;
}

const nothing = (): void => undefined;
const never = () => new Promise<never>(() => undefined);
const equipment = {
  database: { pictures: { ofSession: () => Promise.resolve({ ok: true, value: [] }) } },
  catalogue,
  exampleGauges: EXAMPLE_GAUGES,
  profiles: { load: () => [exampleProfile()], save: () => true },
  singleKeys: { areOn: () => true, switch: () => true },
  cameras: { devices: never, open: never },
  live: null,
  shutter: { load: () => 'by-itself', save: () => true },
  vision: { warmUp: never },
  print: {},
} as unknown as Equipment;

function rendered(part: ReactNode): string {
  return renderToStaticMarkup(
    <EquipmentContext value={equipment}>
      <Speaking store={{ load: () => null, save: () => true }} screen={() => <Profiles>{part}</Profiles>} />
    </EquipmentContext>,
  );
}

const settings = DEFAULT_SHEET_SETTINGS;
const camera = { gaze: 'camera', cameraId: null, onCameraChosen: nothing, onClose: nothing } as const;
const PARTS: Readonly<Record<string, () => ReactNode>> = {
  readings: () => <ReadingsSheet sheet={sheetInHand()} onShowMisfits={nothing} onDraw={nothing} />,
  misfits: () => <MisfitList sheet={sheetInHand()} />,
  notes: () => <NotesPanel sheet={sheetInHand()} />,
  picture: () => <PicturePanel sheet={sheetInHand()} onAnswer={nothing} onTake={nothing} onSweep={nothing} />,
  prescription: () => <PrescriptionPanel sheet={sheetInHand()} />,
  cost: () => <CostPanel sheet={sheetInHand()} />,
  paper: () => {
    const { state, measurement } = sheetInHand();
    return <PaperFacts state={state} measurement={measurement} />;
  },
  order: () => <OrderDialog sheet={sheetInHand()} onClose={nothing} />,
  details: () => {
    const basis = {
      features: exampleFeatures(),
      settings: DEFAULT_MEASURING_SETTINGS,
      isSweep: false,
      pixelsPerMm: 2,
      distanceMm: 500,
    };
    return sheetInHand().rows.map((row) => <RowDetails key={row.measurement.id} row={row} basis={basis} />);
  },
  settings: () => <SettingsDialog settings={{ ...settings, card: 'printed' }} onChange={nothing} onClose={nothing} />,
  practice: () => <PracticeDialog practice={TYPED.settings.practice} onChange={nothing} onClose={nothing} />,
  print: () => <PrintDialog settings={settings} onChange={nothing} onClose={nothing} />,
  camera: () => (
    <CameraDialog settings={settings} isPdTold onCameraChosen={nothing} onTaken={nothing} onClose={nothing} />
  ),
  sweep: () => <SweepDialog {...camera} run={null} sweep={sheetInHand().sweep} onTaken={nothing} />,
  profile: () => (
    <ProfileDialog settings={settings} onChange={nothing} onCameraChosen={nothing} onKeep={nothing} onClose={nothing} />
  ),
  help: () =>
    [...GENERAL_TOPICS, ...catalogue.map(({ id }) => id)].map((topic) => (
      <Page key={topic} topic={topic} catalogue={catalogue} heading={null} />
    )),
};

/** What the user typed or called something, the day of an order, and the names of languages. */
const NO_WORDS = new Set([
  ...[
    'A',
    'B',
    'wide',
    dateText(new Date(), { dateStyle: 'long' }),
    exampleProfile().name,
    ...EXAMPLE_GAUGES.map(({ name }) => name),
  ],
  ...AVAILABLE_LANGUAGES.map(({ name }) => name),
]);

// The paper of the order stands beside its dialog, and says the same as its preview.
vi.mock(import('react-dom'), async (load) => ({ ...(await load()), createPortal: () => null as never }));

describe('the screen in another language', () => {
  beforeEach(async () => {
    speak(await bracketedEnglish(), ENGLISH_TAG);
    vi.stubGlobal('matchMedia', () => ({ matches: false }));
    vi.stubGlobal('document', { body: {} });
  });
  afterEach(async () => {
    speak(await completeEnglish(), ENGLISH_TAG);
    vi.unstubAllGlobals();
  });

  it.each(Object.entries(PARTS))('has no words but those of the language: %s', (_, part) => {
    const markup = rendered(part());
    expect(markup).toContain('\u27e6');
    const strange = strangeTexts(markup).filter(
      // units may stand alone, and letters such as that of powers
      (text) => !NO_WORDS.has(text) && /\p{L}{2}/u.test(text.replaceAll(/(?<!\p{L})(mm|cm|px)(?!\p{L})/gu, '')),
    );
    expect(strange).toEqual([]);
  });
});

/** Each place of the tree of words with what stands there. */
function leavesOf(value: unknown, path = ''): readonly (readonly [string, unknown])[] {
  if (value === null || typeof value !== 'object') return [[path, value]];
  return Object.entries(value).flatMap(([key, part]) => leavesOf(part, `${path}.${key}`));
}

/** How many facts a function takes. */
function lengthOf(text: unknown): number {
  return (text as (...facts: never[]) => unknown).length;
}

describe('every language', () => {
  const all = AVAILABLE_LANGUAGES.map(({ tag }) => tag);
  const wordsOf = async (tag: string): Promise<Words> => (await loadWords(tag))!;

  it('is there', () => {
    expect(all).toContain(ENGLISH_TAG);
  });

  it.each(all)('%s says all that English says, and nothing empty', async (tag) => {
    const said = new Map(leavesOf(await wordsOf(tag)));
    for (const [path, source] of leavesOf(await completeEnglish())) {
      const text = said.get(path);
      // lists may be of other lengths where a language needs more or fewer words
      if (/\.alsoCalled\.\d+$/.test(path)) continue;
      expect([path, typeof text]).toEqual([path, typeof source]);
      if (typeof source === 'function') expect([path, lengthOf(text)]).toEqual([path, lengthOf(source)]);
      if (typeof source === 'string' && source.trim() !== '')
        expect([path, (text as string).trim()]).not.toEqual([path, '']);
    }
  });
});

describe('the language at the start', () => {
  it('is the first wanted that is there, whatever its country', () => {
    expect(firstAvailable(['tlh', 'en-US'])).toBe(ENGLISH_TAG);
    expect(firstAvailable(['tlh'])).toBe(ENGLISH_TAG);
    expect(firstAvailable([])).toBe(ENGLISH_TAG);
  });

  it('cannot be loaded where there is none of that name', async () => {
    const before = words;
    expect(await loadWords('tlh')).toBeNull();
    expect(words).toBe(before);
  });
});
