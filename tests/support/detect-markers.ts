import { openCvInNode } from '../../calibration/opencv-in-node.js';

/** Grey levels row by row, 0 black to 255 white. */
export interface GreyImage {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly levels: Uint8Array;
}

/** OpenCV counts from the centre of the top left pixel, this project from its outer corner. */
const PIXEL_CENTRE_PX = 0.5;

export interface DetectedMarker {
  readonly id: number;
  /** from the marker's own top left corner clockwise; pixels from the image's corner */
  readonly corners: readonly { readonly xPx: number; readonly yPx: number }[];
}

/** White paper with axis-parallel black rectangles, in pixels from the image's corner. Each pixel takes the grey of the share covered. */
export function paintRectangles(
  widthPx: number,
  heightPx: number,
  rectangles: readonly {
    readonly leftPx: number;
    readonly topPx: number;
    readonly rightPx: number;
    readonly bottomPx: number;
  }[],
): GreyImage {
  const ink = new Float64Array(widthPx * heightPx);
  const overlap = (pixel: number, from: number, to: number): number =>
    Math.max(0, Math.min(pixel + 1, to) - Math.max(pixel, from));
  for (const { leftPx, topPx, rightPx, bottomPx } of rectangles) {
    for (let y = Math.floor(topPx); y < Math.ceil(bottomPx); y++) {
      const down = overlap(y, topPx, bottomPx);
      for (let x = Math.floor(leftPx); x < Math.ceil(rightPx); x++) {
        ink[y * widthPx + x]! += overlap(x, leftPx, rightPx) * down;
      }
    }
  }
  const levels = new Uint8Array(ink.length);
  for (let at = 0; at < ink.length; at++) levels[at] = Math.round(255 * (1 - Math.min(1, ink[at]!)));
  return { widthPx, heightPx, levels };
}

/** The markers of the dictionary 4x4_50 that OpenCV's own detector finds, in the order of their ids. */
export async function detectMarkers(image: GreyImage): Promise<readonly DetectedMarker[]> {
  const { cv } = await openCvInNode();
  const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50);
  const parameters = new cv.aruco_DetectorParameters();
  parameters.cornerRefinementMethod = cv.CORNER_REFINE_SUBPIX;
  // OpenCV's own defaults; the bindings want every argument
  const refineParameters = new cv.aruco_RefineParameters(10, 3, true);
  const detector = new cv.aruco_ArucoDetector(dictionary, parameters, refineParameters);
  const mat = new cv.Mat(image.heightPx, image.widthPx, cv.CV_8UC1);
  const corners = new cv.MatVector();
  const rejected = new cv.MatVector();
  const ids = new cv.Mat();
  try {
    mat.data.set(image.levels);
    detector.detectMarkers(mat, corners, ids, rejected);
    return Array.from(ids.data32S.slice(0, ids.rows), (id, index) => {
      const points = corners.get(index);
      const coordinates = Array.from(points.data32F, (coordinate) => coordinate + PIXEL_CENTRE_PX);
      points.delete();
      const pointAt = (at: number) => ({ xPx: coordinates[at] ?? NaN, yPx: coordinates[at + 1] ?? NaN });
      return { id, corners: [0, 2, 4, 6].map(pointAt) };
    }).sort((a, b) => a.id - b.id);
  } finally {
    for (const object of [mat, corners, rejected, ids, detector, refineParameters, parameters, dictionary])
      object.delete();
  }
}
