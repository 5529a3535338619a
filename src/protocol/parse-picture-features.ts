import type {
  BridgeObservation,
  PupilObservation,
  CardObservation,
  IrisObservation,
  LidObservation,
  MeasuredPoint,
  MidlineObservation,
  OutlineObservation,
  PictureFeatures,
  SkinEdgeObservation,
} from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { both, four, listOf, oneOf, orNull, shape } from './checks.js';
import { parseLandmarks } from './landmarks-messages.js';
import { isFiniteNumber } from './message.js';

const isImagePoint = shape<ImagePoint>({ xPx: isFiniteNumber, yPx: isFiniteNumber });

const isMeasuredPoint = shape<MeasuredPoint>({
  xPx: isFiniteNumber,
  yPx: isFiniteNumber,
  covariance: shape<MeasuredPoint['covariance']>({ xx: isFiniteNumber, xy: isFiniteNumber, yy: isFiniteNumber }),
});

const isPictureFeatures = shape<PictureFeatures>({
  widthPx: isFiniteNumber,
  heightPx: isFiniteNumber,
  landmarks: (value): value is PictureFeatures['landmarks'] => parseLandmarks(value) !== null,
  card: shape<CardObservation>({
    source: oneOf('edges', 'markers', 'hand'),
    corners: four(isMeasuredPoint),
    edgeSupport: four(isFiniteNumber),
    position: oneOf('forehead', 'upper-lip', 'chin'),
  }),
  iris: both(
    shape<IrisObservation>({
      centre: isMeasuredPoint,
      radiusPx: isFiniteNumber,
      radiusUncertaintyPx: isFiniteNumber,
      support: isFiniteNumber,
      source: oneOf('edges', 'hand'),
    }),
  ),
  pupil: both(
    orNull(
      shape<PupilObservation>({
        centre: isMeasuredPoint,
        radiusPx: isFiniteNumber,
        radiusUncertaintyPx: isFiniteNumber,
      }),
    ),
  ),
  lids: both(
    shape<LidObservation>({
      upper: isImagePoint,
      lower: isImagePoint,
      uncertaintyPx: isFiniteNumber,
      source: oneOf('edges', 'hand'),
    }),
  ),
  midline: shape<MidlineObservation>({
    point: isImagePoint,
    betweenPupils: orNull(isImagePoint),
    uncertaintyPx: isFiniteNumber,
    source: oneOf('landmarks', 'hand'),
  }),
  outline: shape<OutlineObservation>({
    head: both(isImagePoint),
    temple: both(isImagePoint),
    uncertaintyPx: isFiniteNumber,
    skinEdge: orNull(shape<SkinEdgeObservation>({ R: isImagePoint, L: isImagePoint, uncertaintyPx: isFiniteNumber })),
  }),
  bridge: listOf(
    shape<BridgeObservation>({
      belowCrestMm: oneOf(10, 15),
      R: isImagePoint,
      L: isImagePoint,
      uncertaintyPx: isFiniteNumber,
    }),
  ),
});

/** The features of a picture; null where a part is missing or not of its type. */
export function parsePictureFeatures(value: unknown): PictureFeatures | null {
  return isPictureFeatures(value) ? value : null;
}
