/** A rectangle of the picture, in pixels. */
export interface Region {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * Chosen: the squares get smaller until they are at most so wide. A face of 180 px, the smallest that can be measured (150 mm at
 * 1.2 px/mm), fills more than a fifth of such a square, which the detector sees surely.
 */
const FINEST_SIDE_PX = 800;

/** Chosen: how far the next square is away, as a share of its side: faces of up to a third of the side lie whole in one. */
const STRIDE_SHARE = 2 / 3;

/**
 * Where to look for a face that was not seen in the whole picture, in rounds of growing detail: the detector sees its
 * picture at 128 x 128 pixels, where a small face is nothing. Each round covers the whole picture, its centre first.
 */
export function searchRegions(widthPx: number, heightPx: number): readonly (readonly Region[])[] {
  return sides(Math.min(widthPx, heightPx)).map((sidePx) => {
    const regions = starts(heightPx, sidePx).flatMap((yPx) =>
      starts(widthPx, sidePx).map((xPx) => ({ xPx, yPx, widthPx: sidePx, heightPx: sidePx })),
    );
    const offCentre = (region: Region) =>
      Math.hypot(region.xPx + sidePx / 2 - widthPx / 2, region.yPx + sidePx / 2 - heightPx / 2);
    return regions.sort((a, b) => offCentre(a) - offCentre(b));
  });
}

/** Each half of the one before, at least two: a face too far away is then found, and refused for what it is. */
function sides(shortPx: number): readonly number[] {
  const found = [shortPx];
  for (let sidePx = shortPx / 2; ; sidePx /= 2) {
    found.push(Math.round(sidePx));
    if (sidePx <= FINEST_SIDE_PX) return found;
  }
}

/** Evenly spread starts of pieces of length `sidePx` that cover `lengthPx`. */
function starts(lengthPx: number, sidePx: number): readonly number[] {
  const slack = lengthPx - sidePx;
  const steps = Math.ceil(slack / (sidePx * STRIDE_SHARE) - 1e-9);
  if (steps <= 0) return [Math.max(0, Math.round(slack / 2))];
  return Array.from({ length: steps + 1 }, (_, index) => Math.round((slack * index) / steps));
}
