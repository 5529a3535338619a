import { definitionOfReading } from '../core/catalogue/definitions.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Gauge } from '../core/reading/gauge.js';
import type { Reading } from '../core/reading/reading.js';
import type { TrialResult } from '../core/reading/trial-series.js';
import { otherReader } from '../session/entries.js';
import type { Correction } from '../core/record/reading-history.js';
import type { FieldRow } from '../session/rows.js';
import { readingFieldId } from './hand-place.js';
import { nothingFits } from './hand-series.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import type { SheetInHand } from './use-sheet.js';
import { dateText, words } from './language.js';

// The month as a word: 3/4 is April here and March there.
const DAY = { day: 'numeric', month: 'short' } as const;
const TIME = { hour: '2-digit', minute: '2-digit' } as const;

/** Chosen: more earlier entries than these are folded up. */
const SHOWN_EARLIER = 2;

/** The id of what stands beside a hand reading. */
export function handNoteId(field: FieldRow): string {
  return `${readingFieldId(field.field)}-note`;
}

/** Whether anything is to be said beside this reading. */
export function hasHandNote(field: FieldRow): boolean {
  return (
    (field.reading.ok && readingParts(field.reading.value).length > 0) ||
    field.other?.reading?.ok === true ||
    earlierEntries(field).length > 0 ||
    field.confirmation !== null
  );
}

/** How a reading came about, what the second reader found, and what stood there before. */
export function HandNote({ field, sheet }: { readonly field: FieldRow; readonly sheet: SheetInHand }) {
  if (!hasHandNote(field)) return null;
  const earlier = earlierEntries(field);
  const repeats = field.reading.ok ? (field.reading.value.origin?.repeats ?? null) : null;
  const far = (repeats?.farOff ?? []).flatMap((place) => {
    const value = repeats?.values[place];
    return value === undefined ? [] : [plainNumber(value.scale)];
  });
  return (
    <div id={handNoteId(field)} className="hand-note">
      {field.side !== null && <span className="side">{words.sheet.side[field.side]}</span>}
      {field.reading.ok && readingParts(field.reading.value).map((part) => <span key={part}>{part}</span>)}
      {far.length > 0 && <strong className="is-off">{words.hand.farOff(far)}</strong>}
      <OtherReader field={field} sheet={sheet} />
      {field.confirmation !== null && <span>{words.hand.confirmed(field.confirmation.by)}</span>}
      {earlier.slice(0, SHOWN_EARLIER).map((correction, index) => (
        <Earlier key={index} correction={correction} />
      ))}
      {earlier.length > SHOWN_EARLIER && (
        <details>
          <summary>{words.hand.andEarlier(earlier.length - SHOWN_EARLIER)}</summary>
          {earlier.slice(SHOWN_EARLIER).map((correction, index) => (
            <Earlier key={index} correction={correction} />
          ))}
        </details>
      )}
    </div>
  );
}

/** What stood here before, newest first. A number that was taken out and came back is no earlier one of itself. */
function earlierEntries({ corrections, typed }: FieldRow): readonly Correction[] {
  return corrections
    .filter(({ earlier }, index) => !isSameEntry(earlier, corrections[index + 1]?.earlier ?? typed))
    .reverse();
}

/** Whether both are the same number, or else the same text. */
function isSameEntry(one: string, other: string): boolean {
  const [a, b] = [one, other].map((text) => text.trim().replace(',', '.'));
  return a !== '' && b !== '' && (a === b || Number(a) === Number(b));
}

function Earlier({ correction }: { readonly correction: Correction }) {
  return (
    <span>
      <s>
        <span className="visually-hidden">{words.hand.earlier} </span>
        {correction.earlier}
      </s>{' '}
      <small>{words.hand.earlierBy(correction.by, whenWords(correction.at))}</small>
    </span>
  );
}

function whenWords(at: string): string {
  const when = new Date(at);
  if (Number.isNaN(when.getTime())) return '';
  return dateText(when, when.toDateString() === new Date().toDateString() ? TIME : { ...DAY, ...TIME });
}

function OtherReader({ field, sheet }: { readonly field: FieldRow; readonly sheet: SheetInHand }) {
  if (field.other?.reading?.ok !== true) return null;
  const { value } = field.other.reading.value;
  const reader = field.other.reader.trim() || words.reader[otherReader(sheet.state.reader)];
  return (
    <>
      <span>{words.hand.otherRead(reader, plainNumber(value))}</span>
      {field.readersDiffer && field.reading.ok && (
        <strong className="is-off">
          {words.hand.differBy(plainNumber(Math.abs(field.reading.value.value - value)))}
        </strong>
      )}
    </>
  );
}

/** The sum that the gauge asks for, what repeats say together, and what sizes that were tried end at. */
export function readingParts({ name, origin }: Reading): readonly string[] {
  if (origin === null) return [];
  const { gauge, repeats, trials } = origin;
  if (trials !== null) return [trialsWords(trials, name)];
  if (repeats === null) return [];
  const steps = gauge === null ? '' : stepsWords(gauge);
  const { beyondRepeatability, farOff, mean, range, standardDeviation, values } = repeats;
  const scales = values.map(({ scale }) => plainNumber(scale));
  if (standardDeviation === null) return steps === '' ? [] : [`${scales.join('')} ${steps} = ${plainNumber(mean)}`];
  const said = words.hand.repeats(
    words.hand.several(scales, steps),
    plainNumber(mean),
    plainNumber(range),
    formatNumber(standardDeviation, 2),
  );
  return beyondRepeatability && farOff.length === 0 ? [said, words.hand.scattered] : [said];
}

function trialsWords(trials: TrialResult, name: ReadingName): string {
  const [low, high] = [plainNumber(trials.low), plainNumber(trials.high)];
  return nothingFitsWords(trials, name) ?? words.hand.trials(plainNumber(trials.value), low, high);
}

/** That no size that was tried fits: `between 7 and 9 mm, 8 was not tried`, where 8 is what is gone on with. Null where one fits. */
export function nothingFitsWords(trials: TrialResult, name: ReadingName): string | null {
  if (!nothingFits(trials)) return null;
  const { unit } = definitionOfReading(name);
  return words.hand.untried(
    plainNumber(trials.low),
    withUnit(plainNumber(trials.high), unit),
    plainNumber(trials.value),
  );
}

/** What is added to a scale reading, such as `+ 10 − 0.5`; empty for a gauge that is read as it stands. */
function stepsWords({ zeroOffset, bias }: Gauge): string {
  return [zeroOffset, -bias]
    .filter((step) => step !== 0)
    .map((step) => `${step > 0 ? '+' : '−'} ${plainNumber(Math.abs(step))}`)
    .join(' ');
}
