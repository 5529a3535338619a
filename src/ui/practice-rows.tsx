import { useId, useState } from 'react';
import type { Measurement, MeasurementGroup } from '../core/catalogue/measurement.js';
import { parseDecimal } from '../core/reading/parse-reading.js';
import type { Practice } from '../session/practice.js';
import { withGaugeInUse, withShown, withTolerance } from '../session/practice.js';
import { useEquipment } from './equipment.js';
import { plainNumber, withUnit } from './numbers.js';
import { unitName, unitSign } from './practice-amount.js';
import { practiceProblems, practiceWords as words } from './practice-words.js';
import { statusWords } from './sentences.js';

/** Which rows the sheet has, what tolerance each is held to, and the gauge it is read with; by block. */
export function PracticeRows(props: {
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { practice, onChange } = props;
  const { catalogue } = useEquipment();
  const shown = catalogue.filter(({ id }) => !practice.hidden.includes(id)).length;
  return (
    <section>
      <h3>{words.rows}</h3>
      <p className="note">{words.rowsNote}</p>
      {practice.groupOrder.map((group) => (
        <Block
          key={group}
          group={group}
          measurements={catalogue.filter((measurement) => measurement.group === group)}
          practice={practice}
          onChange={onChange}
        />
      ))}
      <p role="status" className="note">
        {words.shownCount(shown, catalogue.length)}
      </p>
    </section>
  );
}

function Block(props: {
  readonly group: MeasurementGroup;
  readonly measurements: readonly Measurement[];
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { group, measurements, practice, onChange } = props;
  const headingId = useId();
  const block = words.blocks[group];
  const ids = measurements.map(({ id }) => id);
  const others = practice.hidden.filter((id) => !ids.includes(id));
  return (
    <div className="practice-block">
      <div className="practice-block-head">
        <h4 id={headingId}>{block}</h4>
        <button
          type="button"
          className="quiet"
          aria-label={words.showAll(block)}
          onClick={() => {
            onChange({ hidden: others });
          }}
        >
          {words.all}
        </button>
        <button
          type="button"
          className="quiet"
          aria-label={words.hideAll(block)}
          onClick={() => {
            onChange({ hidden: [...others, ...ids] });
          }}
        >
          {words.none}
        </button>
      </div>
      <ul className="practice-rows" aria-labelledby={headingId}>
        {measurements.map((measurement) => (
          <Row key={measurement.id} measurement={measurement} practice={practice} onChange={onChange} />
        ))}
      </ul>
    </div>
  );
}

function Row(props: {
  readonly measurement: Measurement;
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { measurement, practice, onChange } = props;
  const { id, name, shortName } = measurement;
  const isShown = !practice.hidden.includes(id);
  const gauges = practice.gauges.filter((gauge) => gauge.serves.includes(id));
  const inUse = practice.gaugeInUse[id];
  return (
    <li>
      <label className="check practice-shown" title={name}>
        <input
          type="checkbox"
          checked={isShown}
          aria-label={words.shown(shortName)}
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
          aria-label={words.gaugeOf(shortName)}
          value={gauges.some((gauge) => gauge.id === inUse) ? inUse : ''}
          onChange={(event) => {
            const { value } = event.currentTarget;
            onChange(withGaugeInUse(practice, id, value === '' ? null : value));
          }}
        >
          <option value="">{words.plainRule}</option>
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

/** An own tolerance: the text stays as typed, and what counts until it can be used is said below. */
function ToleranceField(props: {
  readonly measurement: Measurement;
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { measurement, practice, onChange } = props;
  const { id, shortName, unit, tolerance, plausible } = measurement;
  const own = practice.tolerances[id];
  const [typed, setTyped] = useState(own === undefined ? '' : String(own));
  const noteId = useId();
  const counts = withUnit(plainNumber(own ?? tolerance.value), unit);
  const widest = (plausible.hard.high - plausible.hard.low) * WIDEST_SHARE;
  const parsed = parseDecimal(typed);
  const isEmpty = !parsed.ok && parsed.failure.kind === 'empty';
  const problem =
    isEmpty || (parsed.ok && parsed.value > 0 && parsed.value <= widest)
      ? null
      : parsed.ok && parsed.value > widest
        ? practiceProblems.tooWide(typed.trim(), withUnit(plainNumber(widest), unit), counts)
        : practiceProblems.tolerance(typed.trim(), counts);
  const type = (text: string): void => {
    setTyped(text);
    const next = parseDecimal(text);
    if (next.ok) {
      if (next.value > 0 && next.value <= widest) {
        onChange(withTolerance(practice, id, next.value));
      }
    } else if (next.failure.kind === 'empty') {
      onChange(withTolerance(practice, id, null));
    }
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
          aria-label={words.toleranceOf(shortName, unitName(unit))}
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
            {own !== undefined && <strong>{words.ownTolerance(counts)} </strong>}
            {words.catalogueTolerance(
              withUnit(plainNumber(tolerance.value), unit),
              statusWords(tolerance.status),
              tolerance.source,
            )}
          </>
        )}
      </small>
    </div>
  );
}
