import type { LightLevel, WearerNotes } from '../core/record/wearer-notes.js';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import { noteId } from './place-ids.js';
import type { SheetInHand } from './use-sheet.js';

const LIGHTS = ['bright', 'room', 'dim'] as const satisfies readonly LightLevel[];

/** Limits are those of what is kept. */
const WEARER_LIMIT = 64;
const REMARK_LIMIT = 400;

/** What is noted of the wearer beside the readings, and what of it changes how the rows are measured. */
export function NotesPanel({ sheet }: { readonly sheet: SheetInHand }) {
  const { catalogue } = useEquipment();
  const { notes, settings } = sheet.state;
  const change = (change: Partial<WearerNotes>): void => {
    sheet.dispatch({ kind: 'notes-changed', change });
  };
  const shown = catalogue.filter((measurement) => !settings.practice.hidden.includes(measurement.id));
  const withSquint = shown.filter((measurement) => measurement.changesWithSquint);
  const isLightAsked = shown.some(({ id: measurementId }) => measurementId === 'pupilDiameter');
  const { readings } = sheet.state.readers[sheet.state.reader];
  const isLightMissing =
    notes.light === null && (readings.pupilDiameterR.trim() !== '' || readings.pupilDiameterL.trim() !== '');
  return (
    <section className="notes" aria-label={words.notes.heading}>
      <p className="notes-field notes-wearer">
        <label htmlFor={noteId('wearer')}>{words.notes.wearer}</label>
        <input
          id={noteId('wearer')}
          type="text"
          autoComplete="off"
          maxLength={WEARER_LIMIT}
          placeholder={words.notes.wearerNote}
          value={notes.wearer}
          onChange={(event) => {
            change({ wearer: event.currentTarget.value });
          }}
        />
      </p>
      {isLightAsked && (
        <p className="notes-field">
          <label htmlFor={noteId('light')}>{words.notes.light}</label>
          <select
            id={noteId('light')}
            value={notes.light ?? ''}
            onChange={(event) => {
              const { value } = event.currentTarget;
              change({ light: LIGHTS.find((light) => light === value) ?? null });
            }}
          >
            <option value="">{words.notes.noLight}</option>
            {LIGHTS.map((light) => (
              <option key={light} value={light}>
                {words.notes.lights[light]}
              </option>
            ))}
          </select>
        </p>
      )}
      <p className="notes-field notes-remark">
        <label htmlFor={noteId('remark')}>{words.notes.remark}</label>
        <input
          id={noteId('remark')}
          type="text"
          autoComplete="off"
          maxLength={REMARK_LIMIT}
          value={notes.remark}
          onChange={(event) => {
            change({ remark: event.currentTarget.value });
          }}
        />
      </p>
      <label className="check notes-squint">
        <input
          id={noteId('squint')}
          type="checkbox"
          checked={notes.squint}
          onChange={(event) => {
            change({ squint: event.currentTarget.checked });
          }}
        />
        {words.notes.squint}
      </label>
      <div className="notes-said" role="status">
        {notes.squint && withSquint.length > 0 && (
          <p className="note note-advice">
            {words.notes.squintChanges(
              withSquint.map(({ id: measurementId }) => words.measurements[measurementId].shortName).join('; '),
            )}
          </p>
        )}
        {isLightMissing && isLightAsked && <p className="note note-advice">{words.notes.lightMissing}</p>}
      </div>
    </section>
  );
}
