import { useId, useState } from 'react';
import type { MeasurementId } from '../core/catalogue/measurement.js';
import { isTakenAlone } from '../session/camera-record.js';
import type { FieldRow, SheetRow } from '../session/rows.js';
import { budgetBasis } from './budget-basis.js';
import type { RulerLane } from './difference-ruler.js';
import { HandField, isUnreadable } from './hand-field.js';
import { HandNote, handNoteId, hasHandNote } from './hand-notes.js';
import { readingFieldId } from './hand-place.js';
import { TrialVerdicts } from './hand-trials.js';
import { HelpButton } from './help-button.js';
import { formatDifference, formatNumber, plainNumber } from './numbers.js';
import { CameraCell } from './row-camera.js';
import { DoubtMarks, Findings, isInDoubt } from './row-findings.js';
import { readingFailureSentence, spokenName, statusShort } from './sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { laterPart } from './later-part.js';
import { words } from './language.js';

const DifferenceRuler = laterPart(async () => (await import('./difference-ruler.js')).DifferenceRuler);
const RowDetails = laterPart(async () => (await import('./row-details.js')).RowDetails);

/** Name, R, L, camera, difference, finding. */
export const COLUMNS = 6;

/** Whether a row has nothing on it that is worth paper. */
export function isBlankRow({ covered, fields }: SheetRow): boolean {
  return fields.every(
    ({ typed, estimate, other }) =>
      typed.trim() === '' && (estimate === null || covered) && (other?.reading ?? null) === null,
  );
}

/**
 * One measurement. Where the camera has something to say of it, its value, the difference and the finding stand beside the hand
 * readings; everywhere else that room holds what is to be said of the hand readings themselves.
 */
export function MeasurementRow({ row, sheet }: { readonly row: SheetRow; readonly sheet: SheetInHand }) {
  const { measurement, fields } = row;
  const { shortName, caution } = words.measurements[measurement.id];
  const [isOpen, setIsOpen] = useState(false);
  const detailsId = useId();
  const cautionId = useId();
  const hasCamera = fields.some(({ estimate }) => estimate !== null);
  const state = isBlankRow(row) ? ' is-blank' : '';
  return (
    <>
      <tr role="row" className={`measurement${hasCamera ? '' : ' by-hand'}${state}`}>
        <th role="rowheader" scope="row" className="col-name">
          <span className="name">{shortName}</span>
          <button
            type="button"
            className="details-button"
            aria-expanded={isOpen}
            aria-controls={detailsId}
            aria-label={words.sheet.detailsOf(shortName)}
            title={words.sheet.details}
            onClick={() => {
              setIsOpen(!isOpen);
            }}
          />
          <HelpButton measurement={measurement.id} />
          {caution !== null && (
            <span id={cautionId} hidden>
              {caution}
            </span>
          )}
        </th>
        {fields.map((field) => (
          <td
            key={field.field}
            role="cell"
            className={`col-hand ${field.side === null ? 'both' : `side-${field.side}`}${isInDoubt(field, sheet) ? ' is-doubtful' : ''}`}
            colSpan={field.side === null ? 2 : 1}
          >
            <HandField
              field={field}
              measurement={measurement}
              sheet={sheet}
              describedBy={[
                ...(isUnreadable(field) ? [messageId(field)] : []),
                ...(hasHandNote(field) ? [handNoteId(field)] : []),
                ...(caution === null ? [] : [cautionId]),
              ]}
            />
            {hasCamera && field.side === 'L' && <EyesSum row={row} />}
          </td>
        ))}
        {hasCamera ? (
          <>
            <CameraCell row={row} isAlone={isTakenAlone(sheet.state.picture)} />
            <DifferenceCell row={row} />
            <td role="cell" className="col-finding">
              <Findings row={row} />
              <DoubtMarks row={row} sheet={sheet} />
            </td>
          </>
        ) : (
          <td role="cell" className="col-notes" colSpan={3}>
            {fields.map(
              (field) =>
                measurement.takenBy === 'trial' && (
                  <TrialVerdicts
                    key={field.field}
                    field={field}
                    name={spokenName(measurement, field.side)}
                    sheet={sheet}
                  />
                ),
            )}
            <EyesSum row={row} />
            <DoubtMarks row={row} sheet={sheet} />
            <Said row={row} sheet={sheet} />
          </td>
        )}
      </tr>
      {hasCamera && isAnythingSaid(row) && (
        <tr role="row" className={`said${state}`}>
          <td role="cell" colSpan={COLUMNS}>
            <Said row={row} sheet={sheet} />
          </td>
        </tr>
      )}
      <tr role="row" id={detailsId} className={`details${state}`} hidden={!isOpen}>
        <td role="cell" colSpan={COLUMNS}>
          {isOpen && <RowDetails row={row} basis={budgetBasis(sheet)} />}
        </td>
      </tr>
    </>
  );
}

function messageId({ field }: FieldRow): string {
  return `${readingFieldId(field)}-message`;
}

/** Whether anything is to be said of the hand readings of a row; camera values leave no room for it but a line of its own. */
function isAnythingSaid({ fields, withSquint }: SheetRow): boolean {
  return withSquint || fields.some((field) => isUnreadable(field) || hasHandNote(field));
}

/** Measurements of each eye whose sum is a distance that is read as well. */
const SUMMED: readonly MeasurementId[] = ['monocularPd', 'monocularNearPd'];

/** What both eyes make together, as soon as both are in. */
function EyesSum({ row: { measurement, fields } }: { readonly row: SheetRow }) {
  if (!SUMMED.includes(measurement.id)) return null;
  const values = fields.flatMap(({ reading }) => (reading.ok ? [reading.value.value] : []));
  if (values.length !== 2) return null;
  return <p className="eyes-sum">{words.sheet.eyesSum(plainNumber(values.reduce((sum, value) => sum + value, 0)))}</p>;
}

/** What is to be said of the hand readings of a row: why one is none, how it came about, how else it has to be taken. */
function Said({ row, sheet }: { readonly row: SheetRow; readonly sheet: SheetInHand }) {
  const { fields, measurement, withSquint } = row;
  return (
    <>
      {withSquint && (
        <p className="hand-note note-squint">
          <span>
            <strong>{words.sheet.squint}</strong> {words.measurements[measurement.id].withSquint}{' '}
            {fields.some(({ notComparable }) => notComparable !== null) && words.sheet.notComparable}
          </span>
        </p>
      )}
      {fields.map((field) => {
        const sentence = field.reading.ok ? null : readingFailureSentence(field.reading.failure, measurement.unit);
        return sentence === null ? null : (
          <p key={field.field} id={messageId(field)} className="message">
            {field.side !== null && <strong>{words.sheet.sideHead[field.side]} </strong>}
            {sentence}
          </p>
        );
      })}
      {fields.map((field) => (
        <HandNote key={field.field} field={field} sheet={sheet} />
      ))}
    </>
  );
}

function DifferenceCell({ row }: { readonly row: SheetRow }) {
  const { fields, measurement } = row;
  const lanes = fields.flatMap(({ side, finding }): readonly RulerLane[] =>
    finding === null ? [] : [{ side, comparison: finding.comparison, isOff: finding.kind === 'disagrees' }],
  );
  return (
    <td role="cell" className="col-difference">
      <div className="difference">
        <DifferenceRuler tolerance={measurement.tolerance.value} lanes={lanes} laneCount={fields.length} />
        <span className="difference-values" aria-hidden="true">
          {lanes.map(({ side, comparison }) => (
            <span key={side ?? 'both'}>{formatDifference(comparison.difference)}</span>
          ))}
        </span>
      </div>
      <p className="tolerance">
        {words.sheet.toleranceIs(
          formatNumber(measurement.tolerance.value, 1),
          statusShort(measurement.tolerance.status),
        )}
      </p>
    </td>
  );
}
