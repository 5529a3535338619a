import type { ReactNode } from 'react';
import { useEffect, useId, useRef, useState } from 'react';
import type { MeasurementId } from '../core/catalogue/measurement.js';
import type { Gauge } from '../core/reading/gauge.js';
import { checkOfGauge } from '../core/reading/gauge.js';
import type { Practice } from '../core/record/practice.js';
import { withGauge, withoutGauge } from '../core/record/practice.js';
import { isoDay } from '../session/iso-day.js';
import { useEquipment } from './equipment.js';
import { plainNumber, withUnit } from './numbers.js';
import { gaugeExample } from './practice-amount.js';
import type { GaugeDraft } from './practice-gauge-draft.js';
import { draftOfGauge, EMPTY_GAUGE_DRAFT, unitOfGauge } from './practice-gauge-draft.js';
import { PracticeGaugeForm } from './practice-gauge-form.js';
import { dateText, words } from './language.js';
import { newProfileId } from './use-profiles.js';

/** The form that is open: a gauge by its id, and what stands in the fields. */
export interface OpenGaugeForm {
  readonly id: string;
  /** as it is kept; null for a new one */
  readonly kept: Gauge | null;
  readonly draft: GaugeDraft;
}

/** What happened last to the list, for the status line. */
type Happened =
  | { readonly kind: 'kept' | 'taken-over' | 'brought-back'; readonly name: string }
  | {
      readonly kind: 'removed';
      readonly gauge: Gauge;
      /** the measurements that were read with it */
      readonly inUseFor: readonly MeasurementId[];
    }
  | null;

// The month as a word: 3/4 is April here and March there.
const DAY = { dateStyle: 'long', timeZone: 'UTC' } as const;

/** The gauges of the practice: added, changed, deleted, taken over from the examples. */
export function PracticeGauges(props: {
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
  readonly form: OpenGaugeForm | null;
  readonly onForm: (form: OpenGaugeForm | null) => void;
  /** the dialog was to be closed over an open form */
  readonly isUnfinished: boolean;
  readonly nameField: React.RefObject<HTMLInputElement | null>;
}) {
  const { practice, onChange, form, onForm, nameField } = props;
  const { exampleGauges } = useEquipment();
  const [happened, setHappened] = useState<Happened>(null);
  const [today] = useState(() => isoDay(new Date()));
  const addButton = useRef<HTMLButtonElement>(null);
  const bringBack = useRef<HTMLButtonElement>(null);
  const list = useRef<HTMLElement>(null);
  const formId = form?.id ?? null;
  const leftId = useRef<string | null>(null);
  useEffect(() => {
    if (formId !== null) nameField.current?.focus();
    else if (leftId.current !== null) {
      // Where the form stood there is the gauge now, or nothing.
      const edit = list.current?.querySelector<HTMLElement>(`[data-gauge='${leftId.current}'] button`);
      (edit ?? addButton.current)?.focus();
    }
    leftId.current = formId;
  }, [formId, nameField]);
  useEffect(() => {
    // What was deleted had the focus: it goes on to the way back.
    if (happened?.kind === 'removed') bringBack.current?.focus();
  }, [happened]);

  const keep = (gauge: Gauge): void => {
    onChange(inUseWhereFree(withGauge(practice, gauge), gauge));
  };
  const leaveForm = (): void => {
    onForm(null);
  };
  const formPart = (heading: string): ReactNode =>
    form !== null && (
      <PracticeGaugeForm
        key={form.id}
        heading={heading}
        id={form.id}
        draft={form.draft}
        today={today}
        isUnfinished={props.isUnfinished}
        nameField={nameField}
        onChange={(draft) => {
          onForm({ ...form, draft });
        }}
        onKeep={(gauge) => {
          keep(gauge);
          setHappened({ kind: 'kept', name: gauge.name });
          leaveForm();
        }}
        onCancel={leaveForm}
      />
    );
  const isTakenOver = (example: Gauge): boolean => practice.gauges.some(({ id }) => id === example.id);
  const examples = exampleGauges.filter((example) => !isTakenOver(example)).map(inThisLanguage);
  return (
    <section ref={list}>
      <h3>{words.practice.gauges}</h3>
      <p className="note">{words.practice.gaugesNote}</p>
      {practice.gauges.length === 0 ? (
        <p>{words.practice.noGauges}</p>
      ) : (
        <ul className="practice-gauges" aria-label={words.practice.gauges}>
          {practice.gauges.map((gauge) => (
            <li key={gauge.id} data-gauge={gauge.id}>
              {form?.id === gauge.id ? (
                formPart(words.practice.form.edit(gauge.name))
              ) : (
                <GaugeEntry
                  gauge={gauge}
                  practice={practice}
                  today={today}
                  onEdit={() => {
                    setHappened(null);
                    onForm({ id: gauge.id, kept: gauge, draft: draftOfGauge(gauge) });
                  }}
                  onRemove={() => {
                    setHappened({ kind: 'removed', gauge, inUseFor: measurementsReadWith(practice, gauge) });
                    onChange(withoutGauge(practice, gauge.id));
                  }}
                />
              )}
            </li>
          ))}
        </ul>
      )}
      <div className="profile-happened" role="status">
        {happened?.kind === 'kept' && <p className="note">{words.practice.kept(happened.name)}</p>}
        {happened?.kind === 'taken-over' && <p className="note">{words.practice.takenOver(happened.name)}</p>}
        {happened?.kind === 'brought-back' && <p className="note">{words.practice.broughtBack(happened.name)}</p>}
        {happened?.kind === 'removed' && (
          <p className="note">
            {words.practice.removed(happened.gauge.name)}{' '}
            <button
              type="button"
              className="quiet"
              ref={bringBack}
              onClick={() => {
                const { gauge, inUseFor } = happened;
                const back = withGauge(practice, gauge);
                const inUse = Object.fromEntries(inUseFor.map((id) => [id, gauge.id]));
                onChange({ ...back, gaugeInUse: { ...back.gaugeInUse, ...inUse } });
                setHappened({ kind: 'brought-back', name: gauge.name });
                addButton.current?.focus();
              }}
            >
              {words.practice.bringBack}
            </button>
          </p>
        )}
      </div>
      {form !== null && form.kept === null && formPart(words.practice.form.add)}
      <div className="actions">
        <button
          type="button"
          ref={addButton}
          disabled={form !== null && form.kept === null}
          onClick={() => {
            setHappened(null);
            onForm({ id: newProfileId(), kept: null, draft: EMPTY_GAUGE_DRAFT });
          }}
        >
          {words.practice.addGauge}
        </button>
      </div>
      {examples.length > 0 && (
        <details>
          <summary>{words.practice.examples}</summary>
          <p className="note">{words.practice.examplesNote}</p>
          <ul className="practice-gauges">
            {examples.map((example) => (
              <li key={example.id}>
                <GaugeFacts gauge={example} />
                <div className="actions">
                  <button
                    type="button"
                    aria-label={words.practice.takeOverOf(example.name)}
                    onClick={() => {
                      keep(example);
                      setHappened({ kind: 'taken-over', name: example.name });
                    }}
                  >
                    {words.practice.takeOver}
                  </button>
                </div>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** A gauge is in use from the start wherever a plain scale was read until now. */
function inUseWhereFree(practice: Practice, gauge: Gauge): Practice {
  const free = gauge.serves.filter((id) => practice.gaugeInUse[id] === undefined);
  return {
    ...practice,
    gaugeInUse: { ...practice.gaugeInUse, ...Object.fromEntries(free.map((id) => [id, gauge.id])) },
  };
}

function measurementsReadWith(practice: Practice, gauge: Gauge): readonly MeasurementId[] {
  return gauge.serves.filter((id) => practice.gaugeInUse[id] === gauge.id);
}

function GaugeFacts({ gauge }: { readonly gauge: Gauge }) {
  const { catalogue } = useEquipment();
  const unit = unitOfGauge(gauge.serves, catalogue) ?? 'mm';
  const { facts } = words.practice;
  const parts = [
    facts.step(withUnit(plainNumber(gauge.resolution), unit)),
    gauge.zeroOffset === 0 ? facts.noOffset : facts.offset(withUnit(plainNumber(gauge.zeroOffset), unit)),
    ...(gauge.bias > 0 ? [facts.bias(withUnit(plainNumber(gauge.bias), unit))] : []),
    ...(gauge.bias < 0 ? [facts.biasBelow(withUnit(plainNumber(-gauge.bias), unit))] : []),
  ];
  return (
    <>
      <strong>{gauge.name}</strong>
      <p className="note">
        {parts.join('; ')}.{' '}
        {(gauge.zeroOffset !== 0 || gauge.bias !== 0) &&
          `${words.practice.example} ${gaugeExample(gauge, unit, catalogue)}`}
      </p>
    </>
  );
}

function GaugeEntry(props: {
  readonly gauge: Gauge;
  readonly practice: Practice;
  /** year-month-day */
  readonly today: string;
  readonly onEdit: () => void;
  readonly onRemove: () => void;
}) {
  const { gauge, practice } = props;
  const { catalogue } = useEquipment();
  const nameId = useId();
  const inUseFor = measurementsReadWith(practice, gauge);
  const names = catalogue.filter(({ id }) => inUseFor.includes(id)).map(({ id }) => words.measurements[id].shortName);
  const check = checkOfGauge(gauge, props.today);
  const day = gauge.checkedOn === null ? '' : dateText(new Date(`${gauge.checkedOn}T00:00:00Z`), DAY);
  return (
    <>
      <GaugeFacts gauge={gauge} />
      <p id={nameId} className="note">
        {names.length === 0 ? words.practice.notInUse : words.practice.inUseFor(names.join(', '))}
      </p>
      <p className={check.kind === 'recent' ? 'note' : 'note note-advice'}>
        {check.kind === 'recent' && words.practice.checkedOn(day)}
        {check.kind === 'old' && words.practice.overdue(day, check.limitDays)}
        {check.kind === 'unknown' && words.practice.neverChecked}
      </p>
      <div className="actions">
        <button type="button" className="quiet" aria-label={words.practice.editOf(gauge.name)} onClick={props.onEdit}>
          {words.practice.edit}
        </button>
        <button
          type="button"
          className="quiet"
          aria-label={words.practice.removeOf(gauge.name)}
          onClick={props.onRemove}
        >
          {words.practice.remove}
        </button>
      </div>
    </>
  );
}

/** An example by the name that it has in the language of this moment; once it is taken over, that is a name of the user's. */
function inThisLanguage(example: Gauge): Gauge {
  const names: { readonly [id: string]: string } = words.practice.exampleNames;
  return { ...example, name: names[example.id] ?? example.name };
}
