import { useId, useState } from 'react';
import { parseWorkingDistance } from '../session/measuring-settings.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import { useEquipment } from './equipment.js';
import { LanguageChooser } from './language-chooser.js';
import { LengthField } from './length-field.js';
import { Modal } from './modal.js';
import { ProfileList } from './profile-list.js';
import { PrintScaleField } from './print-scale-field.js';
import { RadioChoice } from './radio-choice.js';
import { failureSaying } from './picture-sentences.js';
import { lengthFailureSentence } from './sentences.js';
import { words } from './language.js';

/** What the reader chooses once and rarely changes. */
export function SettingsDialog(props: {
  readonly settings: SheetSettings;
  readonly onChange: (change: Partial<SheetSettings>) => void;
  readonly onClose: () => void;
}) {
  const { settings, onChange } = props;
  const working = parseWorkingDistance(settings.workingDistanceText);
  const coveredNote = useId();
  return (
    <Modal heading={words.settings.heading} closeLabel={words.settings.close} onClose={props.onClose}>
      <LanguageChooser />
      <section>
        <h3>{words.settings.reading}</h3>
        <label className="check">
          <input
            type="checkbox"
            checked={settings.covered}
            aria-describedby={coveredNote}
            onChange={(event) => {
              onChange({ covered: event.currentTarget.checked });
            }}
          />
          {words.settings.covered}
        </label>
        <p id={coveredNote} className="note">
          {words.settings.coveredNote}
        </p>
        <LengthField
          label={words.settings.workingDistance}
          text={settings.workingDistanceText}
          note={words.settings.workingDistanceNote}
          problem={working.ok ? null : lengthFailureSentence(working.failure)}
          onType={(text) => {
            onChange({ workingDistanceText: text });
          }}
        />
      </section>
      <section>
        <RadioChoice
          legend={words.settings.card}
          values={['bought', 'printed'] as const}
          chosen={settings.card}
          wordsOf={(card) => words.settings[card]}
          onChoose={(card) => {
            onChange({ card });
          }}
        />
        {settings.card === 'printed' && <PrintScaleField settings={settings} onChange={onChange} />}
      </section>
      <ProfileList settings={settings} onChange={onChange} />
      <LandmarkBundle />
    </Modal>
  );
}

type BundleState =
  | { readonly kind: 'built-in' }
  | { readonly kind: 'loading' }
  | { readonly kind: 'used'; readonly name: string }
  | { readonly kind: 'failed'; readonly failure: MeasuringFailure };

/** The bundle in use outlives the dialog, as it does in the vision port. */
let bundleInUse: BundleState = { kind: 'built-in' };

function LandmarkBundle() {
  const { vision } = useEquipment();
  const [state, setState] = useState(bundleInUse);
  const settle = (next: BundleState): void => {
    if (next.kind === 'used' || next.kind === 'built-in') bundleInUse = next;
    setState(next);
  };
  const use = async (file: File | null): Promise<void> => {
    setState({ kind: 'loading' });
    const bytes = file === null ? null : new Uint8Array(await file.arrayBuffer());
    const result = await vision.useLandmarkBundle(bytes);
    if (!result.ok) settle({ kind: 'failed', failure: result.failure });
    else settle(file === null ? { kind: 'built-in' } : { kind: 'used', name: file.name });
  };
  return (
    <details className="advanced">
      <summary>{words.settings.advanced}</summary>
      <p className="note">{words.settings.bundleNote}</p>
      <div className="actions">
        <label className="file-button">
          <input
            type="file"
            accept=".task"
            disabled={state.kind === 'loading'}
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              event.currentTarget.value = '';
              if (file !== undefined) void use(file);
            }}
          />
          <span>{words.settings.bundle}</span>
        </label>
        {(state.kind === 'used' || bundleInUse.kind === 'used') && (
          <button type="button" onClick={() => void use(null)}>
            {words.settings.bundleBack}
          </button>
        )}
      </div>
      <p role="status" className={state.kind === 'failed' ? 'note note-failure' : 'note'}>
        {state.kind === 'built-in' && words.settings.builtIn}
        {state.kind === 'loading' && words.settings.bundleLoading}
        {state.kind === 'used' && words.settings.bundleUsed(state.name)}
        {state.kind === 'failed' && `${failureSaying(state.failure).what} ${failureSaying(state.failure).next}`}
      </p>
    </details>
  );
}
