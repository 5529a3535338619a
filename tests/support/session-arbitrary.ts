import fc from 'fast-check';
import { READING_NAMES } from '../../src/core/catalogue/measurement.js';
import type { ReaderSheet, TypedReadings } from '../../src/core/record/reader-sheet.js';
import { NO_READINGS } from '../../src/core/record/reader-sheet.js';
import type { SessionRecord } from '../../src/core/record/session-record.js';
import { EMPTY_TYPED_SHEET } from '../../src/core/record/typed-sheet.js';
import { MAX_TEXT_LENGTH } from '../../src/core/record/typed-text.js';
import { sampleCamera } from './sample-sessions.js';
import { seededRandom } from './seeded-random.js';

/** Text as odd as a field can hold: any code units, among them control characters and halves of pairs. */
const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: MAX_TEXT_LENGTH / 2 }),
  fc.constantFrom('', ' ', '=1+1', '\u2028', '\ud83d', '"\\', '\0', '__proto__', '63,5'),
);

const moment = fc
  .date({ min: new Date('2000-01-01T00:00:00Z'), max: new Date('2100-01-01T00:00:00Z'), noInvalidDate: true })
  .map((date) => date.toISOString());

const readings: fc.Arbitrary<TypedReadings> = fc
  .dictionary(fc.constantFrom(...READING_NAMES), text)
  .map((some) => ({ ...NO_READINGS, ...some }));

const readerSheet: fc.Arbitrary<ReaderSheet> = fc.record({
  reader: text,
  readings,
  history: fc.array(
    fc.record({ name: fc.constantFrom(...READING_NAMES), text, by: text, at: fc.option(moment, { nil: null }) }),
    { maxLength: 6 },
  ),
});

/** Sessions with any text in their fields. */
export const sessionArbitrary: fc.Arbitrary<SessionRecord> = fc
  .record({
    id: fc.uuid(),
    begunAt: moment,
    changedAt: moment,
    first: readerSheet,
    second: readerSheet,
    reader: fc.constantFrom('first' as const, 'second' as const),
    notes: fc.record({
      wearer: text,
      squint: fc.boolean(),
      light: fc.constantFrom('bright' as const, 'room' as const, 'dim' as const, null),
      remark: text,
    }),
    cameraSeed: fc.option(fc.integer({ min: 0 }), { nil: null }),
    written: fc.nat({ max: 46 }),
  })
  .map(({ id, begunAt, changedAt, first, second, reader, notes, cameraSeed, written }) => ({
    id,
    begunAt,
    changedAt,
    origin: { kind: 'desk' },
    sheet: { ...EMPTY_TYPED_SHEET, readers: { first, second }, reader, notes },
    camera: cameraSeed === null ? null : sampleCamera(seededRandom(cameraSeed), begunAt),
    findings: { written, confirmed: 0, agrees: 0, disagrees: 0, cannotTell: 0, misfits: 0 },
  }));
