import { useId, useRef, useState } from 'react';
import type { Practice } from '../core/record/practice.js';
import { standardName, STANDARDS } from './lens-sentences.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import { draftOfGauge, EMPTY_GAUGE_DRAFT } from './practice-gauge-draft.js';
import type { OpenGaugeForm } from './practice-gauges.js';
import { PracticeGauges } from './practice-gauges.js';
import { PracticeRows } from './practice-rows.js';
import { statusWords } from './sentences.js';

/** What the practice measures, in which order and with what, and how it is judged. */
export function PracticeDialog(props: {
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
  readonly onClose: () => void;
}) {
  const { practice, onChange } = props;
  const [form, setForm] = useState<OpenGaugeForm | null>(null);
  const [isUnfinished, setIsUnfinished] = useState(false);
  const nameField = useRef<HTMLInputElement>(null);
  const standardId = useId();
  const close = (): void => {
    if (form === null || !isChanged(form)) {
      props.onClose();
      return;
    }
    // What was typed is not thrown away unasked.
    setIsUnfinished(true);
    nameField.current?.focus();
  };
  return (
    <Modal heading={words.practice.heading} closeLabel={words.practice.close} onClose={close} wide>
      <p className="note">{words.practice.intro}</p>
      <PracticeRows practice={practice} onChange={onChange} />
      <PracticeGauges
        practice={practice}
        onChange={onChange}
        form={form}
        onForm={(next) => {
          setForm(next);
          setIsUnfinished(false);
        }}
        isUnfinished={isUnfinished}
        nameField={nameField}
      />
      <section>
        <fieldset className="choice practice-standard">
          <legend>{words.practice.standard}</legend>
          {STANDARDS.map((standard) => {
            const { id, imbalance, progressiveImbalance, position } = standard;
            // One table may hold for several kinds of lenses.
            const sources = [...new Set([imbalance, progressiveImbalance, position])];
            return (
              <div key={id}>
                <label>
                  <input
                    type="radio"
                    name={standardId}
                    checked={practice.standard === id}
                    aria-describedby={`${standardId}-${id}`}
                    onChange={() => {
                      onChange({ standard: id });
                    }}
                  />
                  {standardName(standard)}
                </label>
                <p id={`${standardId}-${id}`} className="note">
                  {sources
                    .map(({ status, source }) =>
                      words.practice.standardSource(statusWords(status), words.source.cited(source)),
                    )
                    .join(' ')}
                </p>
              </div>
            );
          })}
        </fieldset>
      </section>
    </Modal>
  );
}

function isChanged({ kept, draft }: OpenGaugeForm): boolean {
  const before = kept === null ? EMPTY_GAUGE_DRAFT : draftOfGauge(kept);
  return JSON.stringify(before) !== JSON.stringify(draft);
}
