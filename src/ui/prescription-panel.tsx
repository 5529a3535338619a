import type { KeyboardEvent } from 'react';
import { useId, useMemo, useState } from 'react';
import { questionPrescription } from '../core/lenses/question-prescription.js';
import type { LensKind } from '../core/lenses/prescription.js';
import { SIDES } from '../core/units/side.js';
import type { PlacedFailure } from '../session/prescription-entry.js';
import { parsePrescription } from '../session/prescription-entry.js';
import { eighthsSentence, entryFailureSentence, placeName, questionSentence } from './lens-sentences.js';
import { words } from './language.js';
import { PrescriptionEyeRow } from './prescription-eye-row.js';
import { goOn, placeId } from './prescription-place.js';
import { PrescriptionText } from './prescription-text.js';
import { LENS_KIND_ID } from './place-ids.js';
import { isPressed } from './shortcuts.js';
import type { SheetInHand } from './use-sheet.js';

const KINDS: readonly LensKind[] = ['single-vision', 'multifocal', 'progressive'];

const VERTEX_PLACE = { side: null, field: 'vertexDistance' } as const;

/** What is prescribed, as it is typed: read field by field, with what is wrong beside the field and what is odd below. */
export function PrescriptionPanel({ sheet }: { readonly sheet: SheetInHand }) {
  const { dispatch } = sheet;
  const typed = sheet.state.prescription;
  const headingId = useId();
  const parsed = useMemo(() => parsePrescription(typed), [typed]);
  /** nothing is said of a field while it is still being typed in */
  const [placeInHand, setPlaceInHand] = useState<string | null>(null);
  const failures = parsed.ok ? [] : parsed.failure.failures;
  const missing = failures.filter(({ failure }) => failure.kind === 'missing');
  const wrong = failures.filter(({ place, failure }) => failure.kind !== 'missing' && placeId(place) !== placeInHand);
  const wrongVertex = wrong.find(({ place }) => place.side === null);
  const isEmpty = !parsed.ok && parsed.failure.isEmpty;
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    const isNext = isPressed('nextPlace', event);
    if (!isNext && !isPressed('previousPlace', event)) return;
    event.preventDefault();
    goOn(event.target, isNext ? 1 : -1);
  };
  return (
    <section
      className={isEmpty ? 'prescription is-blank' : 'prescription'}
      aria-labelledby={headingId}
      onKeyDown={onKeyDown}
      onFocus={(event) => {
        setPlaceInHand(event.target.id);
      }}
      onBlur={() => {
        setPlaceInHand(null);
      }}
    >
      <h2 id={headingId}>{words.prescription.heading}</h2>
      {/* The roles are said again because a narrow screen lays the table out as blocks, and browsers then forget them. */}
      <table role="table" className="prescription-table">
        <caption className="visually-hidden">{words.prescription.caption}</caption>
        <thead role="rowgroup">
          <tr role="row">
            <th role="columnheader" scope="col">
              <span className="visually-hidden">{words.prescription.eye}</span>
            </th>
            {[
              words.prescription.fields.sphere,
              words.prescription.fields.cylinder,
              words.prescription.fields.axis,
              words.prescription.fields.add,
              words.prescription.columns.horizontal,
              words.prescription.columns.vertical,
            ].map((column) => (
              <th key={column} role="columnheader" scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {SIDES.map((side) => (
            <PrescriptionEyeRow
              key={side}
              side={side}
              typed={typed[side]}
              read={parsed.ok ? parsed.value.prescription[side] : null}
              wrong={wrong.filter(({ place }) => place.side === side)}
              onChange={(change) => {
                dispatch({ kind: 'prescription-changed', change: { [side]: change } });
              }}
            />
          ))}
        </tbody>
      </table>
      <div className="prescription-pair">
        <p className="prescription-field">
          <label htmlFor={placeId(VERTEX_PLACE)}>{words.prescription.vertexDistance}</label>
          <input
            id={placeId(VERTEX_PLACE)}
            data-prescription-place
            type="text"
            inputMode="decimal"
            autoComplete="off"
            spellCheck={false}
            maxLength={16}
            value={typed.vertexDistance}
            aria-invalid={wrongVertex !== undefined}
            aria-describedby={`${placeId(VERTEX_PLACE)}-note`}
            onChange={(event) => {
              dispatch({ kind: 'prescription-changed', change: { vertexDistance: event.currentTarget.value } });
            }}
          />
          <span
            id={`${placeId(VERTEX_PLACE)}-note`}
            className={wrongVertex === undefined ? 'note prescription-hint' : 'prescription-wrong'}
          >
            {wrongVertex === undefined
              ? words.prescription.vertexNote
              : entryFailureSentence(wrongVertex.failure, 'vertexDistance')}
          </span>
        </p>
        <p className="prescription-field">
          <label htmlFor={LENS_KIND_ID}>{words.prescription.kind}</label>
          <select
            id={LENS_KIND_ID}
            data-prescription-place
            value={typed.lensKind}
            onChange={(event) => {
              const lensKind = KINDS.find((kind) => kind === event.currentTarget.value);
              if (lensKind !== undefined) dispatch({ kind: 'prescription-changed', change: { lensKind } });
            }}
          >
            {KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {words.prescription.kinds[kind]}
              </option>
            ))}
          </select>
        </p>
      </div>
      <div className="prescription-said" role="status">
        {missing.length > 0 && <p className="note">{words.prescription.stillNeeded(missing.map(nameOf))}</p>}
        {parsed.ok &&
          questionPrescription(parsed.value.prescription).map((question) => (
            <p key={question.kind} className="note note-advice">
              <strong>{words.prescription.check}</strong> <PrescriptionText text={questionSentence(question)} />
            </p>
          ))}
        {parsed.ok && parsed.value.eighths.length > 0 && (
          <p className="note note-advice">
            <strong>{words.prescription.check}</strong> {eighthsSentence(parsed.value.eighths)}
          </p>
        )}
      </div>
      <p className="note prescription-hint">{words.prescription.hint}</p>
    </section>
  );
}

function nameOf({ place }: PlacedFailure): string {
  return placeName(place).toLowerCase();
}
