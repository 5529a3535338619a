import type { KeyboardEvent, PointerEvent, ReactNode } from 'react';
import { memo, useMemo, useState } from 'react';
import type { MeasurementUnit } from '../core/catalogue/measurement.js';
import type { SampledNumber } from '../core/statistics/agreement.js';
import type { ComparedPair, Drift, GroupAgreement } from '../session/agreement-over-sessions.js';
import type { DifferenceScale } from './difference-scale.js';
import { Mark, SHAPES } from './lane-parts.js';
import { dateText, words } from './language.js';
import { formatDifference, formatNumber, plainNumber, withUnit } from './numbers.js';
import { decimalsOf, signed } from './over-sessions-sentences.js';
import type { AxisTick } from './plot-axes.js';
import { timeTicks } from './plot-axes.js';
import type { ShortcutId } from './shortcuts.js';
import { isPressed } from './shortcuts.js';

/** Scales that the plots of all groups share, so that they can be held against each other. */
export interface PlotScales {
  readonly difference: DifferenceScale;
  /** of the mean of hand and camera */
  readonly mean: { readonly low: number; readonly high: number; readonly ticks: readonly AxisTick[] };
  /** of the day, milliseconds */
  readonly time: { readonly low: number; readonly high: number };
}

/** What is drawn is in thousandths of the frame's width and height. */
const UNITS = 1000;

/** Chosen: more numbers under a plot of a phone's width run into one another. */
const MOST_TIME_TICKS = 4;

interface Along {
  readonly low: number;
  readonly high: number;
  readonly of: (pair: ComparedPair) => number;
}

function place({ low, high }: Along, value: number): number {
  return high > low ? (value - low) / (high - low) : 0.5;
}

/** From the top, as a share of the frame's height. */
function depth(scale: DifferenceScale, difference: number): number {
  return 1 - scale.percent(difference) / 100;
}

/** Both plots of a group, and the reading at which one looks. */
export function AgreementPlots(props: {
  readonly agreement: GroupAgreement;
  readonly name: string;
  readonly unit: MeasurementUnit;
  /** in `unit` */
  readonly tolerance: number;
  readonly scales: PlotScales;
  readonly onOpen: (sessionId: string) => void;
}) {
  const { agreement, name, unit, tolerance, scales, onOpen } = props;
  const [at, setAt] = useState<number | null>(null);
  const { counted, farOff } = agreement;
  const points = useMemo(() => [...counted, ...farOff].sort((a, b) => a.atMs - b.atMs), [counted, farOff]);
  const looked = at === null ? null : (points[Math.min(at, points.length - 1)] ?? null);
  const byMean = useMemo((): Along => ({ ...scales.mean, of: (pair) => pair.mean }), [scales.mean]);
  const byTime = useMemo((): Along => ({ ...scales.time, of: (pair) => pair.atMs }), [scales.time]);
  const textOf = (pair: ComparedPair): string =>
    words.overSessions.point({
      day: dateText(new Date(pair.at), { day: 'numeric', month: 'short', year: 'numeric' }),
      wearer: pair.wearer === '' ? words.overSessions.noWearer : pair.wearer,
      side: pair.side,
      hand: plainNumber(pair.handValue),
      camera: formatNumber(pair.cameraValue, 1),
      difference: withUnit(formatDifference(pair.difference), unit),
      isFarOff: farOff.includes(pair),
    });
  const onKeyDown = (event: KeyboardEvent): void => {
    const last = points.length - 1;
    const now = at ?? last;
    // the first key that is pressed begins at the last reading
    const step = at === null ? 0 : 1;
    const wanted: readonly (readonly [ShortcutId, number])[] = [
      ['nextDifference', now + step],
      ['previousDifference', now - step],
      ['tenDifferencesOn', now + 10],
      ['tenDifferencesBack', now - 10],
      ['firstDifference', 0],
      ['lastDifference', last],
    ];
    const place = wanted.find(([id]) => isPressed(id, event));
    if (place !== undefined) {
      event.preventDefault();
      setAt(Math.max(0, Math.min(last, place[1])));
    } else if (looked !== null && isPressed('openDifference', event)) {
      event.preventDefault();
      onOpen(looked.sessionId);
    }
  };
  const lookAlong = (along: Along) => (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const nearest = nearestTo(points, (pair) => {
      const x = box.left + box.width * place(along, along.of(pair)) - event.clientX;
      const y = box.top + box.height * depth(scales.difference, pair.difference) - event.clientY;
      return x * x + y * y;
    });
    if (nearest !== null) setAt(nearest);
  };
  return (
    <>
      <div
        className="plots"
        role="slider"
        tabIndex={0}
        aria-label={words.overSessions.points(name)}
        aria-valuemin={1}
        aria-valuemax={points.length}
        aria-valuenow={(at ?? points.length - 1) + 1}
        aria-valuetext={looked === null ? words.overSessions.pointHint : textOf(looked)}
        onKeyDown={onKeyDown}
      >
        <Plot
          title={words.overSessions.againstMean}
          yLabel={words.overSessions.difference(unit === 'mm' ? 'mm' : '°')}
          xLabel={words.overSessions.mean(unit === 'mm' ? 'mm' : '°')}
          scale={scales.difference}
          xTicks={scales.mean.ticks.map(({ at: value, text }) => ({ share: place(byMean, value), text }))}
          onLook={lookAlong(byMean)}
          lines={lineLabels(agreement)}
          marks={<PlotMarks scale={scales.difference} along={byMean} farOff={farOff} looked={looked} />}
        >
          <AgainstMean agreement={agreement} scale={scales.difference} along={byMean} tolerance={tolerance} />
        </Plot>
        <Plot
          title={words.overSessions.overTime}
          yLabel={null}
          xLabel={words.overSessions.day}
          scale={scales.difference}
          xTicks={timeAxisTicks(byTime)}
          onLook={lookAlong(byTime)}
          lines={[]}
          marks={<PlotMarks scale={scales.difference} along={byTime} farOff={farOff} looked={looked} />}
        >
          <OverTime agreement={agreement} scale={scales.difference} along={byTime} tolerance={tolerance} />
        </Plot>
      </div>
      <p className="plot-looked">
        {looked === null ? (
          <span className="note">{words.overSessions.pointHint}</span>
        ) : (
          <>
            <span>{textOf(looked)}</span>{' '}
            <button
              type="button"
              className="quiet"
              onClick={() => {
                onOpen(looked.sessionId);
              }}
            >
              {words.overSessions.openSession}
            </button>
          </>
        )}
      </p>
    </>
  );
}

function nearestTo(points: readonly ComparedPair[], distanceOf: (pair: ComparedPair) => number): number | null {
  let nearest: number | null = null;
  let least = Infinity;
  for (const [index, pair] of points.entries()) {
    const distance = distanceOf(pair);
    if (distance < least) {
      least = distance;
      nearest = index;
    }
  }
  return nearest;
}

function timeAxisTicks(along: Along): readonly XTick[] {
  return timeTicks(along.low, along.high, MOST_TIME_TICKS).map(({ atMs, by }) => {
    const date = new Date(atMs);
    const isYear = by === 'year' || (by === 'month' && date.getMonth() === 0);
    return {
      share: place(along, atMs),
      text: dateText(
        date,
        isYear ? { year: 'numeric' } : by === 'month' ? { month: 'short' } : { day: 'numeric', month: 'short' },
      ),
    };
  });
}

interface XTick {
  readonly share: number;
  readonly text: string;
}

interface LineLabel {
  readonly value: number;
  readonly text: string;
}

function lineLabels({ bias, limits }: GroupAgreement): readonly LineLabel[] {
  return [bias, limits?.lowerLimit, limits?.upperLimit].flatMap((one) =>
    one === null || one === undefined ? [] : [{ value: one.value, text: signed(one.value, decimalsOf(one.interval)) }],
  );
}

/** One plot: a frame with what is drawn in it, and its axes. Who hears the page is told each point by the slider around it. */
function Plot(props: {
  readonly title: string;
  readonly yLabel: string | null;
  readonly xLabel: string;
  readonly scale: DifferenceScale;
  readonly xTicks: readonly XTick[];
  readonly lines: readonly LineLabel[];
  readonly onLook: (event: PointerEvent<HTMLElement>) => void;
  readonly marks: ReactNode;
  readonly children: ReactNode;
}) {
  const { scale, xTicks, lines, onLook } = props;
  return (
    <div className="plot">
      <p className="plot-title">
        {props.title}
        {props.yLabel !== null && <span>{props.yLabel}</span>}
      </p>
      <div className="plot-y">
        {scale.ticks.map((tick) => (
          <span key={tick} style={{ top: `${100 * depth(scale, tick)}%` }}>
            {signed(tick, scale.decimals)}
          </span>
        ))}
      </div>
      <div className="plot-frame" onPointerMove={onLook} onPointerDown={onLook}>
        <svg className="plot-canvas" viewBox={`0 0 ${UNITS} ${UNITS}`} preserveAspectRatio="none">
          {props.children}
        </svg>
        <svg className="plot-marks" width="100%" height="100%">
          {props.marks}
        </svg>
        {lines.map(({ value, text }) => (
          <span key={text} className="plot-line-label" style={{ top: `${100 * depth(scale, value)}%` }}>
            {text}
          </span>
        ))}
      </div>
      <div className="plot-x">
        {xTicks.map(({ share, text }) => (
          <span key={`${share} ${text}`} style={{ left: `${100 * share}%` }}>
            {text}
          </span>
        ))}
      </div>
      <p className="plot-x-label">{props.xLabel}</p>
    </div>
  );
}

interface Canvas {
  readonly agreement: GroupAgreement;
  readonly scale: DifferenceScale;
  readonly along: Along;
  readonly tolerance: number;
}

const AgainstMean = memo(function AgainstMean({ agreement, scale, along, tolerance }: Canvas) {
  const { bias, limits } = agreement;
  return (
    <>
      <Ground scale={scale} tolerance={tolerance} />
      {limits !== null && (
        <>
          <IntervalBand scale={scale} of={limits.lowerLimit} />
          <IntervalBand scale={scale} of={limits.upperLimit} />
        </>
      )}
      {bias !== null && <IntervalBand scale={scale} of={bias} />}
      <Dots agreement={agreement} scale={scale} along={along} />
      {limits !== null && (
        <path
          className="plot-limit"
          d={[limits.lowerLimit, limits.upperLimit].map(({ value }) => `M0 ${y(scale, value)}H${UNITS}`).join('')}
        />
      )}
      {bias !== null && <path className="plot-mean" d={`M0 ${y(scale, bias.value)}H${UNITS}`} />}
    </>
  );
});

const OverTime = memo(function OverTime({ agreement, scale, along, tolerance }: Canvas) {
  const { drift, bias, counted } = agreement;
  const [from, to] = [counted[0]?.atMs ?? along.low, counted.at(-1)?.atMs ?? along.high];
  return (
    <>
      <Ground scale={scale} tolerance={tolerance} />
      {drift !== null && <DriftBand drift={drift} from={from} to={to} scale={scale} along={along} />}
      <Dots agreement={agreement} scale={scale} along={along} />
      {drift !== null ? (
        <path
          className="plot-drift"
          d={`M${x(along, from)} ${y(scale, drift.at(from))}L${x(along, to)} ${y(scale, drift.at(to))}`}
        />
      ) : (
        bias !== null && <path className="plot-mean" d={`M0 ${y(scale, bias.value)}H${UNITS}`} />
      )}
    </>
  );
});

function x(along: Along, value: number): string {
  return (UNITS * place(along, value)).toFixed(1);
}

function y(scale: DifferenceScale, difference: number): string {
  return (UNITS * depth(scale, difference)).toFixed(1);
}

/** Tolerance, grid and the camera's own line. */
function Ground({ scale, tolerance }: { readonly scale: DifferenceScale; readonly tolerance: number }) {
  const [top, bottom] = [depth(scale, tolerance) * UNITS, depth(scale, -tolerance) * UNITS];
  const edges = [tolerance, -tolerance].filter((edge) => !scale.isBeyond(edge));
  return (
    <>
      <rect className="lane-band" x={0} width={UNITS} y={top} height={bottom - top} />
      <path className="plot-grid" d={scale.ticks.map((tick) => `M0 ${y(scale, tick)}H${UNITS}`).join('')} />
      <path className="plot-tolerance" d={edges.map((edge) => `M0 ${y(scale, edge)}H${UNITS}`).join('')} />
      <path className="plot-zero" d={`M0 ${y(scale, 0)}H${UNITS}`} />
    </>
  );
}

/** The 95 % interval of a line. */
function IntervalBand({ scale, of: { interval } }: { readonly scale: DifferenceScale; readonly of: SampledNumber }) {
  const [top, bottom] = [depth(scale, interval.high) * UNITS, depth(scale, interval.low) * UNITS];
  return <rect className="plot-interval" x={0} width={UNITS} y={top} height={Math.max(0, bottom - top)} />;
}

/** Where the line may go, by the interval of its slope, around the middle of the time. */
function DriftBand(props: {
  readonly drift: Drift;
  readonly from: number;
  readonly to: number;
  readonly scale: DifferenceScale;
  readonly along: Along;
}) {
  const { drift, from, to, scale, along } = props;
  const middle = (from + to) / 2;
  const centre = drift.at(middle);
  const at = (per30Days: number, ms: number): string =>
    `${x(along, ms)} ${y(scale, centre + (per30Days * (ms - middle)) / (30 * 86_400_000))}`;
  return (
    <path
      className="plot-interval"
      d={`M${at(drift.low, from)}L${at(drift.low, to)}L${at(drift.high, to)}L${at(drift.high, from)}Z`}
    />
  );
}

/** Chosen: many points are drawn smaller, so that they are still seen apart. */
const CROWD = 250;

/** All points of a side in one path: each is a line of no length with round ends. Those of the left are hollow. */
function Dots({ agreement: { counted }, scale, along }: Omit<Canvas, 'tolerance'>) {
  const path = (pairs: readonly ComparedPair[]): string =>
    pairs.map((pair) => `M${x(along, along.of(pair))} ${y(scale, pair.difference)}h0`).join('');
  const size = counted.length > CROWD ? ' plot-crowd' : '';
  const left = path(counted.filter(({ side }) => side === 'L'));
  return (
    <>
      {left !== '' && (
        <>
          <path className={`plot-dots plot-left${size}`} d={left} />
          <path className={`plot-hollow${size}`} d={left} />
        </>
      )}
      <path className={`plot-dots${size}`} d={path(counted.filter(({ side }) => side !== 'L'))} />
    </>
  );
}

/** What keeps its shape: readings that stand far off, and the one that is looked at. */
function PlotMarks(props: {
  readonly scale: DifferenceScale;
  readonly along: Along;
  readonly farOff: readonly ComparedPair[];
  readonly looked: ComparedPair | null;
}) {
  const { scale, along, farOff, looked } = props;
  const across = (pair: ComparedPair): string => `${(100 * place(along, along.of(pair))).toFixed(2)}%`;
  const down = (pair: ComparedPair): string => `${(100 * depth(scale, pair.difference)).toFixed(2)}%`;
  return (
    <>
      {farOff.map((pair) => (
        <Mark
          key={`${pair.sessionId} ${pair.name} ${pair.reader}`}
          x={across(pair)}
          y={down(pair)}
          d={
            scale.isBeyond(pair.difference)
              ? pair.difference > 0
                ? SHAPES.upwards
                : SHAPES.downwards
              : SHAPES.smallDiamond
          }
          className="plot-far-off"
        />
      ))}
      {looked !== null && (
        <>
          <line className="plot-cross" x1={across(looked)} x2={across(looked)} y1="0" y2="100%" />
          <line className="plot-cross" x1="0" x2="100%" y1={down(looked)} y2={down(looked)} />
          <Mark x={across(looked)} y={down(looked)} d={SHAPES.circle} className="plot-looked-mark" />
        </>
      )}
    </>
  );
}
