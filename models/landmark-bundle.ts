import { zipSync, type Zippable } from 'fflate';

import { fail, succeed, type Result } from '../src/core/result.js';
import { serialiseInputMetadata } from './input-metadata.js';
import { faceFlagTensorName, landmarkCount, mergedLandmarkIndices, refinementOutputs } from './landmark-refinement.js';
import { TensorGraph, type ModelFailure } from './tensor-graph.js';

/** The three parts, as the face mesh package carries them. */
export interface LandmarkBundleParts {
  readonly detector: Uint8Array;
  readonly landmarks: Uint8Array;
  readonly canonicalFace: Uint8Array;
}

/** The detector was trained on channel values from -1 to 1, the landmark model on 0 to 1 (their model cards). */
const detectorNormalisation = { mean: 127.5, standardDeviation: 127.5 } as const;
const landmarksNormalisation = { mean: 0, standardDeviation: 255 } as const;

/**
 * The bundle that FaceLandmarker of MediaPipe Tasks loads: an archive, stored without compression, of three files whose
 * names the runtime expects. The same parts give the same bytes each time and everywhere.
 */
export function assembleLandmarkBundle(parts: LandmarkBundleParts): Result<Uint8Array, ModelFailure> {
  const detector = TensorGraph.open(parts.detector);
  if (!detector.ok) return detector;
  const landmarks = TensorGraph.open(parts.landmarks);
  if (!landmarks.ok) return landmarks;
  const merged = mergeLandmarkOutputs(landmarks.value);
  if (!merged.ok) return merged;

  return succeed(
    archive({
      'face_detector.tflite': detector.value.serialise(serialiseInputMetadata(detectorNormalisation)),
      'face_landmarks_detector.tflite': landmarks.value.serialise(serialiseInputMetadata(landmarksNormalisation)),
      'geometry_pipeline_metadata_landmarks.binarypb': parts.canonicalFace,
    }),
  );
}

/**
 * Appends to the landmark model what turns its seven outputs into the two that Tasks expects: all 478 landmarks in one
 * tensor, and the face flag. All numbers go into one long row, of which a GATHER takes them in the right order.
 */
function mergeLandmarkOutputs(graph: TensorGraph): Result<undefined, ModelFailure> {
  const rows: number[] = [];
  let totalLength = 0;
  for (const { tensorName, length } of refinementOutputs) {
    const output = graph.findOutput(tensorName, length);
    if (!output.ok) return fail(output.failure);
    rows.push(graph.appendReshape(output.value.index, [length], `${tensorName}_row`));
    totalLength += length;
  }
  const faceFlag = graph.findOutput(faceFlagTensorName, 1);
  if (!faceFlag.ok) return fail(faceFlag.failure);

  const pool = graph.appendConcatenation(rows, totalLength, 'refinement_pool');
  const gathered = graph.appendGather(pool, mergedLandmarkIndices(), 'landmarks_row');
  const landmarks = graph.appendReshape(gathered, [1, 1, 1, 3 * landmarkCount], 'landmarks');
  graph.replaceOutputs([landmarks, faceFlag.value.index]);
  return succeed(undefined);
}

function archive(files: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const entries: Zippable = {};
  for (const [name, bytes] of Object.entries(files)) entries[name] = [bytes, { level: 0 }];
  return zipSync(entries, { mtime: archiveTime() });
}

/**
 * The time stamp of every entry: noon of the first day that an archive can hold. An archive has local time, hence it is
 * built in local time; else the bytes would depend on the machine's time zone.
 */
function archiveTime(): Date {
  return new Date(1980, 0, 1, 12, 0, 0);
}
