import type { MeasurementUnit, ReadingName } from '../core/catalogue/measurement.js';
import type { Comparison, Finding } from '../core/crosscheck/finding.js';
import type { Side } from '../core/units/side.js';
import type { SheetRow } from '../session/rows.js';
import type { DifferenceScale } from './difference-scale.js';
import { differenceScale, reachOf } from './difference-scale.js';
import { FindingMark } from './finding-mark.js';
import { along, IntervalBar, KeyEntry, LaneAxis, LaneBand, LaneGrid, LaneSvg, Mark, SHAPES } from './lane-parts.js';
import { words } from './language.js';
import { formatDifference, formatNumber, plainNumber, withUnit } from './numbers.js';
import { findingWord, spokenName } from './sentences.js';

/** In what differences are drawn. */
export type LaneScale = 'unit' | 'tolerance';

/** One difference with what it is made of. */
export interface Lane {
  readonly name: ReadingName;
  readonly side: Side | null;
  readonly finding: Finding;
  /** what the hand says, and its single readings, in the unit of the measurement */
  readonly handValue: number;
  readonly repeats: readonly number[];
  readonly cameraValue: number;
}

/** A row of the sheet of which something can be drawn. */
export interface LaneRow {
  readonly row: SheetRow;
  readonly lanes: readonly Lane[];
}

/** What can be drawn of the rows: hand and camera are both there, and the reader may see both. R before L, in the sheet's order. */
export function laneRows(rows: readonly SheetRow[]): readonly LaneRow[] {
  return rows.flatMap((row) => {
    const lanes = row.fields.flatMap(({ field, side, finding, reading, estimate }): readonly Lane[] => {
      if (finding === null || !reading.ok || estimate === null) return [];
      const { value, origin } = reading.value;
      const repeats = origin?.repeats?.values.map((one) => one.value) ?? [];
      return [{ name: field, side, finding, handValue: value, repeats, cameraValue: estimate.value }];
    });
    return lanes.length === 0 ? [] : [{ row, lanes }];
  });
}

const LANE_HEIGHT = 40;
const CAMERA_Y = 11;
const HAND_Y = 22;
const REPEATS_Y = 33;
/** foot of the letter of the side */
const SIDE_Y = 21;

/** All differences of one unit on one scale, or of all units in tolerances. */
export function DifferenceLanes(props: {
  readonly rows: readonly LaneRow[];
  readonly in: LaneScale;
  /** to the row on the sheet; null on paper, where nothing can be pressed */
  readonly onGoTo: ((name: ReadingName) => void) | null;
}) {
  const { rows } = props;
  const unitOf = ({ tolerance }: Comparison): number => (props.in === 'tolerance' ? tolerance.value : 1);
  const comparisons = rows.flatMap(({ lanes }) => lanes.map(({ finding }) => finding.comparison));
  const scale = differenceScale(reachOf(comparisons, unitOf));
  return (
    <div className="lanes">
      <LaneAxis
        scale={scale}
        title={words.differences.scaleNote[props.in]}
        ends={[words.differences.lessByHand, words.differences.moreByHand]}
      />
      <ul>
        {rows.map(({ row, lanes }) => (
          <li key={row.measurement.id} className="lane-row">
            <RowName row={row} first={lanes[0]?.name ?? null} onGoTo={props.onGoTo} />
            <div className="lane-plot">
              {lanes.map((lane) => (
                <LaneDrawing
                  key={lane.name}
                  row={row}
                  lane={lane}
                  scale={scale}
                  unit={unitOf(lane.finding.comparison)}
                />
              ))}
            </div>
            <div className="lane-said">
              {lanes.map((lane) => (
                <p key={lane.name} className={lane.finding.kind === 'disagrees' ? 'is-off' : undefined}>
                  {lane.side !== null && <span className="side">{words.sheet.side[lane.side]}</span>}
                  <span className="lane-number">{formatDifference(lane.finding.comparison.difference)}</span>
                  <span className={`lane-finding finding-${lane.finding.kind}`}>
                    <FindingMark kind={lane.finding.kind} />
                    {findingWord(lane.finding)}
                  </span>
                </p>
              ))}
            </div>
          </li>
        ))}
      </ul>
      <LaneAxis scale={scale} foot />
    </div>
  );
}

function RowName(props: {
  readonly row: SheetRow;
  readonly first: ReadingName | null;
  readonly onGoTo: ((name: ReadingName) => void) | null;
}) {
  const { row, first, onGoTo } = props;
  const { shortName } = words.measurements[row.measurement.id];
  if (onGoTo === null || first === null) return <p className="lane-name">{shortName}</p>;
  return (
    <p className="lane-name">
      <button
        type="button"
        className="quiet"
        aria-label={words.differences.goTo(shortName)}
        onClick={() => {
          onGoTo(first);
        }}
      >
        {shortName}
      </button>
    </p>
  );
}

function LaneDrawing(props: {
  readonly row: SheetRow;
  readonly lane: Lane;
  readonly scale: DifferenceScale;
  /** what is one on the scale, in the unit of the measurement */
  readonly unit: number;
}) {
  const { row, lane, scale, unit } = props;
  const { difference, handExpanded, cameraExpanded, tolerance } = lane.finding.comparison;
  const isOff = lane.finding.kind === 'disagrees';
  const at = difference / unit;
  const repeats = lane.repeats.length > 1 ? lane.repeats : [];
  return (
    <LaneSvg height={LANE_HEIGHT} label={laneWords(row, lane)}>
      <LaneBand scale={scale} tolerance={tolerance.value / unit} height={LANE_HEIGHT} />
      <LaneGrid scale={scale} height={LANE_HEIGHT} />
      {lane.side !== null && (
        <text className="lane-side" x={-5} y={SIDE_Y}>
          {words.sheet.side[lane.side]}
        </text>
      )}
      <IntervalBar
        scale={scale}
        low={-cameraExpanded / unit}
        high={cameraExpanded / unit}
        y={CAMERA_Y}
        className="lane-camera"
      />
      <Mark x={along(scale, 0)} y={CAMERA_Y} d={SHAPES.smallDiamond} className="lane-camera-mark" />
      {!scale.isBeyond(at) && (
        <IntervalBar
          scale={scale}
          low={(difference - handExpanded) / unit}
          high={(difference + handExpanded) / unit}
          y={HAND_Y}
          className={isOff ? 'lane-hand is-off' : 'lane-hand'}
        />
      )}
      <Mark
        x={along(scale, at)}
        y={HAND_Y}
        d={scale.isBeyond(at) ? (at < 0 ? SHAPES.leftwards : SHAPES.rightwards) : isOff ? SHAPES.diamond : SHAPES.dot}
        className={isOff ? 'lane-hand-mark is-off' : 'lane-hand-mark'}
      />
      {repeats.map((repeat, place) => {
        const deviation = (repeat - lane.cameraValue) / unit;
        return scale.isBeyond(deviation) ? null : (
          <Mark key={place} x={along(scale, deviation)} y={REPEATS_Y} d={SHAPES.ring} className="lane-repeat" />
        );
      })}
    </LaneSvg>
  );
}

function laneWords({ measurement }: SheetRow, { side, finding, repeats }: Lane): string {
  const { difference, handExpanded, cameraExpanded, tolerance } = finding.comparison;
  const { unit } = measurement;
  return words.differences.lane({
    name: spokenName(measurement, side),
    difference: withUnit(formatDifference(difference), unit),
    hand: formatNumber(handExpanded, 1),
    camera: formatNumber(cameraExpanded, 1),
    tolerance: withUnit(plainNumber(tolerance.value), unit),
    finding: findingWord(finding),
    repeats: repeats.map(plainNumber),
  });
}

/** What the signs of the lanes mean. */
export function DifferenceKey({ hasRepeats }: { readonly hasRepeats: boolean }) {
  const { key } = words.differences;
  return (
    <ul className="lane-key" aria-label={key.heading}>
      <KeyEntry words={key.camera}>
        <g className="lane-camera">
          <path d="M2 8H32M2 4V12M32 4V12" />
        </g>
        <Mark x="17" y={8} d={SHAPES.smallDiamond} className="lane-camera-mark" />
      </KeyEntry>
      <KeyEntry words={key.hand}>
        <g className="lane-hand">
          <path d="M6 8H28M6 4V12M28 4V12" />
        </g>
        <Mark x="17" y={8} d={SHAPES.dot} className="lane-hand-mark" />
      </KeyEntry>
      <KeyEntry words={key.off}>
        <g className="lane-hand is-off">
          <path d="M6 8H28M6 4V12M28 4V12" />
        </g>
        <Mark x="17" y={8} d={SHAPES.diamond} className="lane-hand-mark is-off" />
      </KeyEntry>
      {hasRepeats && (
        <KeyEntry words={key.repeat}>
          <Mark x="17" y={8} d={SHAPES.ring} className="lane-repeat" />
        </KeyEntry>
      )}
      <KeyEntry words={key.tolerance}>
        <rect className="lane-band" x="7" width="20" height="16" />
        <path className="lane-band-edge" d="M7 0V16M27 0V16" />
      </KeyEntry>
      <KeyEntry words={key.beyond}>
        <Mark x="13" y={8} d={SHAPES.rightwards} className="lane-hand-mark" />
      </KeyEntry>
    </ul>
  );
}

/** The numbers of all lanes. */
export function DifferenceTable({ rows }: { readonly rows: readonly LaneRow[] }) {
  const { columns } = words.differences;
  const value = (number: number, halfWidth: number, unit: MeasurementUnit): string =>
    withUnit(`${formatNumber(number, 1)} ± ${formatNumber(halfWidth, 1)}`, unit);
  return (
    <table className="numbers">
      <thead>
        <tr>
          <th scope="col">{columns.measurement}</th>
          <th scope="col">{columns.hand}</th>
          <th scope="col">{columns.camera}</th>
          <th scope="col">{columns.difference}</th>
          <th scope="col">{columns.interval}</th>
          <th scope="col">{columns.tolerance}</th>
          <th scope="col">{columns.finding}</th>
        </tr>
      </thead>
      <tbody>
        {rows.flatMap(({ row: { measurement }, lanes }) =>
          lanes.map(({ name, side, finding, handValue, cameraValue }) => {
            const { difference, differenceLow, differenceHigh, handExpanded, cameraExpanded, tolerance } =
              finding.comparison;
            return (
              <tr key={name}>
                <th scope="row">{spokenName(measurement, side)}</th>
                <td>{value(handValue, handExpanded, measurement.unit)}</td>
                <td>{value(cameraValue, cameraExpanded, measurement.unit)}</td>
                <td>{formatDifference(difference)}</td>
                <td>{words.differences.fromTo(formatDifference(differenceLow), formatDifference(differenceHigh))}</td>
                <td>{plainNumber(tolerance.value)}</td>
                <td>{findingWord(finding)}</td>
              </tr>
            );
          }),
        )}
      </tbody>
    </table>
  );
}
