import type { ImagePoint } from '../geometry/vector.js';
import type { BothSides } from '../units/side.js';
import type { CardPosition, FourCorners } from './features.js';

/** What one frame of a running camera shows, as far as it can be told at the camera's rate. Plain data, all points in pixels of the frame. */
export interface LiveSight {
  readonly widthPx: number;
  readonly heightPx: number;
  /** null where no face is seen */
  readonly face: LiveFace | null;
  /** null where no card is followed */
  readonly card: LiveCard | null;
  /** null unless both irises and the card are followed */
  readonly estimate: LiveEstimate | null;
}

/** A face that is followed from frame to frame. */
export interface LiveFace {
  readonly iris: BothSides<LiveIris>;
  /** the margins of the lids, from the outer to the inner corner of each eye */
  readonly lids: BothSides<{ readonly upper: readonly ImagePoint[]; readonly lower: readonly ImagePoint[] }>;
  /** the midline of the face, from the brow down to the tip of the nose */
  readonly midline: readonly [top: ImagePoint, bottom: ImagePoint];
  /** around all landmarks */
  readonly bounds: {
    readonly leftPx: number;
    readonly topPx: number;
    readonly widthPx: number;
    readonly heightPx: number;
  };
  /** positive: the face is turned to picture right, that is to the wearer's left; within some 5 degrees */
  readonly yawDeg: number;
  /** positive: the chin is lowered; within some 8 degrees */
  readonly nodDeg: number;
  /** positive: the wearer's left eye stands lower in the picture */
  readonly rollDeg: number;
  /** opening between the lids over the diameter of the iris */
  readonly opening: BothSides<number>;
  /** level, of 255, of the lightest part of the eyes: the white */
  readonly whiteLevel: number;
  /** mean level of the wearer's right half of the face over that of the left half: 1 in even light */
  readonly lightRatio: number;
}

/** An iris in a running picture. */
export interface LiveIris {
  readonly centre: ImagePoint;
  readonly radiusPx: number;
  /** standard uncertainty of the centre across the picture, px */
  readonly uncertaintyPx: number;
  /** where the edge was not seen, the landmarks' iris stands in: to be drawn, not to be measured with */
  readonly source: 'edges' | 'landmarks';
  /** width over which the edge rises, as a share of the radius; null where the edge was not seen. Motion and blur widen it. */
  readonly softness: number | null;
}

/** A card that is followed from frame to frame. */
export interface LiveCard {
  readonly corners: FourCorners<ImagePoint>;
  /** share of each edge (top, right, bottom, left) that was seen, 0 to 1 */
  readonly edgeSupport: FourCorners<number>;
  /** width over which its edges rise, px */
  readonly edgeWidthPx: number;
  /** angle between the card's normal and the line of sight; null where an iris is not seen, beside which pose it has is not told */
  readonly tiltDeg: number | null;
  /** how far the card is turned in its plane against the line between the eyes; positive: its wearer's left end is lower */
  readonly slantDeg: number;
  readonly position: CardPosition;
}

/** A quick estimate from the frames just seen. The burst, not this, is what is measured. */
export interface LiveEstimate {
  readonly pdFarMm: number;
  /** standard uncertainty of it, with all that more frames of the same kind do not remove */
  readonly standardUncertaintyMm: number;
  /** from the camera to the eyes */
  readonly distanceMm: number;
  readonly pixelsPerMm: number;
  /** how many frames went into it */
  readonly frameCount: number;
}
