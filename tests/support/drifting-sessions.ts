import type { Estimate } from '../../src/core/estimate/estimate.js';
import type { Gauge } from '../../src/core/reading/gauge.js';
import { DEFAULT_PRACTICE } from '../../src/core/record/practice.js';
import { EMPTY_READER_SHEET, NO_READINGS } from '../../src/core/record/reader-sheet.js';
import type { SessionRecord } from '../../src/core/record/session-record.js';
import { DEFAULT_SHEET_SETTINGS, EMPTY_TYPED_SHEET } from '../../src/core/record/typed-sheet.js';
import { NO_NOTES } from '../../src/core/record/wearer-notes.js';
import { exampleSession } from './memory-session-store.js';
import { sampleCamera, sampleEstimate } from './sample-sessions.js';
import { seededRandom } from './seeded-random.js';

const gauge = (id: string, name: string): Gauge => ({
  id,
  name,
  serves: ['binocularPd', 'monocularPd'],
  resolution: 0.1,
  zeroOffset: 0,
  bias: 0,
  checkedOn: null,
});

/** Rules of an invented practice: what each reads too much, mm. */
export const GAUGES = [
  { gauge: gauge('steel-rule', 'Steel rule'), biasMm: 0 },
  { gauge: gauge('long-rule', 'Long rule'), biasMm: 0.6 },
] as const;

/** Readers of an invented practice: by how much more each reads with every 30 days, mm. */
export const READERS = [
  { name: 'Q. D.', driftMm: 0, share: 0.5 },
  { name: 'Mara', driftMm: 0.08, share: 0.35 },
  { name: 'T. Lark', driftMm: 0, share: 0.15 },
] as const;

/** What the camera of that practice is off by, for everybody: mm. */
export const CAMERA_OFF_MM = -0.2;

/** Standard deviations of one reading and of one picture, mm. */
const HAND_MM = 0.3;
const CAMERA_MM = 0.5;

const DAY_MS = 86_400_000;

/**
 * Visits to an invented practice over so many days: a PD and the PD of each eye, read by hand and by the camera with known bias,
 * drift and scatter; every fortieth has a digit wrong.
 */
export function driftingSessions(count: number, days = 300): readonly SessionRecord[] {
  const random = seededRandom(5);
  return Array.from({ length: count }, (_, place) => {
    const day = (days * place) / Math.max(1, count - 1);
    const begun = Date.UTC(2026, 0, 5, 9) + Math.round(day * DAY_MS);
    const chosen = random.uniform();
    const reader = READERS.find(
      (_one, at) => chosen < READERS.slice(0, at + 1).reduce((sum, { share }) => sum + share, 0),
    );
    const { name, driftMm } = reader ?? READERS[0];
    const rule = GAUGES[random.uniform() < 0.6 ? 0 : 1];
    const bias = rule.biasMm + (driftMm * day) / 30;
    const right = random.normal(31.5, 1.4);
    const left = random.normal(31.5, 1.4);
    const scale = CAMERA_OFF_MM + random.normal(0, CAMERA_MM);
    const hand = (truth: number, share: number): string =>
      (truth + share * bias + random.normal(0, share * HAND_MM)).toFixed(1);
    const camera = (truth: number, share: number): Estimate => sampleEstimate(truth + share * scale, share * CAMERA_MM);
    const slip = place % 40 === 39 ? 10 : 0;
    const at = new Date(begun).toISOString();
    const base = sampleCamera(random, at);
    return exampleSession(`00000000-0000-4000-9000-${String(place).padStart(12, '0')}`, {
      // as the sheet would count them: all confirmed, unless a digit is wrong
      findings: {
        written: 3,
        confirmed: slip === 0 ? 3 : 0,
        agrees: slip === 0 ? 3 : 2,
        disagrees: slip === 0 ? 0 : 1,
        cannotTell: 0,
        misfits: slip === 0 ? 0 : 1,
      },
      begunAt: at,
      changedAt: new Date(begun + 1_200_000).toISOString(),
      sheet: {
        ...EMPTY_TYPED_SHEET,
        readers: {
          ...EMPTY_TYPED_SHEET.readers,
          first: {
            ...EMPTY_READER_SHEET,
            reader: name,
            readings: {
              ...NO_READINGS,
              pdFar: hand(right + left + slip, 1),
              monoPdR: hand(right, 0.5),
              monoPdL: hand(left, 0.5),
            },
          },
        },
        notes: { ...NO_NOTES, wearer: `Wearer ${place + 1}` },
        settings: {
          ...DEFAULT_SHEET_SETTINGS,
          practice: {
            ...DEFAULT_PRACTICE,
            gauges: GAUGES.map((one) => one.gauge),
            gaugeInUse: { binocularPd: rule.gauge.id, monocularPd: rule.gauge.id },
          },
        },
      },
      camera: {
        ...base,
        estimates: {
          ...base.estimates,
          pdFar: camera(right + left, 1),
          monoPdR: camera(right, 0.5),
          monoPdL: camera(left, 0.5),
        },
      },
    });
  });
}
