import type { RgbaImage } from '../../src/core/camera/pixel-plane.js';
import type { FourCorners } from '../../src/core/camera/features.js';
import { applyHomography, homographyFromFourPoints } from '../../src/core/geometry/homography.js';
import type { ImagePoint } from '../../src/core/geometry/vector.js';

// Pictures made from pictures: what a camera would show if the wearer, the card or the light were otherwise.

type Rgba = readonly [number, number, number, number];

export function blankImage(widthPx: number, heightPx: number, level: number): RgbaImage {
  const data = new Uint8ClampedArray(widthPx * heightPx * 4).fill(level);
  for (let at = 3; at < data.length; at += 4) data[at] = 255;
  return { widthPx, heightPx, data };
}

/** A picture whose colour at each pixel's centre is computed; null leaves that of `base`. */
export function repainted(base: RgbaImage, colourAt: (at: ImagePoint) => Rgba | null): RgbaImage {
  const data = new Uint8ClampedArray(base.data);
  for (let row = 0; row < base.heightPx; row++) {
    for (let column = 0; column < base.widthPx; column++) {
      const colour = colourAt({ xPx: column + 0.5, yPx: row + 0.5 });
      if (colour !== null) data.set(colour, (row * base.widthPx + column) * 4);
    }
  }
  return { ...base, data };
}

/** The colour between the four nearest pixels; that of the rim beyond it. Pixels count from the picture's corner. */
export function colourOf(image: RgbaImage, at: ImagePoint): Rgba {
  const x = Math.min(Math.max(at.xPx - 0.5, 0), image.widthPx - 1);
  const y = Math.min(Math.max(at.yPx - 0.5, 0), image.heightPx - 1);
  const left = Math.floor(x);
  const top = Math.floor(y);
  const right = Math.min(left + 1, image.widthPx - 1);
  const bottom = Math.min(top + 1, image.heightPx - 1);
  const channel = (column: number, row: number, offset: number): number =>
    image.data[(row * image.widthPx + column) * 4 + offset] ?? 0;
  const between = (offset: number): number => {
    const above = channel(left, top, offset) * (1 - (x - left)) + channel(right, top, offset) * (x - left);
    const below = channel(left, bottom, offset) * (1 - (x - left)) + channel(right, bottom, offset) * (x - left);
    return above * (1 - (y - top)) + below * (y - top);
  };
  return [between(0), between(1), between(2), 255];
}

/** Every channel multiplied, as by less light; the noise that a camera would add is not. */
export function darkened(image: RgbaImage, factor: number): RgbaImage {
  return { ...image, data: image.data.map((level, at) => (at % 4 === 3 ? level : Math.round(level * factor))) };
}

/** Blurred as by a lens out of focus: three passes of a mean over `2 radius + 1` pixels, along rows and columns. */
export function blurred(image: RgbaImage, radiusPx: number): RgbaImage {
  let data = Float32Array.from(image.data);
  const pass = (length: number, lines: number, step: number, lineStep: number): void => {
    const result = new Float32Array(data.length);
    for (let line = 0; line < lines; line++) {
      for (let channel = 0; channel < 4; channel++) {
        const at = (index: number): number =>
          data[line * lineStep + Math.min(Math.max(index, 0), length - 1) * step + channel] ?? 0;
        let sum = 0;
        for (let index = -radiusPx; index <= radiusPx; index++) sum += at(index);
        for (let index = 0; index < length; index++) {
          result[line * lineStep + index * step + channel] = sum / (2 * radiusPx + 1);
          sum += at(index + radiusPx + 1) - at(index - radiusPx);
        }
      }
    }
    data = result;
  };
  for (let times = 0; times < 3; times++) {
    pass(image.widthPx, image.heightPx, 4, image.widthPx * 4);
    pass(image.heightPx, image.widthPx, image.widthPx * 4, 4);
  }
  return { ...image, data: Uint8ClampedArray.from(data) };
}

/** The picture smaller by `factor`, in the middle of a grey one of the old size; each pixel the mean of those it covers. */
export function fartherAway(image: RgbaImage, factor: number): RgbaImage {
  const covered = 1 / factor;
  const samples = Math.ceil(covered);
  const left = (image.widthPx * (1 - factor)) / 2;
  const top = (image.heightPx * (1 - factor)) / 2;
  return repainted(blankImage(image.widthPx, image.heightPx, 150), ({ xPx, yPx }) => {
    const centre = { xPx: (xPx - left) * covered, yPx: (yPx - top) * covered };
    if (centre.xPx < 0 || centre.yPx < 0 || centre.xPx > image.widthPx || centre.yPx > image.heightPx) return null;
    const sum = [0, 0, 0];
    for (let row = 0; row < samples; row++) {
      for (let column = 0; column < samples; column++) {
        const colour = colourOf(image, {
          xPx: centre.xPx + ((column + 0.5) / samples - 0.5) * covered,
          yPx: centre.yPx + ((row + 0.5) / samples - 0.5) * covered,
        });
        sum.forEach((total, channel) => (sum[channel] = total + (colour[channel] ?? 0)));
      }
    }
    const [red = 0, green = 0, blue = 0] = sum.map((total) => total / samples ** 2);
    return [red, green, blue, 255];
  });
}

/** The middle half of one picture left of the middle half of another of the same size. */
export function sideBySide(left: RgbaImage, right: RgbaImage): RgbaImage {
  const quarter = left.widthPx / 4;
  return repainted(left, ({ xPx, yPx }) =>
    xPx < 2 * quarter ? colourOf(left, { xPx: xPx + quarter, yPx }) : colourOf(right, { xPx: xPx - quarter, yPx }),
  );
}

/** A region of the picture. */
export type Region = (at: ImagePoint) => boolean;

/** The inside of a convex quadrilateral (clockwise as seen), larger all around by `marginPx`. */
export function insideOf(corners: FourCorners<ImagePoint>, marginPx: number): Region {
  return (at) =>
    corners.every((from, index) => {
      const to = corners[(index + 1) % 4] ?? from;
      const across = (to.xPx - from.xPx) * (at.yPx - from.yPx) - (to.yPx - from.yPx) * (at.xPx - from.xPx);
      return across / Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx) > -marginPx;
    });
}

export function ellipse(centre: ImagePoint, halfWidthPx: number, halfHeightPx: number): Region {
  return ({ xPx, yPx }) => ((xPx - centre.xPx) / halfWidthPx) ** 2 + ((yPx - centre.yPx) / halfHeightPx) ** 2 < 1;
}

/**
 * A region painted over so that no edge is left: its colours are the smoothest that go on from those around it (Laplace's
 * equation, by successive over-relaxation).
 */
export function paintedOver(image: RgbaImage, region: Region): RgbaImage {
  const inside: number[] = [];
  for (let row = 1; row < image.heightPx - 1; row++) {
    for (let column = 1; column < image.widthPx - 1; column++) {
      if (region({ xPx: column + 0.5, yPx: row + 0.5 })) inside.push(row * image.widthPx + column);
    }
  }
  const levels = Float32Array.from(image.data);
  const RELAXATION = 1.95;
  for (let sweep = 0; sweep < 400; sweep++) {
    for (const pixel of inside) {
      for (let channel = 0; channel < 3; channel++) {
        const at = pixel * 4 + channel;
        const around =
          ((levels[at - 4] ?? 0) +
            (levels[at + 4] ?? 0) +
            (levels[at - image.widthPx * 4] ?? 0) +
            (levels[at + image.widthPx * 4] ?? 0)) /
          4;
        levels[at] = (levels[at] ?? 0) + RELAXATION * (around - (levels[at] ?? 0));
      }
    }
  }
  return { ...image, data: Uint8ClampedArray.from(levels) };
}

/** The content of one quadrilateral drawn into another one of a picture, as a plane is seen. */
export function drawnInto(
  base: RgbaImage,
  target: FourCorners<ImagePoint>,
  source: RgbaImage,
  from: FourCorners<ImagePoint>,
): RgbaImage {
  const plane = ({ xPx, yPx }: ImagePoint) => ({ x: xPx, y: yPx });
  const back = homographyFromFourPoints(target.map(plane), from.map(plane));
  if (!back.ok) throw new Error('Three corners lie in line.');
  const homography = back.value;
  const inside = insideOf(target, 0);
  return repainted(base, (at) => {
    if (!inside(at)) return null;
    const { x, y } = applyHomography(homography, plane(at));
    return colourOf(source, { xPx: x, yPx: y });
  });
}

/** Four corners, each moved. */
export function moved(
  corners: FourCorners<ImagePoint>,
  move: (corner: ImagePoint, index: number) => ImagePoint,
): FourCorners<ImagePoint> {
  const [topLeft, topRight, bottomRight, bottomLeft] = corners;
  return [move(topLeft, 0), move(topRight, 1), move(bottomRight, 2), move(bottomLeft, 3)];
}

/**
 * A head turned to the picture's right, as if it were painted on an upright ellipsoid that is seen from afar: each point of
 * the turned ellipsoid takes the colour of the point that stood there before.
 */
export function turnedHead(
  image: RgbaImage,
  head: { readonly centre: ImagePoint; readonly halfWidthPx: number; readonly halfHeightPx: number },
  turnRad: number,
): RgbaImage {
  const { centre, halfWidthPx, halfHeightPx } = head;
  return repainted(image, ({ xPx, yPx }) => {
    const x = (xPx - centre.xPx) / halfWidthPx;
    const y = (yPx - centre.yPx) / halfHeightPx;
    const height = 1 - x * x - y * y;
    if (height <= 0) return null;
    const z = Math.sqrt(height);
    const before = x * Math.cos(turnRad) - z * Math.sin(turnRad);
    const depth = x * Math.sin(turnRad) + z * Math.cos(turnRad);
    // what was hidden before is not known: the rim's colour is drawn out
    const seen = depth > 0 ? before : -Math.sqrt(Math.max(0, 1 - y * y));
    return colourOf(image, { xPx: centre.xPx + seen * halfWidthPx, yPx });
  });
}

/** Turned by quarters clockwise. */
export function quarterTurned(image: RgbaImage, quarters: 1 | 2 | 3): RgbaImage {
  let turned = image;
  for (let done = 0; done < quarters; done++) {
    const { widthPx, heightPx, data } = turned;
    const next = new Uint8ClampedArray(data.length);
    for (let row = 0; row < heightPx; row++) {
      for (let column = 0; column < widthPx; column++) {
        // the first row becomes the last column
        const from = (row * widthPx + column) * 4;
        next.set(data.subarray(from, from + 4), (column * heightPx + (heightPx - 1 - row)) * 4);
      }
    }
    turned = { widthPx: heightPx, heightPx: widthPx, data: next };
  }
  return turned;
}
