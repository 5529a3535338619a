import type { FoundMarker, MarkerFinder } from '../../core/camera/find-features.js';
import type { FourCorners } from '../../core/camera/features.js';
import type { ImagePoint } from '../../core/geometry/vector.js';
import { grayImage } from './gray-image.js';
import { onHeap } from './on-heap.js';
import type { CvMat, OpenCv } from './open-cv.js';
import { refineMarker } from './refine-marker.js';

/** The ids of the marker card; other markers of the dictionary in the picture are none of ours. */
const CARD_MARKER_IDS: ReadonlySet<number> = new Set([0, 1, 2, 3]);

/**
 * Makes the finder of the marker card's four ArUco markers (dictionary 4x4_50). It works on the luminance of the picture;
 * the corners are refined to a fraction of a pixel and count from the outer corner of the top-left pixel.
 * Throws only if OpenCV itself does.
 */
export function createMarkerFinder(cv: OpenCv): MarkerFinder {
  return (image) => {
    const luminance = grayImage(image);
    return onHeap((own) => {
      const gray = own(new cv.Mat(image.heightPx, image.widthPx, cv.CV_8UC1));
      gray.data.set(luminance.data);
      const corners = own(new cv.MatVector());
      const rejected = own(new cv.MatVector());
      const ids = own(new cv.Mat());
      const dictionary = own(cv.getPredefinedDictionary(cv.DICT_4X4_50));
      const parameters = own(new cv.aruco_DetectorParameters());
      const refineParameters = own(new cv.aruco_RefineParameters(10, 3, true));
      parameters.cornerRefinementMethod = cv.CORNER_REFINE_SUBPIX;
      // the default window of 5 px reaches over the small cells of a card far away into the next corner
      parameters.relativeCornerRefinmentWinSize = 0.8;
      const detector = own(new cv.aruco_ArucoDetector(dictionary, parameters, refineParameters));
      detector.detectMarkers(gray, corners, ids, rejected);
      const found: FoundMarker[] = [];
      for (let index = 0; index < ids.rows; index++) {
        const id = ids.data32S[index];
        if (id === undefined || !CARD_MARKER_IDS.has(id)) continue;
        // each access to a vector's element makes a new header that must be deleted, too
        const quad = own(corners.get(index));
        const rough: FourCorners<ImagePoint> = [corner(quad, 0), corner(quad, 1), corner(quad, 2), corner(quad, 3)];
        found.push({ id, cornersPx: refineMarker(luminance, rough) ?? rough });
      }
      return found;
    });
  };
}

/** OpenCV counts from the centre of the top-left pixel, we from its outer corner. */
const PIXEL_CENTRE_PX = 0.5;

function corner(quad: CvMat, index: number): ImagePoint {
  const xPx = quad.data32F[2 * index];
  const yPx = quad.data32F[2 * index + 1];
  if (xPx === undefined || yPx === undefined) throw new Error(`A marker has no corner ${index}`);
  return { xPx: xPx + PIXEL_CENTRE_PX, yPx: yPx + PIXEL_CENTRE_PX };
}
