import type { ReactNode } from 'react';
import type { DifferenceScale } from './difference-scale.js';
import { formatNumber } from './numbers.js';

// A lane is as wide as there is room: places along it are in per cent, sizes of marks in pixels.

/** A place along a lane, as SVG takes it. */
export function along(scale: DifferenceScale, value: number): string {
  return `${scale.percent(value).toFixed(2)}%`;
}

/** A mark that keeps its shape however wide the lane is; its path is drawn around (0, 0). */
export function Mark(props: {
  readonly x: string;
  readonly y: number | string;
  readonly d: string;
  readonly className: string;
}) {
  return (
    <svg x={props.x} y={props.y} overflow="visible">
      <path className={props.className} d={props.d} />
    </svg>
  );
}

export const SHAPES = {
  dot: 'M-4.5 0A4.5 4.5 0 1 1 4.5 0A4.5 4.5 0 1 1 -4.5 0Z',
  ring: 'M-3 0A3 3 0 1 1 3 0A3 3 0 1 1 -3 0Z',
  diamond: 'M0 -6L6 0L0 6L-6 0Z',
  smallDiamond: 'M0 -4.5L4.5 0L0 4.5L-4.5 0Z',
  leftwards: 'M-9 0L0 -5.5V5.5Z',
  rightwards: 'M9 0L0 -5.5V5.5Z',
  /** at the upper edge, inside of it */
  upwards: 'M0 3L5 12H-5Z',
  /** at the lower edge, inside of it */
  downwards: 'M0 -3L5 -12H-5Z',
  circle: 'M-7 0A7 7 0 1 1 7 0A7 7 0 1 1 -7 0Z',
} as const;

/** An interval with an end mark at each end that lies on the scale. */
export function IntervalBar(props: {
  readonly scale: DifferenceScale;
  readonly low: number;
  readonly high: number;
  readonly y: number;
  readonly className: string;
}) {
  const { scale, low, high, y, className } = props;
  const ends = [low, high].filter((end) => !scale.isBeyond(end));
  return (
    <g className={className}>
      <line x1={along(scale, low)} x2={along(scale, high)} y1={y} y2={y} />
      {ends.map((end, place) => (
        <line key={place} x1={along(scale, end)} x2={along(scale, end)} y1={y - 4} y2={y + 4} />
      ))}
    </g>
  );
}

/** Lines through all lanes where the scale has numbers; the one in the middle is stronger. */
export function LaneGrid({ scale, height }: { readonly scale: DifferenceScale; readonly height: number }) {
  return (
    <>
      {scale.ticks.map((tick) => (
        <line
          key={tick}
          className={Math.abs(tick) < 1e-9 ? 'lane-zero' : 'lane-grid'}
          x1={along(scale, tick)}
          x2={along(scale, tick)}
          y1={0}
          y2={height}
        />
      ))}
    </>
  );
}

/** The tolerance as a band with an edge on both sides. */
export function LaneBand(props: {
  readonly scale: DifferenceScale;
  readonly tolerance: number;
  readonly height: number;
}) {
  const { scale, tolerance, height } = props;
  return (
    <>
      <rect
        className="lane-band"
        x={along(scale, -tolerance)}
        width={`${(scale.percent(tolerance) - scale.percent(-tolerance)).toFixed(2)}%`}
        height={height}
      />
      {[-tolerance, tolerance].map((edge) =>
        scale.isBeyond(edge) ? null : (
          <line
            key={edge}
            className="lane-band-edge"
            x1={along(scale, edge)}
            x2={along(scale, edge)}
            y1={0}
            y2={height}
          />
        ),
      )}
    </>
  );
}

/** The numbers of a scale above or below its lanes, and what stands at its ends. Whoever hears the page is told numbers in each lane. */
export function LaneAxis(props: {
  readonly scale: DifferenceScale;
  readonly title?: string;
  readonly ends?: readonly [string, string];
  readonly foot?: boolean;
}) {
  const { scale, title, ends, foot } = props;
  return (
    <div className={foot === true ? 'lane-axis lane-axis-foot' : 'lane-axis'} aria-hidden="true">
      <div className="lane-axis-head" />
      <div className="lane-plot">
        {title !== undefined && <p className="lane-axis-title">{title}</p>}
        {ends !== undefined && (
          <p className="lane-axis-ends">
            <span>← {ends[0]}</span>
            <span>{ends[1]} →</span>
          </p>
        )}
        <div className="lane-ticks">
          {scale.ticks.map((tick) => (
            <span key={tick} style={{ left: along(scale, tick) }}>
              {tick > 1e-9 ? '+' : ''}
              {formatNumber(tick, scale.decimals)}
            </span>
          ))}
        </div>
      </div>
    </div>
  );
}

/** One sign of a key with its words. */
export function KeyEntry(props: { readonly children: ReactNode; readonly words: string }) {
  return (
    <li>
      <svg className="lane key-sign" width="34" height="16" aria-hidden="true" focusable="false">
        {props.children}
      </svg>
      {props.words}
    </li>
  );
}

/** What a lane draws, with what it says in words. */
export function LaneSvg(props: { readonly height: number; readonly label: string; readonly children: ReactNode }) {
  return (
    <svg className="lane" width="100%" height={props.height} role="img" aria-label={props.label}>
      {props.children}
    </svg>
  );
}
