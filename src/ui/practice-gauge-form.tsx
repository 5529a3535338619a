import type { RefObject } from 'react';
import { useId, useRef, useState } from 'react';
import type { Gauge } from '../core/reading/gauge.js';
import { useEquipment } from './equipment.js';
import { LengthField } from './length-field.js';
import { gaugeExample, unitName } from './practice-amount.js';
import type { GaugeDraft, GaugeProblems } from './practice-gauge-draft.js';
import { parseGaugeDraft, unitOfGauge } from './practice-gauge-draft.js';
import { gaugeProblemSentence } from './gauge-problem-sentence.js';
import { words } from './language.js';

/** Far below what is kept; longer names fit nowhere. */
const NAME_LIMIT = 60;

/** The form for a new gauge or one that is changed. What is typed stays in `draft`, whatever it is. */
export function PracticeGaugeForm(props: {
  readonly heading: string;
  readonly id: string;
  readonly draft: GaugeDraft;
  /** year-month-day */
  readonly today: string;
  /** the dialog was to be closed over it */
  readonly isUnfinished: boolean;
  readonly nameField: RefObject<HTMLInputElement | null>;
  readonly onChange: (draft: GaugeDraft) => void;
  readonly onKeep: (gauge: Gauge) => void;
  readonly onCancel: () => void;
}) {
  const { draft, nameField } = props;
  const { catalogue } = useEquipment();
  const [isTried, setIsTried] = useState(false);
  const [isDateBroken, setIsDateBroken] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const dateField = useRef<HTMLInputElement>(null);
  const id = useId();
  const parsed = parseGaugeDraft(draft, props.id, catalogue, props.today);
  const problems: GaugeProblems = parsed.problems ?? {};
  const unit = unitOfGauge(draft.serves, catalogue);
  const said = (field: keyof GaugeDraft): string | null => {
    const problem = problems[field];
    // An empty field is not wrong before somebody says that the form is ready.
    if (problem === undefined || (!isTried && (problem === 'empty' || problem === 'serves-nothing'))) return null;
    const typed = draft[field];
    return gaugeProblemSentence(problem, field, typeof typed === 'string' ? typed : '');
  };
  const keep = (): void => {
    setIsTried(true);
    const isBroken = dateField.current?.validity.badInput === true;
    setIsDateBroken(isBroken);
    if (parsed.gauge !== null && !isBroken) {
      props.onKeep(parsed.gauge);
      return;
    }
    requestAnimationFrame(() => {
      const first = form.current?.querySelector<HTMLElement>('[aria-invalid="true"], [data-invalid="true"]');
      (first?.matches('fieldset') === true ? first.querySelector('input') : first)?.focus();
    });
  };
  const number = (field: 'resolution' | 'zeroOffset' | 'bias') => (
    <LengthField
      label={unit === null ? words.practice[field] : words.practice.inUnit(words.practice[field], unitName(unit))}
      text={draft[field]}
      note={words.practice[`${field}Note`]}
      problem={said(field)}
      onType={(text) => {
        props.onChange({ ...draft, [field]: text });
      }}
    />
  );
  const dateProblem = isDateBroken ? words.practiceProblems.noDate : said('checkedOn');
  return (
    <form
      className="gauge-form"
      ref={form}
      noValidate
      aria-labelledby={`${id}-heading`}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <h4 id={`${id}-heading`}>{props.heading}</h4>
      <div className="gauge-text">
        <label htmlFor={`${id}-name`}>{words.practice.name}</label>
        <input
          id={`${id}-name`}
          ref={nameField}
          type="text"
          autoComplete="off"
          maxLength={NAME_LIMIT}
          value={draft.name}
          aria-invalid={said('name') !== null}
          aria-describedby={`${id}-name-note`}
          onChange={(event) => {
            props.onChange({ ...draft, name: event.currentTarget.value });
          }}
        />
        <p id={`${id}-name-note`} className={said('name') === null ? 'note' : 'note note-failure'}>
          {said('name') ?? words.practice.nameNote}
        </p>
      </div>
      <ServesField
        draft={draft}
        problem={said('serves')}
        onChange={(serves) => {
          props.onChange({ ...draft, serves });
        }}
      />
      <div className="gauge-numbers">
        {number('resolution')}
        {number('zeroOffset')}
        {number('bias')}
        <div className="gauge-text">
          <label htmlFor={`${id}-checked`}>{words.practice.checked}</label>
          <input
            id={`${id}-checked`}
            ref={dateField}
            type="date"
            max={props.today}
            value={draft.checkedOn}
            aria-invalid={dateProblem !== null}
            aria-describedby={`${id}-checked-note`}
            onChange={(event) => {
              setIsDateBroken(false);
              props.onChange({ ...draft, checkedOn: event.currentTarget.value });
            }}
          />
          <p id={`${id}-checked-note`} className={dateProblem === null ? 'note' : 'note note-failure'}>
            {dateProblem ?? words.practice.checkedNote}
          </p>
        </div>
      </div>
      <p className="gauge-example" role="status">
        {parsed.gauge !== null && unit !== null ? (
          <>
            <strong>{words.practice.example}</strong> {gaugeExample(parsed.gauge, unit, catalogue)}
          </>
        ) : (
          words.practice.noExample
        )}
      </p>
      <div className="actions">
        <button type="submit" className="main-action">
          {words.practice.keep}
        </button>
        <button type="button" onClick={props.onCancel}>
          {words.practice.cancel}
        </button>
        <p role="status" className="note">
          {props.isUnfinished && words.practiceProblems.unfinished}
          {!props.isUnfinished && isTried && (parsed.gauge === null || isDateBroken) && words.practiceProblems.notKept}
        </p>
      </div>
    </form>
  );
}

function ServesField(props: {
  readonly draft: GaugeDraft;
  readonly problem: string | null;
  readonly onChange: (serves: GaugeDraft['serves']) => void;
}) {
  const { serves } = props.draft;
  const { catalogue } = useEquipment();
  const id = useId();
  return (
    <fieldset className="gauge-serves" aria-describedby={`${id}-note`} data-invalid={props.problem !== null}>
      <legend>{words.practice.servesLegend}</legend>
      <p id={`${id}-note`} className={props.problem === null ? 'note' : 'note note-failure'}>
        {props.problem ?? words.practice.servesNote}
      </p>
      {(['mm', 'deg'] as const).map((unit) => (
        <div key={unit} role="group" aria-label={words.practice.unitsOf[unit]}>
          <p className="gauge-unit" aria-hidden="true">
            {words.practice.unitsOf[unit]}
          </p>
          <div className="gauge-serves-list">
            {catalogue
              .filter((measurement) => measurement.unit === unit)
              .map((measurement) => (
                <label key={measurement.id} className="check">
                  <input
                    type="checkbox"
                    checked={serves.includes(measurement.id)}
                    onChange={(event) => {
                      const { checked } = event.currentTarget;
                      props.onChange(
                        // in the order of the catalogue, whatever was ticked first
                        catalogue
                          .map((one) => one.id)
                          .filter((one) => (one === measurement.id ? checked : serves.includes(one))),
                      );
                    }}
                  />
                  {words.measurements[measurement.id].shortName}
                </label>
              ))}
          </div>
        </div>
      ))}
    </fieldset>
  );
}
