import type { ReactNode } from 'react';
import { useId, useMemo, useState } from 'react';
import { createPortal } from 'react-dom';
import type { MeasurementUnit, ReadingName } from '../core/catalogue/measurement.js';
import { hasReadings } from '../session/rows.js';
import { otherReader } from '../session/entries.js';
import type { LaneRow, LaneScale } from './difference-lanes.js';
import { DifferenceKey, DifferenceLanes, DifferenceTable, laneRows } from './difference-lanes.js';
import type { Doubt } from './doubt-bars.js';
import { DoubtBars, widestDoubts } from './doubt-bars.js';
import { goToReading } from './hand-place.js';
import { dateText, words } from './language.js';
import { Modal } from './modal.js';
import { RadioChoice } from './radio-choice.js';
import type { RepeatedPlace } from './repeats-lanes.js';
import { repeatedPlaces, RepeatsKey, RepeatsLanes, RepeatsTable } from './repeats-lanes.js';
import { useInPlaceOfSheet } from './use-in-place-of-sheet.js';
import type { SheetInHand } from './use-sheet.js';

const UNITS = ['mm', 'deg'] as const satisfies readonly MeasurementUnit[];

const LANE_SCALES = ['unit', 'tolerance'] as const satisfies readonly LaneScale[];

/** What is drawn of a sheet. */
interface Drawn {
  readonly rows: readonly LaneRow[];
  readonly repeated: readonly RepeatedPlace[];
  readonly doubts: readonly Doubt[];
  /** rows whose camera values are covered */
  readonly covered: number;
}

/** The open session as a drawing: hand against camera, repeats, and what the camera's doubt is made of. */
export function DifferencesDialog({ sheet, onClose }: { readonly sheet: SheetInHand; readonly onClose: () => void }) {
  const [scale, setScale] = useState<LaneScale>('tolerance');
  const { state } = sheet;
  const drawn = useMemo((): Drawn => {
    const nameOf = (reader: 'first' | 'second'): string => state.readers[reader].reader.trim() || words.reader[reader];
    return {
      rows: laneRows(sheet.rows),
      repeated: repeatedPlaces(sheet.rows, { open: nameOf(state.reader), other: nameOf(otherReader(state.reader)) }),
      doubts: widestDoubts(sheet.rows),
      covered: sheet.rows.filter(({ covered, fields }) => covered && fields.some(({ estimate }) => estimate !== null))
        .length,
    };
  }, [sheet.rows, state.readers, state.reader]);
  useInPlaceOfSheet('differences');
  const goTo = (name: ReadingName): void => {
    onClose();
    // The dialog gives the focus back to its button first.
    requestAnimationFrame(() => {
      goToReading(name);
    });
  };
  const isAnything = drawn.rows.length + drawn.repeated.length + drawn.doubts.length > 0;
  const isSeenBefore = state.alone && hasReadings(state);
  return (
    <Modal heading={words.differences.heading} closeLabel={words.differences.close} onClose={onClose} wide>
      {drawn.rows.length > 0 ? (
        <p className="note">{words.differences.intro}</p>
      ) : (
        <p>{drawn.covered > 0 ? words.differences.noneCovered : words.differences.none}</p>
      )}
      {drawn.covered > 0 && drawn.rows.length > 0 && <p>{words.differences.stillCovered(drawn.covered)}</p>}
      {isSeenBefore && <p className="note note-advice">{words.sheet.notIndependent}</p>}
      {isAnything && (
        <div className="chart-tools">
          {drawn.rows.length > 0 && (
            <RadioChoice
              legend={words.differences.scale}
              values={LANE_SCALES}
              chosen={scale}
              wordsOf={(value) => words.differences.scales[value]}
              onChoose={setScale}
            />
          )}
          <button
            type="button"
            onClick={() => {
              window.print();
            }}
          >
            {words.differences.print}
          </button>
        </div>
      )}
      <DrawnParts drawn={drawn} scale={scale} onGoTo={goTo} />
      {createPortal(
        <div className="differences-paper">
          <h1>{words.differences.heading}</h1>
          <p>
            <strong>{words.differences.of(state.notes.wearer.trim())}</strong>.{' '}
            {words.differences.printedOn(dateText(new Date(), { day: 'numeric', month: 'long', year: 'numeric' }))}
          </p>
          <DrawnParts drawn={drawn} scale={scale} onGoTo={null} />
        </div>,
        document.body,
      )}
    </Modal>
  );
}

function DrawnParts(props: {
  readonly drawn: Drawn;
  readonly scale: LaneScale;
  readonly onGoTo: ((name: ReadingName) => void) | null;
}) {
  const { drawn, scale, onGoTo } = props;
  const { rows, repeated, doubts } = drawn;
  const hasBoth = new Set(rows.map(({ row }) => row.measurement.unit)).size > 1;
  return (
    <>
      {rows.length > 0 && (
        <div className="chart">
          <DifferenceKey hasRepeats={rows.some(({ lanes }) => lanes.some((lane) => lane.repeats.length > 1))} />
          {scale === 'tolerance' ? (
            <DifferenceLanes rows={rows} in={scale} onGoTo={onGoTo} />
          ) : (
            UNITS.map((unit) => {
              const ofUnit = rows.filter(({ row }) => row.measurement.unit === unit);
              return ofUnit.length === 0 ? null : (
                <div key={unit}>
                  {hasBoth && <h4>{unit === 'mm' ? words.differences.lengths : words.differences.angles}</h4>}
                  <DifferenceLanes rows={ofUnit} in={scale} onGoTo={onGoTo} />
                </div>
              );
            })
          )}
          <AsTable>
            <DifferenceTable rows={rows} />
          </AsTable>
        </div>
      )}
      {repeated.length > 0 && (
        <DrawnSection heading={words.differences.repeats.heading} intro={words.differences.repeats.intro}>
          <RepeatsKey />
          {UNITS.map((unit) => {
            const ofUnit = repeated.filter(({ row }) => row.measurement.unit === unit);
            return ofUnit.length === 0 ? null : (
              <div key={unit}>
                {repeated.length > ofUnit.length && (
                  <h4>{unit === 'mm' ? words.differences.lengths : words.differences.angles}</h4>
                )}
                <RepeatsLanes places={ofUnit} />
              </div>
            );
          })}
          <AsTable>
            <RepeatsTable places={repeated} />
          </AsTable>
        </DrawnSection>
      )}
      {doubts.length > 0 && (
        <DrawnSection heading={words.differences.doubts.heading} intro={words.differences.doubts.intro}>
          <DoubtBars doubts={doubts} />
        </DrawnSection>
      )}
    </>
  );
}

function DrawnSection(props: { readonly heading: string; readonly intro: string; readonly children: ReactNode }) {
  const id = useId();
  return (
    <section className="chart" aria-labelledby={id}>
      <h3 id={id}>{props.heading}</h3>
      <p className="note">{props.intro}</p>
      {props.children}
    </section>
  );
}

/** The same in numbers, for who would rather read. */
function AsTable({ children }: { readonly children: ReactNode }) {
  return (
    <details className="as-table">
      <summary>{words.differences.table}</summary>
      {/* wide tables are pushed sideways, with the keyboard as well */}
      <div className="as-table-room" tabIndex={0} role="group" aria-label={words.differences.table}>
        {children}
      </div>
    </details>
  );
}
