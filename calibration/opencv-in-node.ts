import { createRequire } from 'node:module';

/** An object on OpenCV's own heap: whoever makes it deletes it. */
interface OnHeap {
  delete(): void;
}

export interface CvMat extends OnHeap {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32S: Int32Array;
  readonly data32F: Float32Array;
}

export interface CvMatVector extends OnHeap {
  size(): number;
  get(index: number): CvMat;
}

export interface CvDictionary extends OnHeap {
  generateImageMarker(id: number, sidePx: number, image: CvMat, borderCells: number): void;
}

/** The part of OpenCV that scripts and tests in Node use; the package's own types leave out ArUco. */
export interface OpenCvInNode {
  readonly CV_8UC1: number;
  readonly DICT_4X4_50: number;
  readonly CORNER_REFINE_SUBPIX: number;
  readonly Mat: { new (): CvMat; new (rows: number, cols: number, type: number): CvMat };
  readonly MatVector: new () => CvMatVector;
  readonly aruco_DetectorParameters: new () => OnHeap & { cornerRefinementMethod: number };
  readonly aruco_RefineParameters: new (
    minRepDistance: number,
    errorCorrectionRate: number,
    allOrders: boolean,
  ) => OnHeap;
  readonly aruco_ArucoDetector: new (
    dictionary: CvDictionary,
    parameters: OnHeap,
    refineParameters: OnHeap,
  ) => OnHeap & { detectMarkers(image: CvMat, corners: CvMatVector, ids: CvMat, rejected: CvMatVector): void };
  getPredefinedDictionary(name: number): CvDictionary;
}

type LoadingOpenCv = OpenCvInNode & { then?: unknown; onRuntimeInitialized?: () => void };

let loading: Promise<{ readonly cv: OpenCvInNode }> | null = null;

/**
 * OpenCV for scripts and tests in Node. It comes wrapped in an object: the module has a `then` of its own until its runtime
 * stands, and a promise that resolves to it would never settle. For the same reason it is required, not imported: a runner of
 * tests may pass an imported module through a promise.
 */
export function openCvInNode(): Promise<{ readonly cv: OpenCvInNode }> {
  loading ??= new Promise((resolve) => {
    const module = createRequire(import.meta.url)('@techstark/opencv-js') as LoadingOpenCv;
    const finish = (): void => {
      delete module.then;
      resolve({ cv: module });
    };
    // A runtime that stands already calls nobody any more.
    if (typeof module.Mat === 'function') finish();
    else module.onRuntimeInitialized = finish;
  });
  return loading;
}
