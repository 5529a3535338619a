import type { Bounds, Point } from './figure.js';
import { distance, moved } from './figure.js';

/** A dimension line between two points, taken across, upright, or along the line from one to the other. */
export interface DistanceMark {
  readonly kind: 'distance';
  readonly from: Point;
  readonly to: Point;
  readonly along: 'x' | 'y' | 'line';
  /** where the dimension line is drawn: its y or x; along a line, how far to the right of it when looking from `from` to `to` */
  readonly at: number;
  /** a number or letter beside it */
  readonly text: string | null;
}

/** An arc between two legs; `degrees` is what it has to span. */
export interface AngleMark {
  readonly kind: 'angle';
  readonly vertex: Point;
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
  readonly degrees: number;
}

/** The radius of an arc: its centre, and the point of the arc to which the arrow goes. */
export interface RadiusMark {
  readonly kind: 'radius';
  readonly centre: Point;
  readonly to: Point;
}

/** A line that something is measured from or along; it is no measurement itself. */
export interface ReferenceMark {
  readonly kind: 'reference';
  readonly through: readonly Point[];
}

/** The line on the body or the frame that is meant: a leg of an angle, a contour. */
export interface BoldMark {
  readonly kind: 'bold';
  readonly through: readonly Point[];
}

export interface PointMark {
  readonly kind: 'point';
  readonly at: Point;
}

/** R or L of the wearer, or a number of millimetres that belongs to the definition. */
export interface LabelMark {
  readonly kind: 'label';
  readonly at: Point;
  readonly text: 'R' | 'L' | `${number}`;
}

export type Mark = DistanceMark | AngleMark | RadiusMark | ReferenceMark | BoldMark | PointMark | LabelMark;

/** The part of the drawn plane that is shown. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Arrows, gaps and letters grow with what is shown, so that they look alike in all drawings; mm. */
export interface MarkSizes {
  readonly arrow: number;
  readonly gap: number;
  readonly letter: number;
}

/** How large arrows and letters are where so much is shown. */
export function markSizes({ width, height }: Frame): MarkSizes {
  const unit = Math.max(width, height * 1.3) / 100;
  return { arrow: 2.5 * unit, gap: 1.1 * unit, letter: 4 * unit };
}

/** A straight piece of a mark. */
export type Segment = readonly [Point, Point];

/** What a dimension line consists of. */
export interface DrawnDistance {
  readonly line: Segment;
  readonly extensions: readonly Segment[];
  /** tip and the direction it points to */
  readonly arrows: readonly Arrow[];
  readonly textAt: Point;
}

export interface Arrow {
  readonly tip: Point;
  /** unit vector */
  readonly towards: Point;
}

/** Lays a dimension line: with arrows inside where there is room, from outside where there is none. */
export function layDistance(mark: DistanceMark, sizes: MarkSizes): DrawnDistance {
  const [start, end] = dimensionEnds(mark);
  const direction = unit(start, end);
  const back = scaled(direction, -1);
  const length = distance(start, end);
  const isTight = length < 3 * sizes.arrow;
  const extensions = [
    [mark.from, start],
    [mark.to, end],
  ] as const;
  const reach = isTight ? 2.2 * sizes.arrow : 0;
  // Text stands beside the middle of the line, to the right of one that stands upright, else above it.
  const across: Point = mark.along === 'y' ? [1, 0] : [0, -1];
  return {
    line: [moved(start, scaled(back, reach)), moved(end, scaled(direction, reach))],
    extensions: extensions.flatMap(([from, to]): readonly Segment[] => {
      if (distance(from, to) < sizes.gap) return [];
      const away = unit(from, to);
      return [[moved(from, scaled(away, sizes.gap)), moved(to, scaled(away, sizes.gap))]];
    }),
    arrows: isTight
      ? [
          { tip: start, towards: direction },
          { tip: end, towards: back },
        ]
      : [
          { tip: start, towards: back },
          { tip: end, towards: direction },
        ],
    textAt: moved(midway(start, end), scaled(across, 0.9 * sizes.letter)),
  };
}

/** Both ends of a dimension line. */
export function dimensionEnds({ from, to, along, at }: DistanceMark): Segment {
  switch (along) {
    case 'x':
      return [
        [from[0], at],
        [to[0], at],
      ];
    case 'y':
      return [
        [at, from[1]],
        [at, to[1]],
      ];
    case 'line': {
      const [right, down] = unit(from, to);
      const aside: Point = [-down * at, right * at];
      return [moved(from, aside), moved(to, aside)];
    }
  }
}

/** An arc, and its arrows. */
export interface DrawnAngle {
  readonly start: Point;
  readonly end: Point;
  /** whether it runs clockwise in the picture */
  readonly isClockwise: boolean;
  readonly arrows: readonly Arrow[];
  /** how far before the start and behind the end the arc goes on where its arrows stand outside */
  readonly tails: readonly [Point, Point] | null;
}

/** Lays the arc of an angle from one leg to the other, the short way round. */
export function layAngle(mark: AngleMark, sizes: MarkSizes): DrawnAngle {
  const { vertex, radius } = mark;
  const [first, second] = [bearing(vertex, mark.from), bearing(vertex, mark.to)];
  const span = shortWay(second - first);
  const isClockwise = span > 0;
  const isTight = Math.abs(span) * radius < 3.4 * sizes.arrow;
  const sense = isClockwise ? 1 : -1;
  const on = (angle: number): Point => [vertex[0] + radius * Math.cos(angle), vertex[1] + radius * Math.sin(angle)];
  // The chord of an arrowhead is a little off the tangent at its tip.
  const half = sizes.arrow / (2 * radius);
  const clockwise = (angle: number): Point => [-Math.sin(angle), Math.cos(angle)];
  const arrow = (angle: number, forward: number): Arrow => ({
    tip: on(angle),
    towards: scaled(clockwise(angle - forward * half), forward),
  });
  const tail = (2.2 * sizes.arrow) / radius;
  return {
    start: on(first),
    end: on(second),
    isClockwise,
    arrows: isTight ? [arrow(first, sense), arrow(second, -sense)] : [arrow(first, -sense), arrow(second, sense)],
    tails: isTight ? [on(first - sense * tail), on(second + sense * tail)] : null,
  };
}

/** The angle of a mark in degrees, as its legs stand. */
export function spannedDegrees({ vertex, from, to }: AngleMark): number {
  return (Math.abs(shortWay(bearing(vertex, to) - bearing(vertex, from))) * 180) / Math.PI;
}

/** The corners of an arrowhead. */
export function arrowHead({ tip, towards: [right, down] }: Arrow, { arrow }: MarkSizes): readonly Point[] {
  const base = moved(tip, [-right * arrow, -down * arrow]);
  const half = arrow * 0.28;
  return [tip, moved(base, [-down * half, right * half]), moved(base, [down * half, -right * half])];
}

/** Every point that a mark's lines go through or end in. */
export function pointsOfMark(mark: Mark, sizes: MarkSizes): readonly Point[] {
  switch (mark.kind) {
    case 'distance': {
      const { line, extensions, textAt } = layDistance(mark, sizes);
      return [...line, ...extensions.flat(), ...(mark.text === null ? [] : aroundText(textAt, mark.text, sizes))];
    }
    case 'angle': {
      const { start, end, tails } = layAngle(mark, sizes);
      return [mark.vertex, start, end, ...(tails ?? [])];
    }
    case 'radius':
      return [mark.centre, mark.to];
    case 'reference':
    case 'bold':
      return mark.through;
    case 'point':
      return [mark.at];
    case 'label':
      return aroundText(mark.at, mark.text, sizes);
  }
}

/** The corners of a text that is centred on a point. */
function aroundText(at: Point, text: string, { letter }: MarkSizes): readonly Point[] {
  const { left, right, top, bottom } = textBounds(at, text, letter);
  return [
    [left, top],
    [right, bottom],
  ];
}

/** The room that a text needs that is centred on a point; letters are at most as wide as three quarters of their height. */
export function textBounds([x, y]: Point, text: string, letter: number): Bounds {
  const half = text.length * letter * 0.375;
  return { left: x - half, right: x + half, top: y - letter / 2, bottom: y + letter / 2 };
}

function midway([x, y]: Point, [otherX, otherY]: Point): Point {
  return [(x + otherX) / 2, (y + otherY) / 2];
}

/** The direction from one point to another as a unit vector; no direction where they are the same. */
export function unit(from: Point, to: Point): Point {
  const length = distance(from, to);
  return length === 0 ? [0, 0] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

function scaled([x, y]: Point, by: number): Point {
  return [x * by, y * by];
}

/** Angle of the way from one point to another, radians, clockwise in the picture from the right. */
function bearing(from: Point, to: Point): number {
  return Math.atan2(to[1] - from[1], to[0] - from[0]);
}

/** The same turn by less than half a circle. */
function shortWay(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}
