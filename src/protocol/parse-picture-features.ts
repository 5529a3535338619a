import type {
  BridgeObservation,
  PupilObservation,
  CardObservation,
  FourCorners,
  IrisObservation,
  LidObservation,
  MeasuredPoint,
  MidlineObservation,
  OutlineObservation,
  PictureFeatures,
} from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { BothSides } from '../core/units/side.js';
import { parseLandmarks } from './landmarks-messages.js';
import { isFiniteNumber, isRecord } from './message.js';

type Check<Value> = (value: unknown) => value is Value;

/** Checks that every member passes its own check. A member that is added to the type does not compile until it is checked. */
function shape<Value>(members: { readonly [Key in keyof Value]-?: Check<Value[Key]> }): Check<Value> {
  const checks = Object.entries<Check<unknown>>(members);
  return (value): value is Value => isRecord(value) && checks.every(([name, check]) => check(value[name]));
}

function orNull<Value>(check: Check<Value>): Check<Value | null> {
  return (value): value is Value | null => value === null || check(value);
}

function listOf<Value>(check: Check<Value>): Check<readonly Value[]> {
  return (value): value is readonly Value[] => Array.isArray(value) && value.every(check);
}

function oneOf<Word extends string | number>(...words: readonly Word[]): Check<Word> {
  return (value): value is Word => (words as readonly unknown[]).includes(value);
}

function four<Point>(check: Check<Point>): Check<FourCorners<Point>> {
  return (value): value is FourCorners<Point> => Array.isArray(value) && value.length === 4 && value.every(check);
}

function both<Value>(check: Check<Value>): Check<BothSides<Value>> {
  return shape<BothSides<Value>>({ R: check, L: check });
}

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
    uncertaintyPx: isFiniteNumber,
    source: oneOf('landmarks', 'hand'),
  }),
  outline: shape<OutlineObservation>({
    head: both(isImagePoint),
    temple: both(isImagePoint),
    uncertaintyPx: isFiniteNumber,
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
