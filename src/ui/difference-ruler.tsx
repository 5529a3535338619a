import type { Comparison } from '../core/crosscheck/finding.js';
import type { Side } from '../core/units/side.js';
import { formatDifference, formatNumber } from './numbers.js';
import { words } from './language.js';

/** One difference to be drawn; `isOff` where the finding says that the two disagree. */
export interface RulerLane {
  readonly side: Side | null;
  readonly comparison: Comparison;
  readonly isOff: boolean;
}

// The ruler ends at three tolerances to each side, so that the band lies under the same place in every row of the sheet.
const HALF_RANGE_TOLERANCES = 3;
const WIDTH = 128;
// as high as a line of camera values beside it
const LANE_HEIGHT = 22;
const SCALE_HEIGHT = 9;
const INSET = 9;

/**
 * Hand less camera on a small ruler: the tolerance as a band, the difference as a dot, the 95 % interval as a bar.
 * Without a difference it is empty, but keeps its height, so that the sheet stands still.
 */
export function DifferenceRuler(props: {
  /** in mm */
  readonly tolerance: number;
  readonly lanes: readonly RulerLane[];
  readonly laneCount: number;
}) {
  const { lanes, laneCount, tolerance } = props;
  const range = HALF_RANGE_TOLERANCES * tolerance;
  const height = laneCount * LANE_HEIGHT + SCALE_HEIGHT;
  const base = laneCount * LANE_HEIGHT + 1;
  const x = (value: number): number =>
    INSET + ((Math.max(-range, Math.min(range, value)) + range) / (2 * range)) * (WIDTH - 2 * INSET);
  const step = tickStep(range);
  const ticks: number[] = [];
  for (let value = -Math.floor(range / step) * step; value <= range + 1e-9; value += step) ticks.push(value);
  const viewBox = `0 0 ${WIDTH} ${height}`;
  if (lanes.length === 0) return <svg className="ruler" viewBox={viewBox} aria-hidden="true" />;
  return (
    <svg className="ruler" viewBox={viewBox} role="img" aria-label={lanes.map(laneWords).join('; ')}>
      <rect className="ruler-band" x={x(-tolerance)} y={0} width={x(tolerance) - x(-tolerance)} height={base} />
      <line className="ruler-zero" x1={x(0)} x2={x(0)} y1={0} y2={base} />
      <path
        className="ruler-scale"
        d={`M${x(-range)} ${base}H${x(range)}${ticks
          .map((value) => `M${x(value)} ${base}v${isMajor(value, tolerance) ? 6 : 3.5}`)
          .join('')}`}
      />
      {lanes.map((lane, index) => (
        <Lane key={lane.side ?? 'both'} lane={lane} y={(index + 0.5) * LANE_HEIGHT} x={x} range={range} />
      ))}
    </svg>
  );
}

function Lane(props: {
  readonly lane: RulerLane;
  readonly y: number;
  readonly x: (value: number) => number;
  readonly range: number;
}) {
  const { lane, y, x, range } = props;
  const { difference, differenceLow, differenceHigh } = lane.comparison;
  const isBeyond = Math.abs(difference) > range;
  const towards = difference > 0 ? 1 : -1;
  const at = x(difference);
  return (
    <g className={lane.isOff ? 'ruler-lane is-off' : 'ruler-lane'}>
      {/* A bar that goes on beyond the ruler has no end mark there. */}
      <path
        className="ruler-bar"
        d={`M${x(differenceLow)} ${y}H${x(differenceHigh)}${differenceLow >= -range ? `M${x(differenceLow)} ${y - 3}v6` : ''}${
          differenceHigh <= range ? `M${x(differenceHigh)} ${y - 3}v6` : ''
        }`}
      />
      {isBeyond ? (
        <path className="ruler-dot" d={`M${at + towards * 9} ${y}L${at} ${y - 5}V${y + 5}Z`} />
      ) : lane.isOff ? (
        <rect className="ruler-dot" x={at - 4} y={y - 4} width={8} height={8} transform={`rotate(45 ${at} ${y})`} />
      ) : (
        <circle className="ruler-dot" cx={at} cy={y} r={4} />
      )}
    </g>
  );
}

function tickStep(range: number): number {
  return range > 10 ? 5 : range > 4 ? 1 : 0.5;
}

function isMajor(value: number, tolerance: number): boolean {
  const inTolerances = value / tolerance;
  return Math.abs(inTolerances - Math.round(inTolerances)) < 1e-9;
}

function laneWords({ side, comparison }: RulerLane): string {
  const { difference, differenceLow, differenceHigh, tolerance } = comparison;
  return words.ruler.lane(
    side,
    formatDifference(difference),
    formatNumber(differenceLow, 1),
    formatNumber(differenceHigh, 1),
    formatNumber(tolerance.value, 1),
  );
}
