import type { LiveFace, LiveSight } from '../core/camera/live-sight.js';
import { SEEN_SHARE_ADVICE } from '../core/camera/picture-limits.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { SIDES } from '../core/units/side.js';

/** Where the pixels of a frame lie on a canvas: its own pixels per pixel of the frame, and the frame's corner. */
export interface SightView {
  readonly scale: number;
  readonly leftPx: number;
  readonly topPx: number;
  /** pixels of the canvas per CSS pixel: lines are as wide on every screen */
  readonly pixelRatio: number;
}

export interface SightColours {
  readonly edge: string;
  readonly card: string;
  readonly iris: string;
  readonly line: string;
}

/** CSS pixels; in a small picture lines are thinner, so that they do not hide the eyes. */
const LINE_WIDTH = { thinnest: 1, widest: 1.75 } as const;
/** The casing is so many times as wide as its line. */
const CASING = 2.4;
/** In widths of the line. */
const DASH = [4, 3.5];
/** Width of a line as a share of an iris' radius. */
const LINE_SHARE = 0.14;

/**
 * Draws what was found in a frame over it: thin lines in a dark casing. What was measured is solid, what is only guessed from the
 * landmarks, or an edge of the card that is hardly seen, dashed.
 */
export function drawSight(
  context: CanvasRenderingContext2D,
  sight: LiveSight,
  view: SightView,
  colours: SightColours,
): void {
  const { canvas } = context;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, canvas.width, canvas.height);
  const strokes = strokesOf(sight, colours);
  const width = lineWidth(sight, view);
  context.lineJoin = 'round';
  for (const isCasing of [true, false]) {
    context.lineWidth = isCasing ? CASING * width : width;
    for (const { colour, isGuessed, trace } of strokes) {
      context.beginPath();
      trace(context, view);
      context.strokeStyle = isCasing ? colours.edge : colour;
      // The casing goes on between dashes: light and dark take turns, so that they are seen on any skin.
      context.setLineDash(isGuessed && !isCasing ? DASH.map((lengths) => lengths * width) : []);
      context.stroke();
    }
  }
}

/** Pixels of the canvas. */
function lineWidth({ face }: LiveSight, { scale, pixelRatio }: SightView): number {
  const { thinnest, widest } = LINE_WIDTH;
  if (face === null) return widest * pixelRatio;
  const wanted = LINE_SHARE * scale * face.iris.R.radiusPx;
  return Math.min(widest * pixelRatio, Math.max(thinnest * pixelRatio, wanted));
}

/** How a frame of this size lies in a box, as large as it goes, in the middle. */
export function viewInBox(
  frame: { readonly widthPx: number; readonly heightPx: number },
  box: { readonly width: number; readonly height: number },
  pixelRatio: number,
): SightView {
  const scale = Math.min(box.width / frame.widthPx, box.height / frame.heightPx);
  return {
    scale,
    leftPx: (box.width - scale * frame.widthPx) / 2,
    topPx: (box.height - scale * frame.heightPx) / 2,
    pixelRatio,
  };
}

interface Stroke {
  readonly colour: string;
  readonly isGuessed: boolean;
  readonly trace: (context: CanvasRenderingContext2D, view: SightView) => void;
}

function strokesOf({ face, card }: LiveSight, colours: SightColours): readonly Stroke[] {
  const ofCard: Stroke[] =
    card === null
      ? []
      : card.corners.map((corner, index) => ({
          colour: colours.card,
          isGuessed: (card.edgeSupport[index] ?? 0) < SEEN_SHARE_ADVICE,
          trace: polyline([corner, card.corners[(index + 1) % 4] ?? corner]),
        }));
  return face === null ? ofCard : [...ofCard, ...strokesOfFace(face, colours)];
}

function strokesOfFace({ iris, lids, midline }: LiveFace, colours: SightColours): readonly Stroke[] {
  return [
    ...SIDES.flatMap((side) => [
      { colour: colours.line, isGuessed: false, trace: polyline(lids[side].upper) },
      { colour: colours.line, isGuessed: false, trace: polyline(lids[side].lower) },
      { colour: colours.iris, isGuessed: iris[side].source === 'landmarks', trace: ring(iris[side]) },
    ]),
    // Always the landmarks': it follows the nose, which has no edge there.
    { colour: colours.line, isGuessed: true, trace: polyline(midline) },
  ];
}

function polyline(points: readonly ImagePoint[]): Stroke['trace'] {
  return (context, { scale, leftPx, topPx }) => {
    points.forEach(({ xPx, yPx }, index) => {
      const [x, y] = [leftPx + scale * xPx, topPx + scale * yPx];
      if (index === 0) context.moveTo(x, y);
      else context.lineTo(x, y);
    });
  };
}

function ring({ centre, radiusPx }: LiveFace['iris']['R']): Stroke['trace'] {
  return (context, { scale, leftPx, topPx }) => {
    context.arc(leftPx + scale * centre.xPx, topPx + scale * centre.yPx, scale * radiusPx, 0, 2 * Math.PI);
  };
}
