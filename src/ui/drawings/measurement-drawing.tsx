import { useId } from 'react';
import type { MeasurementId } from '../../core/catalogue/measurement.js';
import type { Figure, Part, Point } from './figure.js';
import { pathThrough } from './figure.js';
import type { AngleMark, Arrow, DistanceMark, Mark, MarkSizes } from './marks.js';
import { arrowHead, layAngle, layDistance, markSizes, unit } from './marks.js';
import { MEASUREMENT_DRAWINGS } from './measurement-drawings.js';

/** Where a measurement is taken, drawn; `title` and `description` are what a screen reader says of it. */
export function MeasurementDrawing(props: {
  readonly measurement: MeasurementId;
  readonly title: string;
  readonly description: string;
}) {
  const id = useId();
  const { frame, figure, marks } = MEASUREMENT_DRAWINGS[props.measurement];
  const sizes = markSizes(frame);
  return (
    <svg
      className="drawing"
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-description`}
      viewBox={`${frame.x} ${frame.y} ${frame.width} ${frame.height}`}
      focusable="false"
    >
      <title id={`${id}-title`}>{props.title}</title>
      <desc id={`${id}-description`}>{props.description}</desc>
      <FigureParts figure={figure} id={id} />
      {marks.map((mark, i) => (
        <DrawnMark key={i} mark={mark} sizes={sizes} />
      ))}
    </svg>
  );
}

function FigureParts({ figure, id }: { readonly figure: Figure; readonly id: string }) {
  return (
    <>
      {figure.map((part, i) => (
        <DrawnPart key={i} part={part} clipId={`${id}-${i}`} />
      ))}
    </>
  );
}

function DrawnPart({ part, clipId }: { readonly part: Part; readonly clipId: string }) {
  const className = `drawn drawn-${part.look}`;
  if (part.kind === 'line') return <path className={className} d={pathThrough(part)} />;
  const { centre, radii, within } = part;
  const shape = <ellipse className={className} cx={centre[0]} cy={centre[1]} rx={radii[0]} ry={radii[1]} />;
  if (within === null) return shape;
  return (
    <>
      <clipPath id={clipId}>
        <path d={pathThrough({ through: within, isClosed: true, isStraight: false })} />
      </clipPath>
      <g clipPath={`url(#${clipId})`}>{shape}</g>
    </>
  );
}

function DrawnMark({ mark, sizes }: { readonly mark: Mark; readonly sizes: MarkSizes }) {
  switch (mark.kind) {
    case 'distance':
      return <DrawnDistance mark={mark} sizes={sizes} />;
    case 'angle':
      return <DrawnAngle mark={mark} sizes={sizes} />;
    case 'radius':
      return (
        <>
          <path className="mark" d={straightPath(mark.centre, mark.to)} />
          <Arrows arrows={[{ tip: mark.to, towards: unit(mark.centre, mark.to) }]} sizes={sizes} />
        </>
      );
    case 'reference':
      return <path className="mark mark-reference" d={straightPath(...mark.through)} />;
    case 'bold':
      return <path className="mark mark-bold" d={straightPath(...mark.through)} />;
    case 'point':
      return <circle className="mark-point" cx={mark.at[0]} cy={mark.at[1]} r={sizes.gap * 0.75} />;
    case 'label':
      return <Letters at={mark.at} text={mark.text} sizes={sizes} />;
  }
}

function DrawnDistance({ mark, sizes }: { readonly mark: DistanceMark; readonly sizes: MarkSizes }) {
  const { line, extensions, arrows, textAt } = layDistance(mark, sizes);
  return (
    <>
      {extensions.map((segment, i) => (
        <path key={i} className="mark mark-extension" d={straightPath(...segment)} />
      ))}
      <path className="mark" d={straightPath(...line)} />
      <Arrows arrows={arrows} sizes={sizes} />
      {mark.text !== null && <Letters at={textAt} text={mark.text} sizes={sizes} />}
    </>
  );
}

function DrawnAngle({ mark, sizes }: { readonly mark: AngleMark; readonly sizes: MarkSizes }) {
  const { start, end, isClockwise, arrows, tails } = layAngle(mark, sizes);
  const [from, to] = tails ?? [start, end];
  return (
    <>
      <path
        className="mark"
        d={`M${from.join(' ')}A${mark.radius} ${mark.radius} 0 0 ${isClockwise ? 1 : 0} ${to.join(' ')}`}
      />
      <Arrows arrows={arrows} sizes={sizes} />
    </>
  );
}

function Arrows({ arrows, sizes }: { readonly arrows: readonly Arrow[]; readonly sizes: MarkSizes }) {
  return (
    <>
      {arrows.map((arrow, i) => (
        <path key={i} className="mark-arrow" d={`${straightPath(...arrowHead(arrow, sizes))}Z`} />
      ))}
    </>
  );
}

function Letters(props: { readonly at: Point; readonly text: string; readonly sizes: MarkSizes }) {
  const { at, text, sizes } = props;
  return (
    <text
      className="mark-letters"
      x={at[0]}
      y={at[1] + sizes.letter * 0.36}
      fontSize={sizes.letter}
      textAnchor="middle"
      aria-hidden="true"
    >
      {text}
    </text>
  );
}

function straightPath(...through: readonly Point[]): string {
  return pathThrough({ through, isClosed: false, isStraight: true });
}
