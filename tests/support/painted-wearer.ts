import type { EyesSeed } from '../../src/core/camera/face-landmarks.js';
import type { FourCorners } from '../../src/core/camera/features.js';
import { applyHomography, homographyFromFourPoints } from '../../src/core/geometry/homography.js';
import type { ImagePoint } from '../../src/core/geometry/vector.js';
import {
  disc,
  intersectionOf,
  paint,
  paintBackground,
  rectangleInPlane,
  skinAt,
  type Canvas,
  type Rgb,
  type Shape,
} from './painting.js';
import {
  axesOfSyntheticHead,
  cardCornersOfScene,
  photograph,
  pupilsOfScene,
  type SyntheticScene,
} from './synthetic-face.js';

/** What is printed on a card, in card millimetres from its middle. */
export interface Print {
  readonly centreMm: { readonly x: number; readonly y: number };
  readonly halfWidthMm: number;
  readonly halfHeightMm: number;
  readonly colour: Rgb;
}

export interface PaintedCard {
  readonly colour: Rgb;
  readonly prints: readonly Print[];
}

/** A card like many: plain with a printed stripe along its upper edge and a small picture. */
export function printedCard(colour: Rgb, printColour: Rgb): PaintedCard {
  return {
    colour,
    prints: [
      { centreMm: { x: 0, y: -14 }, halfWidthMm: 42.8, halfHeightMm: 5, colour: printColour },
      { centreMm: { x: 24, y: 10 }, halfWidthMm: 9, halfHeightMm: 7, colour: printColour },
    ],
  };
}

/** The sharp corners of the scene's card in the picture. */
export function cardInPicture(scene: SyntheticScene): FourCorners<ImagePoint> {
  const [a, b, c, d] = cardCornersOfScene(scene).map((corner) => photograph(scene.camera, corner));
  return [a!, b!, c!, d!];
}

const CORNER_RADIUS_MM = 3.18;

/** Paints a card of ID-1 proportions between four sharp corners, its own corners round. */
export function paintCard(canvas: Canvas, corners: FourCorners<ImagePoint>, card: PaintedCard, blurPx?: number): void {
  const [width, height] = [42.8, 26.99];
  const found = homographyFromFourPoints(
    corners.map(({ xPx, yPx }) => ({ x: xPx, y: yPx })),
    [
      { x: -width, y: -height },
      { x: width, y: -height },
      { x: width, y: height },
      { x: -width, y: height },
    ],
  );
  if (!found.ok) throw new Error(found.failure.kind);
  const toCard = (x: number, y: number) => applyHomography(found.value, { x, y });
  const outline = rectangleInPlane(toCard, width, height, CORNER_RADIUS_MM);
  // Print is laid on the whole sheet first: the card's rim then cuts all of it alike.
  const sheet = paintBackground(canvas.widthPx, canvas.heightPx, () => card.colour);
  for (const print of card.prints) {
    paint(
      sheet,
      rectangleInPlane(toCard, print.halfWidthMm, print.halfHeightMm, 0, print.centreMm),
      print.colour,
      blurPx,
    );
  }
  paint(canvas, outline, colourOf(sheet), blurPx);
}

function colourOf({ widthPx, levels }: Canvas): (xPx: number, yPx: number) => Rgb {
  return (x, y) => {
    const at = 3 * (Math.floor(y) * widthPx + Math.floor(x));
    return [levels[at]!, levels[at + 1]!, levels[at + 2]!];
  };
}

export interface PaintedEye {
  readonly centre: ImagePoint;
  readonly irisRadiusPx: number;
  /** lid margins above and below the centre along the vertical of the head */
  readonly upperPx: number;
  readonly lowerPx: number;
  readonly rollRad: number;
  readonly white?: Rgb;
  readonly iris?: Rgb;
}

/** The opening between two lids that arch from corner to corner. */
export function eyeOpening({ centre, irisRadiusPx, upperPx, lowerPx, rollRad }: PaintedEye): Shape {
  const halfPx = 2.4 * irisRadiusPx;
  const arch = (heightPx: number, up: 1 | -1): Shape => {
    const radius = (halfPx ** 2 + heightPx ** 2) / (2 * heightPx);
    const below = up * (radius - heightPx);
    return disc({ xPx: centre.xPx - below * Math.sin(rollRad), yPx: centre.yPx + below * Math.cos(rollRad) }, radius);
  };
  return intersectionOf(arch(upperPx, 1), arch(lowerPx, -1));
}

/** Paints white, iris and pupil of an eye, cut by its lids. */
export function paintEye(canvas: Canvas, eye: PaintedEye): void {
  const { centre, irisRadiusPx } = eye;
  const inside = paintBackground(canvas.widthPx, canvas.heightPx, () => eye.white ?? [222, 214, 208]);
  paint(inside, disc(centre, irisRadiusPx), eye.iris ?? [92, 66, 48]);
  paint(inside, disc(centre, 0.35 * irisRadiusPx), [22, 20, 20]);
  paint(canvas, eyeOpening(eye), colourOf(inside));
}

/** The direction from the right to the left eye of the scene in its picture, and where the eyes are. */
export function eyesOfScene(scene: SyntheticScene): EyesSeed {
  const pupils = pupilsOfScene(scene);
  const R = photograph(scene.camera, pupils.R);
  const L = photograph(scene.camera, pupils.L);
  const radiusPx = (depthMm: number): number => ((scene.irisMm / 2) * scene.camera.focalPx) / depthMm;
  return {
    irisCentre: { R, L },
    irisRadiusPx: { R: radiusPx(pupils.R[2]), L: radiusPx(pupils.L[2]) },
    middle: { xPx: (R.xPx + L.xPx) / 2, yPx: (R.yPx + L.yPx) / 2 },
    spanPx: Math.hypot(L.xPx - R.xPx, L.yPx - R.yPx),
    rollRad: Math.atan2(L.yPx - R.yPx, L.xPx - R.xPx),
  };
}

/** Skin with both eyes of the scene; a card is laid on with `paintCard`. */
export function paintFace(scene: SyntheticScene, brightness = 1): Canvas {
  const { widthPx, heightPx, focalPx } = scene.camera;
  const canvas = paintBackground(widthPx, heightPx, skinAt(brightness));
  const pupils = pupilsOfScene(scene);
  const { irisCentre, irisRadiusPx, rollRad } = eyesOfScene(scene);
  const { y } = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  for (const side of ['R', 'L'] as const) {
    const scalePx = (focalPx / pupils[side][2]) * Math.hypot(y[0], y[1]);
    const shade = ([red, green, blue]: Rgb): Rgb => [red * brightness, green * brightness, blue * brightness];
    paintEye(canvas, {
      centre: irisCentre[side],
      irisRadiusPx: irisRadiusPx[side],
      upperPx: scene.lidsMm[side].upper * scalePx,
      lowerPx: scene.lidsMm[side].lower * scalePx,
      rollRad,
      white: shade([222, 214, 208]),
      iris: shade([92, 66, 48]),
    });
  }
  return canvas;
}
