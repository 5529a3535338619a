import { READING_NAMES } from '../../src/core/catalogue/measurement.js';
import type { AlwaysEstimated, BudgetSource, Estimate, EstimateUnit } from '../../src/core/estimate/estimate.js';
import type { ReaderSheet, TypedReadings } from '../../src/core/record/reader-sheet.js';
import type { CameraRecord, SessionRecord } from '../../src/core/record/session-record.js';
import { EMPTY_TYPED_SHEET } from '../../src/core/record/typed-sheet.js';
import type { SeededRandom } from './seeded-random.js';
import { seededRandom } from './seeded-random.js';

const SOURCES: readonly BudgetSource[] = ['card-size', 'card-edges', 'iris-edges', 'contact-depth', 'camera', 'gaze'];

const WEARERS = ['Ada', 'Bertha', 'Çelik', 'Dörte', '=Eve', 'F. "Quote", Jr.', '張', '17', 'Zoë\u0301'];

/** An estimate whose budget adds up. */
export function sampleEstimate(value: number, standardUncertainty: number, unit: EstimateUnit = 'mm'): Estimate {
  const share = standardUncertainty / Math.sqrt(SOURCES.length);
  return {
    value,
    standardUncertainty,
    low: value - 1.96 * standardUncertainty,
    high: value + 1.96 * standardUncertainty,
    unit,
    budget: SOURCES.map((source) => ({ source, standardUncertainty: share })),
  };
}

/** What a camera could have said: about the middle of adults. */
export function sampleCamera(random: SeededRandom, takenAt: string): CameraRecord {
  const mm = (mean: number, uncertainty: number): Estimate => sampleEstimate(random.normal(mean, 3), uncertainty);
  const deg = (uncertainty: number): Estimate => sampleEstimate(random.normal(0, 2), uncertainty, 'deg');
  const estimates: Readonly<Record<AlwaysEstimated, Estimate>> = {
    pdFar: mm(63, 0.5),
    pdShown: mm(62, 0.4),
    pdNear: mm(60, 0.5),
    monoPdR: mm(31.5, 0.6),
    monoPdL: mm(31.5, 0.6),
    monoNearR: mm(30, 0.6),
    monoNearL: mm(30, 0.6),
    apertureR: mm(10, 0.5),
    apertureL: mm(10, 0.5),
    headWidth: mm(152, 3),
    templeWidth: mm(143, 4),
    irisDiameter: mm(11.7, 0.2),
    distance: mm(600, 15),
    headYaw: deg(0.8),
    headPitch: deg(1),
    headRoll: deg(0.1),
  };
  const shared = {
    takenAt,
    supervision: 'reader',
    estimates,
    pixelsPerMm: 5 + random.uniform(),
    lidsByHand: { R: false, L: random.uniform() < 0.5 },
  } as const;
  return random.uniform() < 0.5
    ? { kind: 'picture', ...shared, advice: [{ kind: 'card-on-forehead' }] }
    : { kind: 'sweep', ...shared, advice: [{ kind: 'eyes-elsewhere' }], framesUsed: 17, framesTaken: 20 };
}

/** A session as full as a long visit makes it: every place filled by both readers, each with its history, and a camera. */
export function sampleSession(seed: number, changes: Partial<SessionRecord> = {}): SessionRecord {
  const random = seededRandom(seed);
  const begun = Date.UTC(2026, 0, 1) + Math.floor(random.uniform() * 3e10);
  const at = (minutes: number): string => new Date(begun + minutes * 60_000).toISOString();
  const readerSheet = (reader: string): ReaderSheet => {
    const readings = Object.fromEntries(
      READING_NAMES.map((name) => [name, (random.uniform() * 100).toFixed(1)]),
    ) as TypedReadings;
    const history = READING_NAMES.map((name, place) => ({ name, text: readings[name], by: reader, at: at(place / 4) }));
    return { reader, readings, history };
  };
  return {
    id: `00000000-0000-4000-8000-${seed.toString(16).padStart(12, '0')}`,
    begunAt: at(0),
    changedAt: at(30),
    origin: { kind: 'desk' },
    sheet: {
      ...EMPTY_TYPED_SHEET,
      readers: { first: readerSheet('A'), second: readerSheet('B') },
      notes: {
        wearer: `${WEARERS[Math.floor(random.uniform() * WEARERS.length)] ?? ''} ${seed}`,
        squint: false,
        light: 'room',
        remark: random.uniform() < 0.3 ? 'comes again' : '',
      },
    },
    camera: sampleCamera(random, at(10)),
    findings: { written: 46, confirmed: 3, agrees: 9, disagrees: 2, cannotTell: 1, misfits: 1 },
    ...changes,
  };
}

/** So many different sessions. */
export function sampleSessions(count: number): readonly SessionRecord[] {
  return Array.from({ length: count }, (_, seed) => sampleSession(seed));
}
