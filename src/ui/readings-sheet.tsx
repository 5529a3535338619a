import { startTransition, useEffect, useId, useState, useSyncExternalStore } from 'react';
import { hasReadings } from '../session/rows.js';
import { afterPainting } from './after-painting.js';
import { earlierMeasured } from '../session/sheet.js';
import { ReaderChoice } from './hand-readers.js';
import { MeasurementSearch } from './hand-search.js';
import { goOnFromReadings } from './prescription-place.js';
import { SheetBlock } from './row-block.js';
import { isBlankRow } from './row-measurement.js';
import { SheetStrip } from './row-strip.js';
import { ALONE_ID } from './place-ids.js';
import { isPressed } from './shortcuts.js';
import { laterPart } from './later-part.js';
import type { SheetMeasurement } from '../session/camera-record.js';
import type { SheetInHand } from './use-sheet.js';
import { words } from './language.js';

const ReadersAgreement = laterPart(async () => (await import('./hand-agreement.js')).ReadersAgreement);
const UndoTools = laterPart(async () => (await import('./undo-tools.js')).UndoTools);

/** The sheet: measurements in rows, hand and camera beside each other, and what the comparison says. */
export function ReadingsSheet(props: {
  readonly sheet: SheetInHand;
  readonly onShowMisfits: () => void;
  readonly onDraw: () => void;
}) {
  const { sheet } = props;
  const headingId = useId();
  const measured = sheet.measurement?.ok === true ? sheet.measurement.value : null;
  const earlier = measured === null ? null : earlierMeasured(sheet.state);
  const isRenewed = earlier !== null || (measured?.kind === 'sweep' && sheet.sweep.measuringShare !== null);
  const isRepeated = sheet.rows.some(({ fields }) =>
    fields.some(({ reading }) => reading.ok && (reading.value.origin?.repeats?.values.length ?? 0) > 1),
  );
  // An empty sheet is printed as a form to fill in; any other without its empty rows.
  const isBegun = !sheet.rows.every(isBlankRow);
  const blocks = sheet.state.settings.practice.groupOrder.flatMap((group) => {
    const rows = sheet.rows.filter(({ measurement }) => measurement.group === group);
    return rows.length === 0 ? [] : [{ group, rows }];
  });
  const drawnCount = useDrawnCount(blocks.length);
  return (
    <section
      className="readings"
      aria-labelledby={headingId}
      onKeyDown={(event) => {
        if (isPressed('nextReading', event)) goOnFromReadings(event.target);
      }}
    >
      <h2 id={headingId} className="visually-hidden">
        {words.sheet.heading}
      </h2>
      <div className="sheet-tools">
        <ReaderChoice sheet={sheet} />
        <MeasurementSearch rows={blocks.flatMap(({ rows }) => rows)} />
        <UndoTools sheet={sheet} />
      </div>
      <AloneBar sheet={sheet} />
      {earlier !== null && (
        <p className="note note-advice">
          <strong>{words.sweep.earlier[earlier]}</strong>
        </p>
      )}
      {measured !== null && <p className="note what-decides">{whatDecidesWords(measured)}</p>}
      {(measured !== null || isRepeated) && (
        <p className="sheet-drawn">
          <button type="button" className="quiet" onClick={props.onDraw}>
            {words.sheet.drawn}
          </button>
        </p>
      )}
      <SheetStrip sheet={sheet} onShowMisfits={props.onShowMisfits} />
      {/* The roles are said again because a narrow screen lays the table out as blocks, and browsers then forget them. */}
      <table
        role="table"
        className={`sheet${isRenewed ? ' is-renewed' : ''}${isBegun ? ' is-begun' : ''}`}
        aria-busy={isRenewed}
      >
        <caption className="visually-hidden">{words.sheet.caption}</caption>
        <thead role="rowgroup">
          <tr role="row">
            <th role="columnheader" scope="col" className="col-name">
              {words.sheet.measurement}
            </th>
            <th role="columnheader" scope="col" colSpan={2} className="col-hand">
              {words.sheet.hand}
            </th>
            <th role="columnheader" scope="col" className="col-camera">
              {words.sheet.camera}
            </th>
            <th role="columnheader" scope="col" className="col-difference">
              {words.sheet.difference}
            </th>
            <th role="columnheader" scope="col" className="col-finding">
              {words.sheet.finding}
            </th>
          </tr>
        </thead>
        {blocks.slice(0, drawnCount).map(({ group, rows }) => (
          <SheetBlock key={group} group={group} rows={rows} sheet={sheet} />
        ))}
      </table>
      <p className="note sheet-hint">
        {words.sheet.unitHint} {words.sheet.howTyped}
      </p>
      <ReadersAgreement sheet={sheet} />
    </section>
  );
}

const ALL = (): number => Infinity;
const NONE = (): number => 0;
const NEVER = (): (() => void) => () => undefined;

/** How many blocks are drawn: one more after each painting, since to lay out all at once takes long. */
function useDrawnCount(count: number): number {
  // Where nothing is painted, as on a server, all are there from the start.
  const first = useSyncExternalStore(NEVER, NONE, ALL);
  const [drawn, setDrawn] = useState(first);
  useEffect(() => {
    if (drawn >= count) return;
    let isOver = false;
    void afterPainting().then(() => {
      if (isOver) return;
      startTransition(() => {
        setDrawn(drawn + 1);
      });
    });
    return () => {
      isOver = true;
    };
  }, [drawn, count]);
  return drawn;
}

/** Chosen: as the tolerance on the distance PD. A sweep without it is no better than one picture. */
const SURE_PD_MM = 1;

function whatDecidesWords({ kind, estimates }: SheetMeasurement): string {
  if (kind === 'picture') return words.sheet.whatDecides;
  const { low, high } = estimates.pdFar;
  return (high - low) / 2 < SURE_PD_MM ? words.sheet.whatSweepDecides : words.sheet.whatUnsureSweepDecides;
}

function AloneBar({ sheet }: { readonly sheet: SheetInHand }) {
  const { state, dispatch, measurement } = sheet;
  const hasHand = hasReadings(state);
  if (measurement?.ok !== true) return null;
  if (!state.alone) {
    if (hasHand || !state.settings.covered) return null;
    return (
      <p className="alone">
        {words.sheet.alone.offer}{' '}
        <button
          id={ALONE_ID}
          type="button"
          onClick={() => {
            dispatch({ kind: 'estimates-shown-alone', shown: true });
          }}
        >
          {words.sheet.alone.show}
        </button>
      </p>
    );
  }
  return (
    <p className="alone">
      {hasHand ? (
        words.sheet.notIndependent
      ) : (
        <span>
          <strong>{words.sheet.alone.mark}.</strong> {words.sheet.alone.note}
        </span>
      )}{' '}
      <button
        id={ALONE_ID}
        type="button"
        onClick={() => {
          dispatch({ kind: 'estimates-shown-alone', shown: false });
        }}
      >
        {words.sheet.alone.cover}
      </button>
    </p>
  );
}
