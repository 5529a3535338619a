/** A place in a drawing: millimetres on the drawn person, x to the right of the picture, y down. */
export type Point = readonly [x: number, y: number];

/**
 * What a line of a figure is drawn as: the outline of the skin, a finer line within it, hair or skin as an area, the white of an eye, its
 * iris and pupil, the rim of a frame and where it is cut, a lens, a side of a frame and what the ear hides of it.
 */
export type Look =
  | 'outline'
  | 'fine'
  | 'hair'
  | 'skin'
  | 'white'
  | 'iris'
  | 'pupil'
  | 'rim'
  | 'rim-cut'
  | 'lens'
  | 'side'
  | 'side-hidden';

/** A calm curve through points, or straight from one to the next. */
export interface Line {
  readonly kind: 'line';
  readonly look: Look;
  readonly through: readonly Point[];
  readonly isClosed: boolean;
  readonly isStraight: boolean;
}

/** An ellipse with upright axes; where it is an iris, only what the lids leave free of it is drawn. */
export interface Round {
  readonly kind: 'round';
  readonly look: Look;
  readonly centre: Point;
  readonly radii: Point;
  /** closed curve, within which it is seen */
  readonly within: readonly Point[] | null;
}

/** A piece of a figure. */
export type Part = Line | Round;

/** What is drawn, from the back to the front. */
export type Figure = readonly Part[];

/** An open curve through points. */
export function curve(look: Look, ...through: readonly Point[]): Line {
  return { kind: 'line', look, through, isClosed: false, isStraight: false };
}

/** A closed curve through points. */
export function area(look: Look, ...through: readonly Point[]): Line {
  return { kind: 'line', look, through, isClosed: true, isStraight: false };
}

/** Straight from point to point. */
export function straight(look: Look, ...through: readonly Point[]): Line {
  return { kind: 'line', look, through, isClosed: false, isStraight: true };
}

/** A circle, or what is seen of it. */
export function circle(look: Look, centre: Point, radius: number, within: readonly Point[] | null = null): Round {
  return { kind: 'round', look, centre, radii: [radius, radius], within };
}

/** An ellipse with upright axes, or what is seen of it. */
export function ellipse(look: Look, centre: Point, radii: Point, within: readonly Point[] | null = null): Round {
  return { kind: 'round', look, centre, radii, within };
}

/** The same on the other side of the midline, x = 0. */
export function mirrored([x, y]: Point): Point {
  return [-x, y];
}

/** A part on the other side of the midline. */
export function mirroredPart(part: Part): Part {
  if (part.kind === 'line') return { ...part, through: part.through.map(mirrored) };
  return { ...part, centre: mirrored(part.centre), within: part.within?.map(mirrored) ?? null };
}

/** Parts on one side of the midline, and the same on the other. */
export function onBothSides(...parts: Figure): Figure {
  return parts.flatMap((part) => [part, mirroredPart(part)]);
}

/** Half an outline from the midline to the midline, made whole: the points of the other half follow in reverse. */
export function wholeOutline(look: Look, ...half: readonly Point[]): Line {
  const other = half.filter(([x]) => x !== 0).map(mirrored);
  return area(look, ...half, ...other.reverse());
}

/** A point moved by so much to the right and down. */
export function moved([x, y]: Point, [right, down]: Point): Point {
  return [x + right, y + down];
}

/** A figure moved by so much to the right and down. */
export function movedFigure(figure: Figure, by: Point): Figure {
  return figure.map((part) =>
    part.kind === 'line'
      ? { ...part, through: part.through.map((point) => moved(point, by)) }
      : { ...part, centre: moved(part.centre, by), within: part.within?.map((point) => moved(point, by)) ?? null },
  );
}

/** A point turned about another, clockwise as seen in the picture. */
export function turned([x, y]: Point, [aboutX, aboutY]: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  const [right, down] = [x - aboutX, y - aboutY];
  return [
    aboutX + right * Math.cos(angle) - down * Math.sin(angle),
    aboutY + right * Math.sin(angle) + down * Math.cos(angle),
  ];
}

/** One cubic Bézier piece of a curve: both control points and the end. */
type Bezier = readonly [first: Point, second: Point, end: Point];

/** Centripetal Catmull-Rom spline through the points, which does not overshoot, as Bézier pieces (Yuksel et al. 2011). */
function bezierThrough(through: readonly Point[], isClosed: boolean): readonly Bezier[] {
  const count = through.length;
  const at = (place: number): Point =>
    through[isClosed ? (place + count) % count : Math.max(0, Math.min(count - 1, place))]!;
  return Array.from({ length: isClosed ? count : count - 1 }, (_, i) => {
    const [before, start, end, after] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    return [control(before, start, end), control(after, end, start), end];
  });
}

/** The control point next to `at`, on the way to `towards`, where the curve comes from `before`. */
function control(before: Point, at: Point, towards: Point): Point {
  const [back, ahead] = [Math.sqrt(distance(before, at)), Math.sqrt(distance(at, towards))];
  const of = (axis: 0 | 1): number => {
    // At the end of an open curve there is nothing before.
    if (back === 0) return at[axis] + (towards[axis] - at[axis]) / 3;
    const weight = 2 * back ** 2 + 3 * back * ahead + ahead ** 2;
    return (back ** 2 * towards[axis] - ahead ** 2 * before[axis] + weight * at[axis]) / (3 * back * (back + ahead));
  };
  return [of(0), of(1)];
}

/** How far apart two points are, mm. */
export function distance([x, y]: Point, [otherX, otherY]: Point): number {
  return Math.hypot(otherX - x, otherY - y);
}

/** A coordinate in a path: hundredths of a millimetre are finer than any line. */
function written([x, y]: Point): string {
  return `${Math.round(x * 100) / 100} ${Math.round(y * 100) / 100}`;
}

/** The `d` of an SVG path through points. */
export function pathThrough({
  through,
  isClosed,
  isStraight,
}: Pick<Line, 'through' | 'isClosed' | 'isStraight'>): string {
  const [start, ...rest] = through;
  if (start === undefined) return '';
  const pieces = isStraight
    ? rest.map((point) => `L${written(point)}`)
    : bezierThrough(through, isClosed).map((piece) => `C${piece.map(written).join(' ')}`);
  return `M${written(start)}${pieces.join('')}${isClosed ? 'Z' : ''}`;
}

/** Points along a closed or open curve, close enough together to find its bounds. */
export function sampled(through: readonly Point[], isClosed: boolean): readonly Point[] {
  return bezierThrough(through, isClosed).flatMap(([first, second, end], i) => {
    const start = through[i]!;
    return Array.from({ length: SAMPLES }, (_, step) => {
      const t = step / SAMPLES;
      const of = (axis: 0 | 1): number =>
        (1 - t) ** 3 * start[axis] +
        3 * (1 - t) ** 2 * t * first[axis] +
        3 * (1 - t) * t ** 2 * second[axis] +
        t ** 3 * end[axis];
      return [of(0), of(1)] as const;
    });
  });
}

const SAMPLES = 24;

/** A shape stretched so that its box has this size, with its middle at 0, 0. */
export function boxed(through: readonly Point[], width: number, height: number): readonly Point[] {
  // Stretching a centripetal curve changes it a little; a few rounds settle it.
  let points = through;
  for (let round = 0; round < 8; round++) {
    const { left, right, top, bottom } = boundsOf(sampled(points, true));
    points = points.map(([x, y]) => [
      ((x - (left + right) / 2) * width) / (right - left),
      ((y - (top + bottom) / 2) * height) / (bottom - top),
    ]);
  }
  return points;
}

/** The smallest upright rectangle around points. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The smallest upright rectangle around points; there has to be one. */
export function boundsOf(points: readonly Point[]): Bounds {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
