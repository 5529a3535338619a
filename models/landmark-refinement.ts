/**
 * Which of the 468 points of the face mesh are refined by the attention model's further outputs.
 *
 * The landmark model gives a coarse mesh of 468 points (x, y, z) and, for lips, eyes and irises, refined points (x, y
 * only). MediaPipe merges them in a graph; we merge them inside the model, for the runtime of Tasks expects one tensor.
 * The orders below say which mesh point the n-th refined point replaces. Their source is MediaPipe's graph
 * `tensors_to_face_landmarks_with_attention` (Apache-2.0).
 *
 * Sides are the wearer's: what the model calls `left_eye` is left in an unmirrored picture, hence the wearer's right.
 */

/** Mesh points that the 80 refined points of the lips replace. */
export const lipsMeshPoints: readonly number[] = [
  61, 146, 91, 181, 84, 17, 314, 405, 321, 375, 291, 185, 40, 39, 37, 0, 267, 269, 270, 409, 78, 95, 88, 178, 87, 14,
  317, 402, 318, 324, 308, 191, 80, 81, 82, 13, 312, 311, 310, 415, 76, 77, 90, 180, 85, 16, 315, 404, 320, 307, 306,
  184, 74, 73, 72, 11, 302, 303, 304, 408, 62, 96, 89, 179, 86, 15, 316, 403, 319, 325, 292, 183, 42, 41, 38, 12, 268,
  271, 272, 407,
];

/** Mesh points that the 71 refined points about the wearer's right eye replace: lids, folds and brow. */
export const rightEyeMeshPoints: readonly number[] = [
  33, 7, 163, 144, 145, 153, 154, 155, 133, 246, 161, 160, 159, 158, 157, 173, 130, 25, 110, 24, 23, 22, 26, 112, 243,
  247, 30, 29, 27, 28, 56, 190, 226, 31, 228, 229, 230, 231, 232, 233, 244, 113, 225, 224, 223, 222, 221, 189, 35, 124,
  46, 53, 52, 65, 143, 111, 117, 118, 119, 120, 121, 128, 245, 156, 70, 63, 105, 66, 107, 55, 193,
];

/** Mesh points that the 71 refined points about the wearer's left eye replace, in the mirrored order of the right. */
export const leftEyeMeshPoints: readonly number[] = [
  263, 249, 390, 373, 374, 380, 381, 382, 362, 466, 388, 387, 386, 385, 384, 398, 359, 255, 339, 254, 253, 252, 256,
  341, 463, 467, 260, 259, 257, 258, 286, 414, 446, 261, 448, 449, 450, 451, 452, 453, 464, 342, 445, 444, 443, 442,
  441, 413, 265, 353, 276, 283, 282, 295, 372, 340, 346, 347, 348, 349, 350, 357, 465, 383, 300, 293, 334, 296, 336,
  285, 417,
];

export const meshPointCount = 468;
const irisPointCount = 5;

/** Mesh points and the points of both irises: 478. Landmarks 468-472 are the wearer's right iris, 473-477 the left. */
export const landmarkCount = meshPointCount + 2 * irisPointCount;

/**
 * The iris points have no depth of their own. They take that of the upper lid margin above the pupil; MediaPipe's graph
 * takes the mean over the eye's contour. Nothing measures with the depth of a landmark.
 */
const irisDepthMeshPoints = { right: 159, left: 386 } as const;

/** An output of the landmark model that goes into the merged landmarks. */
export interface RefinementOutput {
  /** The tensor's name in the model. */
  readonly tensorName: string;
  /** How many numbers the tensor holds: three for each mesh point, two for each refined point. */
  readonly length: number;
}

/** The outputs to be merged, in the order in which `mergedLandmarkIndices` counts through their numbers. */
export const refinementOutputs: readonly RefinementOutput[] = [
  { tensorName: 'output_mesh_identity', length: 3 * meshPointCount },
  { tensorName: 'output_lips', length: 2 * lipsMeshPoints.length },
  { tensorName: 'output_left_eye', length: 2 * rightEyeMeshPoints.length },
  { tensorName: 'output_right_eye', length: 2 * leftEyeMeshPoints.length },
  { tensorName: 'output_left_iris', length: 2 * irisPointCount },
  { tensorName: 'output_right_iris', length: 2 * irisPointCount },
];

/** The output that says how surely a face was in the crop. It stays as it is. */
export const faceFlagTensorName = 'conv_faceflag';

/**
 * For each of the 3 x 478 numbers of the merged landmarks (x, y, z of landmark 0, then of 1, ...) its place in the
 * concatenation of all `refinementOutputs`: refined x and y where there are any, depth always from the mesh.
 */
export function mergedLandmarkIndices(): readonly number[] {
  const indices = Array.from({ length: 3 * landmarkCount }, (_, place) => place);
  let base = 3 * meshPointCount;
  const takeRefined = (landmarks: readonly number[]) => {
    landmarks.forEach((landmark, order) => {
      indices[3 * landmark] = base + 2 * order;
      indices[3 * landmark + 1] = base + 2 * order + 1;
    });
    base += 2 * landmarks.length;
  };
  const irisLandmarks = (first: number) => Array.from({ length: irisPointCount }, (_, order) => first + order);
  const rightIris = irisLandmarks(meshPointCount);
  const leftIris = irisLandmarks(meshPointCount + irisPointCount);

  takeRefined(lipsMeshPoints);
  takeRefined(rightEyeMeshPoints);
  takeRefined(leftEyeMeshPoints);
  takeRefined(rightIris);
  takeRefined(leftIris);
  for (const landmark of rightIris) indices[3 * landmark + 2] = 3 * irisDepthMeshPoints.right + 2;
  for (const landmark of leftIris) indices[3 * landmark + 2] = 3 * irisDepthMeshPoints.left + 2;
  return indices;
}
