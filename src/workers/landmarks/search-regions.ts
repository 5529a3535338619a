/** A rectangle of the picture, in pixels. */
export interface Region {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Chosen: squares of this share of the picture's short side; a face that is missed in half of the side is too far anyway. */
const SQUARE_SHARES = [1, 0.5] as const;

/** Chosen: neighbouring squares share half of their width, so that every face of up to half a square lies whole in one. */
const STRIDE_SHARE = 0.5;

/**
 * Where to look for a face that was not seen in the whole picture, in rounds of growing detail: the detector sees its
 * picture at 128 x 128 pixels, where a small face is nothing. Each round covers the whole picture, its centre first.
 */
export function searchRegions(widthPx: number, heightPx: number): readonly (readonly Region[])[] {
  const shortPx = Math.min(widthPx, heightPx);
  return SQUARE_SHARES.map((share) => {
    const sidePx = Math.round(shortPx * share);
    const regions = starts(heightPx, sidePx).flatMap((yPx) =>
      starts(widthPx, sidePx).map((xPx) => ({ xPx, yPx, widthPx: sidePx, heightPx: sidePx })),
    );
    const offCentre = (region: Region) =>
      Math.hypot(region.xPx + sidePx / 2 - widthPx / 2, region.yPx + sidePx / 2 - heightPx / 2);
    return regions.sort((a, b) => offCentre(a) - offCentre(b));
  });
}

/** Evenly spread starts of pieces of length `sidePx` that cover `lengthPx`. */
function starts(lengthPx: number, sidePx: number): readonly number[] {
  const slack = lengthPx - sidePx;
  const steps = Math.ceil(slack / (sidePx * STRIDE_SHARE) - 1e-9);
  if (steps <= 0) return [Math.max(0, Math.round(slack / 2))];
  return Array.from({ length: steps + 1 }, (_, index) => Math.round((slack * index) / steps));
}
