/** The part of a matrix of OpenCV that is used here. Every one lives on the heap of the WebAssembly and must be deleted. */
export interface CvMat {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  readonly data64F: Float64Array;
  readonly data32S: Int32Array;
  delete(): void;
}

export interface CvMatVector {
  size(): number;
  get(index: number): CvMat;
  push_back(mat: CvMat): void;
  delete(): void;
}

interface CvDetectorParameters {
  cornerRefinementMethod: number;
  cornerRefinementWinSize: number;
  relativeCornerRefinmentWinSize: number;
  cornerRefinementMaxIterations: number;
  cornerRefinementMinAccuracy: number;
  adaptiveThreshWinSizeMin: number;
  adaptiveThreshWinSizeMax: number;
  adaptiveThreshWinSizeStep: number;
  minMarkerPerimeterRate: number;
  maxMarkerPerimeterRate: number;
  delete(): void;
}

/** Whatever lives on the heap of the WebAssembly. */
export interface CvDeletable {
  delete(): void;
}

interface CvArucoDetector extends CvDeletable {
  detectMarkers(image: CvMat, corners: CvMatVector, ids: CvMat, rejected: CvMatVector): void;
}

interface CvSize {
  readonly width: number;
  readonly height: number;
}

interface CvCharucoParameters extends CvDeletable {
  /** how many of the two markers beside a corner must have been found */
  minMarkers: number;
}

interface CvCharucoDetector extends CvDeletable {
  /** Corners come as rows of x and y (float), ids as rows of whole numbers; both stay empty where there is no board. */
  detectBoard(image: CvMat, corners: CvMat, ids: CvMat, markerCorners: CvMatVector, markerIds: CvMat): void;
}

/**
 * The part of OpenCV that is used here. The typings that come with the package do not know its ArUco classes,
 * and their constructors take every argument: the bindings know no defaults.
 */
export interface OpenCv {
  readonly CV_8UC1: number;
  readonly CV_32FC2: number;
  readonly CV_32FC3: number;
  readonly CV_64F: number;
  readonly DICT_4X4_50: number;
  readonly CALIB_USE_INTRINSIC_GUESS: number;
  readonly CALIB_ZERO_TANGENT_DIST: number;
  readonly CALIB_FIX_K2: number;
  readonly CALIB_FIX_K3: number;
  readonly TermCriteria_COUNT: number;
  readonly TermCriteria_EPS: number;
  readonly CORNER_REFINE_NONE: number;
  readonly CORNER_REFINE_SUBPIX: number;
  readonly CORNER_REFINE_CONTOUR: number;
  readonly CORNER_REFINE_APRILTAG: number;
  readonly Mat: {
    new (): CvMat;
    new (rows: number, cols: number, type: number): CvMat;
  };
  readonly MatVector: new () => CvMatVector;
  readonly aruco_DetectorParameters: new () => CvDetectorParameters;
  readonly aruco_RefineParameters: new (
    minRepDistance: number,
    errorCorrectionRate: number,
    checkAllOrders: boolean,
  ) => CvDeletable;
  readonly aruco_ArucoDetector: new (
    dictionary: CvDeletable,
    parameters: CvDetectorParameters,
    refineParameters: CvDeletable,
  ) => CvArucoDetector;
  /** The pattern is the one that OpenCV has drawn since 4.6; `ids` may be empty for the first ones of the dictionary. */
  readonly aruco_CharucoBoard: new (
    size: CvSize,
    squareLength: number,
    markerLength: number,
    dictionary: CvDeletable,
    ids: CvMat,
  ) => CvDeletable;
  readonly aruco_CharucoParameters: new () => CvCharucoParameters;
  readonly aruco_CharucoDetector: new (
    board: CvDeletable,
    charucoParameters: CvCharucoParameters,
    detectorParameters: CvDetectorParameters,
    refineParameters: CvDeletable,
  ) => CvCharucoDetector;
  /** Plain data: nothing of it lives on the heap. */
  readonly TermCriteria: new (type: number, maxCount: number, epsilon: number) => object;
  getPredefinedDictionary(name: number): CvDeletable;
  /** Returns the root mean square of the residuals; throws (a number) where it finds no start or the system breaks down. */
  calibrateCameraExtended(
    objectPoints: CvMatVector,
    imagePoints: CvMatVector,
    imageSize: CvSize,
    cameraMatrix: CvMat,
    distortion: CvMat,
    rotations: CvMatVector,
    translations: CvMatVector,
    intrinsicsDeviations: CvMat,
    extrinsicsDeviations: CvMat,
    perViewErrors: CvMat,
    flags: number,
    criteria: object,
  ): number;
  getBuildInformation(): string;
}

/** What the package hands out: the module before or after it is ready. */
interface LoadingModule {
  onRuntimeInitialized?: () => void;
  then?: unknown;
  Mat?: unknown;
}

/**
 * Resolves, with the module wrapped, once its WebAssembly runs. The module has a `then` that calls back with the module
 * itself: awaiting it, or resolving a promise with it, would go round for ever. So `then` is removed, and the
 * module is never handed to a promise bare.
 */
export function readyOpenCv(loaded: unknown): Promise<{ readonly cv: OpenCv }> {
  const module = loaded as LoadingModule;
  return new Promise((resolve) => {
    const done = () => {
      delete module.then;
      resolve({ cv: module as unknown as OpenCv });
    };
    if (module.Mat !== undefined) done();
    else module.onRuntimeInitialized = done;
  });
}
