import type { ImagePoint } from '../geometry/vector.js';
import type { BothSides } from '../units/side.js';

/** Variances and covariance of a point in the picture, in px². */
export interface PointCovariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** A point in the picture with its doubt. */
export interface MeasuredPoint extends ImagePoint {
  readonly covariance: PointCovariance;
}

/** How the card was found: by its four edges, by its four markers, or by corners that a person placed. */
export type CardSource = 'edges' | 'markers' | 'hand';

/** Where on the face the card is held. */
export type CardPosition = 'forehead' | 'upper-lip' | 'chin';

/** Four corners in the order top left, top right, bottom right, bottom left, as seen in the unmirrored picture. */
export type FourCorners<Point> = readonly [topLeft: Point, topRight: Point, bottomRight: Point, bottomLeft: Point];

export interface CardObservation {
  readonly source: CardSource;
  /** the sharp corners in which the straight edges would meet: the real corners of an ID-1 card are round */
  readonly corners: FourCorners<MeasuredPoint>;
  /** share of each edge (top, right, bottom, left) that a step of brightness or colour supports, 0 to 1 */
  readonly edgeSupport: FourCorners<number>;
  readonly position: CardPosition;
}

/** The edge of an iris: an ellipse in the picture. */
export interface IrisObservation {
  readonly centre: MeasuredPoint;
  /** mean radius of the ellipse, with its standard uncertainty, in px */
  readonly radiusPx: number;
  readonly radiusUncertaintyPx: number;
  /** share of the sampled edge that carried the fit, 0 to 1 */
  readonly support: number;
  readonly source: 'edges' | 'hand';
}

/** The edge of a pupil, where it can be told from the iris. */
export interface PupilObservation {
  readonly centre: MeasuredPoint;
  readonly radiusPx: number;
  readonly radiusUncertaintyPx: number;
}

/** The flanks of the nose at a level below the crest of its bridge, as the picture shows them. */
export interface BridgeObservation {
  /** the level below the crest, mm (at the mean face's scale) */
  readonly belowCrestMm: 10 | 15;
  readonly R: ImagePoint;
  readonly L: ImagePoint;
  /** standard uncertainty of each across the flank, px */
  readonly uncertaintyPx: number;
}

/** Upper and lower lid margin on the vertical (of the head) through the pupil's centre. */
export interface LidObservation {
  readonly upper: ImagePoint;
  readonly lower: ImagePoint;
  /** standard uncertainty of each along the vertical, in px */
  readonly uncertaintyPx: number;
  readonly source: 'edges' | 'hand';
}

/** The midline of the bridge, as a point at the level of the eyes. */
export interface MidlineObservation {
  readonly point: ImagePoint;
  /**
   * where the midline crosses the line between the pupils: unlike the bridge's skin it does not move aside as the head turns; null where a
   * hand placed the point, on the skin
   */
  readonly betweenPupils: ImagePoint | null;
  /** standard uncertainty across the midline, in px */
  readonly uncertaintyPx: number;
  readonly source: 'landmarks' | 'hand';
}

/** One of the 478 points of the face landmark model: pixels, and the model's relative depth in the scale of a pixel. */
export interface Landmark extends ImagePoint {
  readonly depthPx: number;
}

/** The sides of the head and of the temples as the outline of the face shows them; null where it could not be seen. */
export interface OutlineObservation {
  readonly head: BothSides<ImagePoint>;
  readonly temple: BothSides<ImagePoint>;
  /** standard uncertainty of each across the outline, in px */
  readonly uncertaintyPx: number;
  /** null where the ears' upper ends are not plainly seen */
  readonly skinEdge: SkinEdgeObservation | null;
}

/** Where the skin of the head ends just above and in front of the upper end of each ear. */
export interface SkinEdgeObservation extends BothSides<ImagePoint> {
  /** standard uncertainty of each across the edge, in px */
  readonly uncertaintyPx: number;
}

/** All that was found in one picture: everything that the estimates follow from. Plain data, may cross to a worker. */
export interface PictureFeatures {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly landmarks: readonly Landmark[];
  readonly card: CardObservation;
  readonly iris: BothSides<IrisObservation>;
  /** null where the pupil cannot be told from the iris */
  readonly pupil: BothSides<PupilObservation | null>;
  readonly lids: BothSides<LidObservation>;
  readonly midline: MidlineObservation;
  readonly outline: OutlineObservation;
  /** none where the card hides the nose */
  readonly bridge: readonly BridgeObservation[];
}
