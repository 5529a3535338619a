import { useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Measurement, MeasurementGroup } from '../core/catalogue/measurement.js';
import { parseDecimal } from '../core/reading/parse-reading.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { Practice } from '../core/record/practice.js';
import { withGaugeInUse, withGroupMoved, withShown, withTolerance } from '../core/record/practice.js';
import { useEquipment } from './equipment.js';
import { fieldNumber, plainNumber, unitSign, withUnit } from './numbers.js';
import { unitName } from './practice-amount.js';
import { words } from './language.js';
import { statusWords } from './sentences.js';

/** Which rows the sheet has, in blocks that can be moved; what tolerance each is held to, and the gauge it is read with. */
export function PracticeRows(props: {
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { practice, onChange } = props;
  const { groupOrder } = practice;
  const { catalogue } = useEquipment();
  const [moved, setMoved] = useState<MeasurementGroup | null>(null);
  const list = useRef<HTMLOListElement>(null);
  const move = (group: MeasurementGroup, by: 1 | -1): void => {
    const next = withGroupMoved(practice, group, by);
    // React must not move the pressed button about while it has the focus.
    flushSync(() => {
      onChange(next);
      setMoved(group);
    });
    const buttons = list.current?.querySelectorAll<HTMLButtonElement>(`[data-group='${group}'] .practice-move button`);
    const [up, down] = buttons ?? [];
    // At the end the pressed button has no further to go: then the other one has the focus.
    const pressed = by === -1 ? up : down;
    (pressed?.disabled === true ? (by === -1 ? down : up) : pressed)?.focus();
  };
  return (
    <section>
      <h3>{words.practice.rows}</h3>
      <p className="note">
        {words.practice.rowsNote} {words.practice.orderNote}
      </p>
      <ol className="practice-blocks" ref={list}>
        {groupOrder.map((group, index) => (
          <li key={group} data-group={group}>
            <Block
              group={group}
              measurements={catalogue.filter((measurement) => measurement.group === group)}
              practice={practice}
              onChange={onChange}
            />
            <div className="practice-move">
              <button
                type="button"
                aria-label={words.practice.up(words.sheet.groups[group])}
                disabled={index === 0}
                onClick={() => {
                  move(group, -1);
                }}
              >
                <Arrow isUp />
              </button>
              <button
                type="button"
                aria-label={words.practice.down(words.sheet.groups[group])}
                disabled={index === groupOrder.length - 1}
                onClick={() => {
                  move(group, 1);
                }}
              >
                <Arrow isUp={false} />
              </button>
            </div>
          </li>
        ))}
      </ol>
      <p role="status" className="visually-hidden">
        {moved !== null &&
          words.practice.moved(words.sheet.groups[moved], groupOrder.indexOf(moved) + 1, groupOrder.length)}
      </p>
    </section>
  );
}

function Arrow({ isUp }: { readonly isUp: boolean }) {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <path
        d={isUp ? 'M6 10V2M2.5 5.5 6 2l3.5 3.5' : 'M6 2v8M2.5 6.5 6 10l3.5-3.5'}
        fill="none"
        stroke="currentColor"
        strokeWidth="1.5"
      />
    </svg>
  );
}

function Block(props: {
  readonly group: MeasurementGroup;
  readonly measurements: readonly Measurement[];
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { group, measurements, practice, onChange } = props;
  const block = words.sheet.groups[group];
  const ids = measurements.map(({ id }) => id);
  const others = practice.hidden.filter((id) => !ids.includes(id));
  const shown = ids.filter((id) => !practice.hidden.includes(id)).length;
  return (
    <details className="practice-block">
      <summary>
        {block} <small>{words.practice.shownCount(shown, ids.length)}</small>
      </summary>
      <div className="actions">
        <button
          type="button"
          className="quiet"
          aria-label={words.practice.showAll(block)}
          onClick={() => {
            onChange({ hidden: others });
          }}
        >
          {words.practice.all}
        </button>
        <button
          type="button"
          className="quiet"
          aria-label={words.practice.hideAll(block)}
          onClick={() => {
            onChange({ hidden: [...others, ...ids] });
          }}
        >
          {words.practice.none}
        </button>
      </div>
      <ul className="practice-rows" aria-label={block}>
        {measurements.map((measurement) => (
          <Row key={measurement.id} measurement={measurement} practice={practice} onChange={onChange} />
        ))}
      </ul>
    </details>
  );
}

function Row(props: {
  readonly measurement: Measurement;
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { measurement, practice, onChange } = props;
  const { id } = measurement;
  const { name, shortName } = words.measurements[id];
  const isShown = !practice.hidden.includes(id);
  const gauges = practice.gauges.filter((gauge) => gauge.serves.includes(id));
  const inUse = practice.gaugeInUse[id];
  return (
    <li>
      <label className="check practice-shown" title={name}>
        <input
          type="checkbox"
          checked={isShown}
          aria-label={words.practice.shown(shortName)}
          onChange={(event) => {
            onChange(withShown(practice, id, event.currentTarget.checked));
          }}
        />
        {shortName}
      </label>
      <ToleranceField measurement={measurement} practice={practice} onChange={onChange} />
      {gauges.length > 0 && (
        <select
          className="practice-gauge"
          aria-label={words.practice.gaugeOf(shortName)}
          value={gauges.some((gauge) => gauge.id === inUse) ? inUse : ''}
          onChange={(event) => {
            const { value } = event.currentTarget;
            onChange(withGaugeInUse(practice, id, value === '' ? null : value));
          }}
        >
          <option value="">{words.practice.plainRule}</option>
          {gauges.map((gauge) => (
            <option key={gauge.id} value={gauge.id}>
              {gauge.name}
            </option>
          ))}
        </select>
      )}
    </li>
  );
}

/** Chosen: a tolerance as wide as half of what faces can show at all finds nothing. */
const WIDEST_SHARE = 0.5;

/** What was typed as an own tolerance: null for none, or why it cannot be used. */
function parseTolerance(typed: string, widest: number): Result<number | null, 'no-tolerance' | 'too-wide'> {
  const parsed = parseDecimal(typed);
  if (!parsed.ok) return parsed.failure.kind === 'empty' ? succeed(null) : fail('no-tolerance');
  if (parsed.value > widest) return fail('too-wide');
  return parsed.value > 0 ? succeed(parsed.value) : fail('no-tolerance');
}

/** An own tolerance: the text stays as typed, and what counts until it can be used is said below. */
function ToleranceField(props: {
  readonly measurement: Measurement;
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { measurement, practice, onChange } = props;
  const { id, unit, tolerance, plausible } = measurement;
  const { shortName } = words.measurements[id];
  const own = practice.tolerances[id];
  const [typed, setTyped] = useState(own === undefined ? '' : fieldNumber(own));
  const noteId = useId();
  const counts = withUnit(plainNumber(own ?? tolerance.value), unit);
  const widest = (plausible.hard.high - plausible.hard.low) * WIDEST_SHARE;
  const parsed = parseTolerance(typed, widest);
  const problem = parsed.ok
    ? null
    : parsed.failure === 'too-wide'
      ? words.practiceProblems.tooWide(typed.trim(), withUnit(plainNumber(widest), unit), counts)
      : words.practiceProblems.tolerance(typed.trim(), counts);
  const type = (text: string): void => {
    setTyped(text);
    const next = parseTolerance(text, widest);
    if (next.ok) onChange(withTolerance(practice, id, next.value));
  };
  return (
    <div className="practice-tolerance">
      <span className="practice-typed">
        <span aria-hidden="true">±</span>
        <input
          type="text"
          inputMode="decimal"
          autoComplete="off"
          maxLength={12}
          placeholder={plainNumber(tolerance.value)}
          value={typed}
          aria-label={words.practice.toleranceOf(shortName, unitName(unit))}
          aria-invalid={problem !== null}
          aria-describedby={noteId}
          onChange={(event) => {
            type(event.currentTarget.value);
          }}
        />
        <span aria-hidden="true">{unitSign(unit)}</span>
      </span>
      <small id={noteId} className={problem === null ? 'note' : 'note note-failure'}>
        {problem ?? (
          <>
            {own !== undefined && <strong>{words.practice.ownTolerance(counts)} </strong>}
            {words.practice.catalogueTolerance(
              withUnit(plainNumber(tolerance.value), unit),
              statusWords(tolerance.status),
              words.source.cited(tolerance.source),
            )}
          </>
        )}
      </small>
    </div>
  );
}
