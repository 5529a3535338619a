import { useId, useState } from 'react';
import type { Measurement } from '../core/catalogue/measurement.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { FieldRow, SheetRow } from '../session/rows.js';
import { hasReadings } from '../session/rows.js';
import { earlierMeasured } from '../session/sheet.js';
import type { ReadingField } from '../session/typed-sheet.js';
import { READING_FIELDS } from '../session/typed-sheet.js';
import { budgetBasis } from './budget-basis.js';
import type { RulerLane } from './difference-ruler.js';
import { DifferenceRuler } from './difference-ruler.js';
import { useEquipment } from './equipment.js';
import { FindingMark } from './finding-mark.js';
import { formatDifference, formatEstimate, formatNumber } from './numbers.js';
import { RowDetails } from './row-details.js';
import { findingReason, findingWord, readingFailureSentence, readingWords, statusShort } from './sentences.js';
import type { SheetInHand, SheetMeasurement } from './use-sheet.js';
import { sheetWords as words, sweepWords } from './words.js';

const GROUPS = ['eyes', 'head'] as const;
const COLUMNS = 6;

/** The id of the element in which a reading is typed. */
function readingFieldId(field: ReadingField): string {
  return `reading-${field}`;
}

/** Puts the focus into a field of the sheet and brings it into view. */
export function goToReading(field: ReadingField): void {
  const element = document.getElementById(readingFieldId(field));
  if (!(element instanceof HTMLInputElement)) return;
  element.scrollIntoView({ block: 'center' });
  element.focus();
}

/** The sheet: measurements in rows, hand and camera beside each other, and what the comparison says. */
export function ReadingsSheet({ sheet }: { readonly sheet: SheetInHand }) {
  const headingId = useId();
  const isMeasured = sheet.measurement?.ok === true;
  const isSweep = sheet.measurement?.ok === true && sheet.measurement.value.kind === 'sweep';
  const earlier = isMeasured ? earlierMeasured(sheet.state) : null;
  const isRenewed = earlier !== null || (isSweep && sheet.sweep.measuringShare !== null);
  return (
    <section className="readings" aria-labelledby={headingId}>
      <h2 id={headingId} className="visually-hidden">
        {words.heading}
      </h2>
      <AloneBar sheet={sheet} />
      {earlier !== null && (
        <p className="note note-advice">
          <strong>{sweepWords.earlier[earlier]}</strong>
        </p>
      )}
      {sheet.measurement?.ok === true && (
        <p className="note what-decides">{whatDecidesWords(sheet.measurement.value)}</p>
      )}
      {/* The roles are said again because a narrow screen lays the table out as blocks, and browsers then forget them. */}
      <table
        role="table"
        className={isMeasured ? (isRenewed ? 'sheet is-renewed' : 'sheet') : 'sheet is-unmeasured'}
        aria-busy={isRenewed}
      >
        <caption className="visually-hidden">{words.caption}</caption>
        <thead role="rowgroup">
          <tr role="row">
            <th role="columnheader" scope="col" className="col-name">
              {words.measurement}
            </th>
            <th role="columnheader" scope="col" colSpan={2} className="col-hand">
              {words.hand}
            </th>
            <th role="columnheader" scope="col" className="col-camera">
              {words.camera}
            </th>
            <th role="columnheader" scope="col" className="col-difference">
              {words.difference}
            </th>
            <th role="columnheader" scope="col" className="col-finding">
              {words.finding}
            </th>
          </tr>
        </thead>
        {GROUPS.map((group) => (
          <tbody key={group} role="rowgroup">
            <tr role="row" className="group">
              <th role="rowheader" scope="rowgroup" colSpan={COLUMNS}>
                {words.groups[group]}
              </th>
            </tr>
            {sheet.rows
              .filter(({ measurement }) => measurement.group === group)
              .map((row) => (
                <MeasurementRow key={row.measurement.id} row={row} sheet={sheet} />
              ))}
          </tbody>
        ))}
      </table>
      <p className="note sheet-hint">
        {words.unitHint} {words.enterHint}
      </p>
    </section>
  );
}

/** Chosen: as the tolerance on the distance PD. A sweep without it is no better than one picture. */
const SURE_PD_MM = 1;

function whatDecidesWords({ kind, estimates }: SheetMeasurement): string {
  if (kind === 'picture') return words.whatDecides;
  const { low, high } = estimates.pdFar;
  return (high - low) / 2 < SURE_PD_MM ? words.whatSweepDecides : words.whatUnsureSweepDecides;
}

function AloneBar({ sheet }: { readonly sheet: SheetInHand }) {
  const { state, dispatch, measurement } = sheet;
  const hasHand = hasReadings(state);
  if (measurement?.ok !== true) return null;
  if (!state.alone) {
    if (hasHand || !state.settings.covered) return null;
    return (
      <p className="alone">
        {words.alone.offer}{' '}
        <button
          type="button"
          onClick={() => {
            dispatch({ kind: 'estimates-shown-alone', shown: true });
          }}
        >
          {words.alone.show}
        </button>
      </p>
    );
  }
  return (
    <p className="alone">
      {hasHand ? (
        words.notIndependent
      ) : (
        <span>
          <strong>{words.alone.mark}.</strong> {words.alone.note}
        </span>
      )}{' '}
      <button
        type="button"
        onClick={() => {
          dispatch({ kind: 'estimates-shown-alone', shown: false });
        }}
      >
        {words.alone.cover}
      </button>
    </p>
  );
}

function MeasurementRow({ row, sheet }: { readonly row: SheetRow; readonly sheet: SheetInHand }) {
  const { measurement, fields } = row;
  const [isOpen, setIsOpen] = useState(false);
  const detailsId = useId();
  const messages = fields.flatMap((field) => {
    const sentence = field.reading.ok ? null : readingFailureSentence(field.reading.failure, measurement.unit);
    return sentence === null ? [] : [{ field: field.field, side: field.side, sentence }];
  });
  const lanes = fields.flatMap(({ side, finding }): readonly RulerLane[] =>
    finding === null ? [] : [{ side, comparison: finding.comparison, isOff: finding.kind === 'disagrees' }],
  );
  return (
    <>
      <tr role="row" className="measurement">
        <th role="rowheader" scope="row" className="col-name">
          <span className="name">{measurement.shortName}</span>
          <button
            type="button"
            className="details-button"
            aria-expanded={isOpen}
            aria-controls={detailsId}
            aria-label={words.detailsOf(measurement.shortName)}
            onClick={() => {
              setIsOpen(!isOpen);
            }}
          >
            {words.details}
          </button>
        </th>
        {fields.map((field) => (
          <td
            key={field.field}
            role="cell"
            className={`col-hand ${field.side === null ? 'both' : `side-${field.side}`}`}
            colSpan={field.side === null ? 2 : 1}
          >
            <HandField field={field} sheet={sheet} />
          </td>
        ))}
        <CameraCell row={row} sheet={sheet} />
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
            {words.toleranceIs(formatNumber(measurement.tolerance.value, 1), statusShort(measurement.tolerance.status))}
          </p>
        </td>
        <td role="cell" className="col-finding">
          <Findings row={row} />
        </td>
      </tr>
      {messages.length > 0 && (
        <tr role="row" className="message">
          <td role="cell" colSpan={COLUMNS}>
            {messages.map(({ field, side, sentence }) => (
              <p key={field} id={`${readingFieldId(field)}-message`}>
                {side !== null && <strong>{words.side[side]}: </strong>}
                {sentence}
              </p>
            ))}
          </td>
        </tr>
      )}
      <tr role="row" id={detailsId} className="details" hidden={!isOpen}>
        <td role="cell" colSpan={COLUMNS}>
          {isOpen && <RowDetails row={row} basis={budgetBasis(sheet)} />}
        </td>
      </tr>
    </>
  );
}

function HandField({ field, sheet }: { readonly field: FieldRow; readonly sheet: SheetInHand }) {
  const { catalogue } = useEquipment();
  const { dispatch } = sheet;
  const isWrong = !field.reading.ok && field.reading.failure.kind !== 'empty';
  const id = readingFieldId(field.field);
  return (
    <label className="hand-field">
      {field.side !== null && (
        <span className="side" aria-hidden="true">
          {words.side[field.side]}
        </span>
      )}
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        maxLength={16}
        enterKeyHint="next"
        aria-label={words.handField(readingWords(field.field, catalogue))}
        aria-invalid={isWrong}
        aria-describedby={isWrong ? `${id}-message` : undefined}
        value={field.typed}
        onChange={(event) => {
          dispatch({ kind: 'reading-typed', field: field.field, text: event.currentTarget.value });
        }}
        onFocus={(event) => {
          event.currentTarget.select();
        }}
        onBlur={() => {
          dispatch({ kind: 'reading-entered', field: field.field });
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || event.nativeEvent.isComposing) return;
          event.preventDefault();
          dispatch({ kind: 'reading-entered', field: field.field });
          const next = READING_FIELDS[READING_FIELDS.indexOf(field.field) + (event.shiftKey ? -1 : 1)];
          if (next !== undefined) goToReading(next);
        }}
      />
    </label>
  );
}

function CameraCell({ row, sheet }: { readonly row: SheetRow; readonly sheet: SheetInHand }) {
  const { fields, covered, measurement } = row;
  if (sheet.measurement?.ok !== true) {
    return (
      <td role="cell" className="col-camera is-empty">
        <span aria-hidden="true">–</span>
        <span className="visually-hidden">{words.noPicture}</span>
      </td>
    );
  }
  if (covered) {
    return (
      <td role="cell" className="col-camera">
        <CameraLabel />
        <em className="cover">{fields.length > 1 ? words.coveredBoth : words.covered}</em>
      </td>
    );
  }
  return (
    <td role="cell" className="col-camera">
      {fields.map(({ field, side, estimate }) => (
        <div key={field} className="camera-value">
          <CameraLabel />
          {side !== null && (
            <span className="side" aria-hidden="true">
              {words.side[side]}
            </span>
          )}
          <output aria-label={words.cameraCell(spokenName(measurement, side))}>
            {estimate === null ? '' : formatEstimate(estimate)}
          </output>
        </div>
      ))}
    </td>
  );
}

/** Said in the cell where a narrow screen has no column headings. */
function CameraLabel() {
  return (
    <span className="cell-label" aria-hidden="true">
      {words.cameraShort}
    </span>
  );
}

function Findings({ row }: { readonly row: SheetRow }) {
  const { fields, covered } = row;
  const found = fields.filter(({ finding }) => finding !== null);
  if (found.length === 0) {
    const isAlone = !covered && fields.some(({ estimate }) => estimate !== null);
    return isAlone ? <em className="cover">{words.preFitting}</em> : null;
  }
  return saidTogether(found).map(({ sides, kind, word, reason }) => (
    <p key={sides.join('')} className={`finding finding-${kind}`}>
      <FindingMark kind={kind} />
      <span>
        {sides.length > 0 && <span className="finding-side">{sides.join(words.and)}</span>}
        <strong>{word}</strong>
        <span className="reason"> {reason}</span>
      </span>
    </p>
  ));
}

interface SaidFinding {
  readonly sides: readonly string[];
  readonly kind: Finding['kind'];
  readonly word: string;
  readonly reason: string;
}

/** The findings of a row; where both sides say the same, it is said once. */
function saidTogether(fields: readonly FieldRow[]): readonly SaidFinding[] {
  const said: SaidFinding[] = [];
  for (const { side, finding, areLidsFound, source } of fields) {
    if (finding === null) continue;
    const sides = side === null ? [] : [words.side[side]];
    const reason = findingReason(finding, areLidsFound, source);
    const same = said.findIndex((one) => one.kind === finding.kind && one.reason === reason);
    const before = said[same];
    if (before === undefined) said.push({ sides, kind: finding.kind, word: findingWord(finding), reason });
    else said[same] = { ...before, sides: [...before.sides, ...sides], word: findingWord(finding, true) };
  }
  return said;
}

/** What a screen reader is told when the findings of a row change. */
export function findingsSpoken(row: SheetRow): string {
  return row.fields
    .flatMap(({ side, finding, areLidsFound, source }) =>
      finding === null
        ? []
        : [
            words.findingOf(
              spokenName(row.measurement, side),
              findingWord(finding),
              findingReason(finding, areLidsFound, source),
            ),
          ],
    )
    .join(' ');
}

function spokenName(measurement: Measurement, side: FieldRow['side']): string {
  return side === null ? measurement.shortName : `${measurement.shortName}, ${words.sideWord[side]}`;
}
