import { useId } from 'react';
import type { MeasurementUnit } from '../core/catalogue/measurement.js';
import type { ReadersPair } from '../core/reading/reader-agreement.js';
import { readerAgreement } from '../core/reading/reader-agreement.js';
import type { ReaderId } from '../core/record/reader-sheet.js';
import { READER_IDS } from '../core/record/reader-sheet.js';
import type { SheetRow } from '../session/rows.js';
import { formatDifference, formatNumber, withUnit } from './numbers.js';
import type { SheetInHand } from './use-sheet.js';
import { words } from './language.js';

const UNITS = ['mm', 'deg'] as const satisfies readonly MeasurementUnit[];

/** Chosen: of fewer places the interval is so wide that it says nothing. */
const LEAST_PAIRS = 4;

/** How the two readers differ over the whole sheet, lengths and angles apart; nothing before both have read some of it. */
export function ReadersAgreement({ sheet }: { readonly sheet: SheetInHand }) {
  const headingId = useId();
  const { reader, readers } = sheet.state;
  const name = (id: ReaderId): string => readers[id].reader.trim() || words.reader[id];
  const said = UNITS.flatMap((unit) => agreementSentences(pairsOf(sheet.rows, unit, reader), unit, name));
  if (said.length === 0) return null;
  return (
    <section className="agreement" aria-labelledby={headingId}>
      <h3 id={headingId}>{words.agreement.heading}</h3>
      {said.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p className="note">{words.agreement.note}</p>
    </section>
  );
}

/** What both readers found at the places of one unit. */
function pairsOf(rows: readonly SheetRow[], unit: MeasurementUnit, open: ReaderId): readonly ReadersPair[] {
  return rows.flatMap(({ measurement, fields }) =>
    fields.flatMap(({ reading, other }) => {
      if (measurement.unit !== unit || !reading.ok || other?.reading?.ok !== true) return [];
      const [own, others] = [reading.value, other.reading.value];
      return [open === 'first' ? { first: own, second: others } : { first: others, second: own }];
    }),
  );
}

function agreementSentences(
  pairs: readonly ReadersPair[],
  unit: MeasurementUnit,
  name: (id: ReaderId) => string,
): readonly string[] {
  const result = readerAgreement(pairs);
  if (!result.ok || pairs.length < LEAST_PAIRS) return [];
  const { differences, repeatability } = result.value;
  const { bias, lowerLimit, upperLimit } = differences;
  const sentences = [
    words.agreement.differences(
      words.agreement.places[unit](pairs.length),
      `${name('first')} − ${name('second')}`,
      withUnit(formatDifference(bias.value), unit),
      { low: formatDifference(bias.interval.low), high: formatDifference(bias.interval.high) },
      { low: formatDifference(lowerLimit.value), high: withUnit(formatDifference(upperLimit.value), unit) },
    ),
  ];
  if (bias.interval.low > 0 || bias.interval.high < 0) sentences.push(words.agreement.biased);
  for (const id of READER_IDS) {
    const own = repeatability[id];
    if (own === null) continue;
    sentences.push(words.agreement.repeats(name(id), withUnit(formatNumber(own.coefficient, 1), unit), own.count));
  }
  return sentences;
}
