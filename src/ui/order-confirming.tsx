import { useId } from 'react';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Reading } from '../core/reading/reading.js';
import type { Explanation, Suspicion } from '../core/crosscheck/reconciliation.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import type { Misfit } from '../session/misfits.js';
import { confirmedText, readyToConfirm } from '../session/order.js';
import type { FieldRow, SheetRow } from '../session/rows.js';
import { nothingFitsWords } from './hand-notes.js';
import { READER_NAME_LIMIT } from './hand-readers.js';
import { misfitSentence } from './misfit-sentences.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import { confirmedNumber } from './confirmed-number.js';
import { orderPlacesWords, orderPlaceWords } from './order-places.js';
import { nowText } from './now-text.js';
import { words } from './language.js';
import { gaugeSum } from './practice-amount.js';
import { readingFailureSentence } from './sentences.js';
import { upperFirst } from './slip-places.js';
import type { WrittenSheet } from './slip-sentences.js';
import { explanationSentence } from './slip-sentences.js';
import type { SheetInHand } from './use-sheet.js';

/** A place of the sheet in which something stands. */
interface Entry {
  readonly row: SheetRow;
  readonly field: FieldRow;
  /** what speaks against it */
  readonly misfits: readonly Misfit[];
  /** it may be named beside another place that a misfit tells of */
  readonly suspicion: Suspicion | null;
}

/** All readings that are in, each to be confirmed by a person who looked at it. */
export function OrderConfirming(props: {
  readonly sheet: SheetInHand;
  readonly written: WrittenSheet;
  /** the names that are in the order */
  readonly ordered: ReadonlySet<ReadingName>;
  readonly onGoTo: (name: ReadingName) => void;
}) {
  const { sheet, written, ordered, onGoTo } = props;
  const { rows, misfits, reconciliation, state, dispatch } = sheet;
  const nameId = useId();
  const entries = rows.flatMap((row) =>
    row.fields
      .filter((field) => field.reading.ok || field.reading.failure.kind !== 'empty')
      .map((field): Entry => ({
        row,
        field,
        misfits: misfits.filter(({ names }) => names.includes(field.field)),
        suspicion: reconciliation.suspicions.find(({ names }) => names.includes(field.field)) ?? null,
      })),
  );
  const confirmable = entries.filter(({ field }) => field.together !== null);
  const confirmed = confirmable.filter(({ field }) => field.confirmation !== null);
  const clean = readyToConfirm(rows, misfits, reconciliation);
  const namesOf = (some: readonly Entry[]): readonly ReadingName[] => some.map(({ field }) => field.field);
  const confirm = (names: readonly ReadingName[]): void => {
    dispatch({ kind: 'readings-confirmed', names, at: nowText() });
  };
  if (entries.length === 0) {
    return (
      <section>
        <h3>{words.order.confirming}</h3>
        <p>{words.order.nothingIn}</p>
      </section>
    );
  }
  return (
    <section>
      <h3>{words.order.confirming}</h3>
      <p className="order-reader">
        <label htmlFor={nameId}>{words.order.readerName}</label>
        <input
          id={nameId}
          type="text"
          autoComplete="off"
          maxLength={READER_NAME_LIMIT}
          value={state.readers[state.reader].reader}
          onChange={(event) => {
            dispatch({ kind: 'reader-named', reader: state.reader, name: event.currentTarget.value });
          }}
        />
        <span className="note">{words.order.readerNameNote}</span>
      </p>
      <div className="actions">
        <button
          type="button"
          className="main-action confirm-all"
          aria-disabled={clean.length === 0}
          onClick={() => {
            if (clean.length > 0) confirm(clean);
          }}
        >
          {clean.length === 0 ? words.order.confirmAll : words.order.confirmAllCount(clean.length)}
        </button>
        {confirmed.length > 0 && (
          <button
            type="button"
            className="quiet"
            onClick={() => {
              dispatch({ kind: 'confirmation-withdrawn', names: namesOf(confirmed) });
            }}
          >
            {words.order.withdrawAll}
          </button>
        )}
        <p role="status" className="note">
          {words.order.countConfirmed(confirmed.length, entries.length)} {words.order.doubtNote}
        </p>
      </div>
      <ul className="order-confirming">
        {entries.map((entry) => (
          <ConfirmingEntry
            key={entry.field.field}
            entry={entry}
            written={written}
            isOrdered={ordered.has(entry.field.field)}
            onConfirm={() => {
              confirm([entry.field.field]);
            }}
            onWithdraw={() => {
              dispatch({ kind: 'confirmation-withdrawn', names: [entry.field.field] });
            }}
            onGoTo={() => {
              onGoTo(entry.field.field);
            }}
          />
        ))}
      </ul>
    </section>
  );
}

function ConfirmingEntry(props: {
  readonly entry: Entry;
  readonly written: WrittenSheet;
  readonly isOrdered: boolean;
  readonly onConfirm: () => void;
  readonly onWithdraw: () => void;
  readonly onGoTo: () => void;
}) {
  const { entry, written, isOrdered } = props;
  const { row, field, misfits } = entry;
  const { unit } = row.measurement;
  const place = orderPlaceWords(field.field, written.catalogue);
  const { together, confirmation, reading } = field;
  const against = againstWords(entry, written);
  return (
    <li>
      <p className="order-place">{place}</p>
      {together === null ? (
        <p className="order-read">{field.typed}</p>
      ) : (
        <p className="order-read">
          <strong>{confirmedNumber(confirmedText(together, row.measurement))}</strong>{' '}
          {words.order.doubt(withUnit(formatNumber(NORMAL_95 * together.standardUncertainty, 1), unit))}
        </p>
      )}
      <div className="order-said">
        {against.map((sentence) => (
          <p key={sentence} className="note note-failure">
            {sentence}
          </p>
        ))}
        <p className="note">
          {[besides(entry, together ?? (reading.ok ? reading.value : null)), confirmedWords(field, isOrdered)]
            .filter((part) => part !== '')
            .join(' ')}
        </p>
      </div>
      <div className="order-deeds">
        {together !== null &&
          (confirmation === null ? (
            <button key="deed" type="button" aria-label={words.order.confirmOf(place)} onClick={props.onConfirm}>
              {words.order.confirm}
            </button>
          ) : (
            <button
              key="deed"
              type="button"
              className="quiet"
              aria-label={words.order.withdrawOf(place)}
              onClick={props.onWithdraw}
            >
              {words.order.withdraw}
            </button>
          ))}
        {(against.length > 0 || misfits.length > 0) && (
          <button type="button" className="quiet" aria-label={words.order.goToOf(place)} onClick={props.onGoTo}>
            {words.order.goTo}
          </button>
        )}
      </div>
    </li>
  );
}

function confirmedWords({ confirmation }: FieldRow, isOrdered: boolean): string {
  if (confirmation === null) return '';
  if (!isOrdered) return words.order.leftOut;
  return confirmation.by.trim() === '' ? words.order.confirmed : words.order.confirmedBy(confirmation.by.trim());
}

/** What speaks against a reading, a sentence each. */
function againstWords({ row, field, misfits, suspicion }: Entry, written: WrittenSheet): readonly string[] {
  const told = misfits.map((misfit) => misfitSentence(misfit, written));
  if (suspicion !== null && !misfits.some(({ kind }) => kind === 'suspected' || kind === 'refused')) {
    return [...told, suspicionWords(suspicion, field.field, written)];
  }
  if (told.length > 0 || field.reading.ok) return told;
  return [readingFailureSentence(field.reading.failure, row.measurement.unit) ?? ''];
}

/** What is suspected of a place beside another of which the suspicion tells first: what happened there, or with what it does not fit. */
function suspicionWords({ names, explanations }: Suspicion, name: ReadingName, written: WrittenSheet): string {
  const [best] = explanations;
  const slip = best?.slips.find(({ restorations }) => restorations.some((one) => one.name === name));
  const here: readonly Explanation[] =
    best === undefined || slip === undefined ? [] : [{ slips: [slip], probability: best.probability }];
  const others = names.filter((other) => other !== name);
  return explanationSentence(here, written) ?? words.order.suspectedWith(orderPlacesWords(others, written.catalogue));
}

/** How the value came about, and what the camera says. */
function besides({ row, field }: Entry, reading: Reading | null): string {
  const { unit } = row.measurement;
  const said: string[] = [];
  const { repeats = null, trials = null, gauge = null } = reading?.origin ?? {};
  if (reading !== null && reading.origin === null) said.push(words.order.joined);
  if (repeats !== null && gauge !== null && repeats.values.length === 1) {
    const [only] = repeats.values;
    if (only !== undefined && only.scale !== only.value) {
      said.push(words.order.scale(gaugeSum(only.scale, gauge.zeroOffset, gauge.bias)));
    }
  }
  if (repeats !== null && repeats.values.length > 1) said.push(words.order.repeats(repeats.values.length));
  if (trials !== null) {
    const nothing = nothingFitsWords(trials, field.field);
    const [low, high] = [plainNumber(trials.low), withUnit(plainNumber(trials.high), unit)];
    said.push(nothing === null ? words.order.trials(low, high) : `${upperFirst(nothing)}.`);
  }
  if (row.covered && field.estimate !== null) said.push(words.order.covered);
  if (field.finding?.kind === 'agrees') said.push(words.order.cameraAgrees);
  if (field.finding?.kind === 'cannot-tell') said.push(words.order.cameraCannotTell);
  return said.join(' ');
}
