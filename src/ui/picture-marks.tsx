import type { PictureFeatures } from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { SIDES } from '../core/units/side.js';
import { headVertical } from '../session/handles.js';
import type { PictureRegion } from './picture-region.js';

/** What was found, drawn over a part of the picture: each thing has its own kind of line, with a dark edge around it. */
export function PictureMarks(props: { readonly features: PictureFeatures; readonly region: PictureRegion }) {
  const { features, region } = props;
  const shapes = <Shapes features={features} />;
  return (
    <svg
      className="picture-marks"
      viewBox={`${region.xPx} ${region.yPx} ${region.widthPx} ${region.heightPx}`}
      aria-hidden="true"
    >
      <g className="marks-edge">{shapes}</g>
      <g className="marks-line">{shapes}</g>
    </svg>
  );
}

function Shapes({ features }: { readonly features: PictureFeatures }) {
  const down = headVertical(features);
  const { midline, iris, lids, card, outline } = features;
  const eyeDistance = Math.hypot(iris.L.centre.xPx - iris.R.centre.xPx, iris.L.centre.yPx - iris.R.centre.yPx);
  return (
    <>
      <polygon
        className={card.source === 'hand' ? 'mark-card mark-by-hand' : 'mark-card'}
        points={card.corners.map(({ xPx, yPx }) => `${xPx},${yPx}`).join(' ')}
      />
      {SIDES.map((side) => {
        const { centre, radiusPx } = iris[side];
        return (
          <g key={side}>
            <circle className="mark-iris" cx={centre.xPx} cy={centre.yPx} r={radiusPx} />
            <Cross at={centre} arm={radiusPx * 0.22} />
            <LidBar at={lids[side].upper} down={down} half={radiusPx * 0.75} />
            <LidBar at={lids[side].lower} down={down} half={radiusPx * 0.75} />
          </g>
        );
      })}
      <line
        className="mark-midline"
        x1={midline.point.xPx - 0.55 * eyeDistance * down.xPx}
        y1={midline.point.yPx - 0.55 * eyeDistance * down.yPx}
        x2={midline.point.xPx + 0.75 * eyeDistance * down.xPx}
        y2={midline.point.yPx + 0.75 * eyeDistance * down.yPx}
      />
      {SIDES.map((side) => (
        <g key={side}>
          <Triangle at={outline.head[side]} size={eyeDistance * 0.07} towards={side === 'R' ? 1 : -1} />
          <Triangle at={outline.temple[side]} size={eyeDistance * 0.05} towards={side === 'R' ? 1 : -1} />
        </g>
      ))}
    </>
  );
}

function Cross({ at, arm }: { readonly at: ImagePoint; readonly arm: number }) {
  const { xPx: x, yPx: y } = at;
  return <path className="mark-cross" d={`M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}`} />;
}

function LidBar({ at, down, half }: { readonly at: ImagePoint; readonly down: ImagePoint; readonly half: number }) {
  const [alongX, alongY] = [down.yPx * half, -down.xPx * half];
  return (
    <line className="mark-lid" x1={at.xPx - alongX} y1={at.yPx - alongY} x2={at.xPx + alongX} y2={at.yPx + alongY} />
  );
}

/** A triangle outside the head whose tip touches it; `towards` is the direction of the tip in the picture. */
function Triangle({ at, size, towards }: { readonly at: ImagePoint; readonly size: number; readonly towards: 1 | -1 }) {
  const back = at.xPx - towards * size;
  return (
    <polygon
      className="mark-outline"
      points={`${at.xPx},${at.yPx} ${back},${at.yPx - size / 2} ${back},${at.yPx + size / 2}`}
    />
  );
}
