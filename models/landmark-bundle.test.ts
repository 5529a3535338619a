import { unzipSync } from 'fflate';
import { Builder } from 'flatbuffers';
import { describe, expect, it } from 'vitest';

import { fail } from '../src/core/result.js';
import { FlatBufferReader } from './flat-buffer-reader.js';
import { installedParts } from './installed-parts.js';
import { assembleLandmarkBundle } from './landmark-bundle.js';
import { mergedLandmarkIndices } from './landmark-refinement.js';
import { TensorGraph } from './tensor-graph.js';
import * as schema from './tflite-schema.js';

const parts = installedParts();

function assembledBundle(): Uint8Array {
  const bundle = assembleLandmarkBundle(parts);
  if (!bundle.ok) throw new Error(JSON.stringify(bundle.failure));
  return bundle.value;
}

const files = unzipSync(assembledBundle());

/** A model as the tests look at it: its outputs' names and shapes, its operators, its metadata. */
function modelOf(name: string) {
  const bytes = files[name];
  if (bytes === undefined) throw new Error(`No ${name} in the bundle`);
  const reader = new FlatBufferReader(bytes);
  const root = reader.root();
  const [subgraph] = reader.tableVector(root, schema.model.subgraphs);
  if (subgraph === undefined) throw new Error('No subgraph');
  const tensors = reader.tableVector(subgraph, schema.subGraph.tensors);
  const buffers = reader.tableVector(root, schema.model.buffers);
  const codes = reader.tableVector(root, schema.model.operatorCodes);
  const tensorAt = (index: number) => {
    const table = tensors[index];
    if (table === undefined) throw new Error(`No tensor ${index}`);
    return {
      name: reader.text(table, schema.tensor.name),
      type: reader.byte(table, schema.tensor.type),
      shape: reader.int32Vector(table, schema.tensor.shape),
      data: reader.byteVector(
        buffers[reader.int32(table, schema.tensor.buffer)] ?? buffers[0] ?? 0,
        schema.buffer.data,
      ),
    };
  };
  return {
    bytes,
    reader,
    root,
    buffers,
    inputs: reader.int32Vector(subgraph, schema.subGraph.inputs).map(tensorAt),
    outputs: reader.int32Vector(subgraph, schema.subGraph.outputs).map(tensorAt),
    operators: reader.tableVector(subgraph, schema.subGraph.operators).map((operator) => ({
      code: reader.int32(
        codes[reader.int32(operator, schema.operator.opcodeIndex)] ?? 0,
        schema.operatorCode.builtinCode,
      ),
      optionsType: reader.byte(operator, schema.operator.builtinOptionsType),
      inputs: reader.int32Vector(operator, schema.operator.inputs).map(tensorAt),
      outputs: reader.int32Vector(operator, schema.operator.outputs).map(tensorAt),
    })),
  };
}

/** Mean and standard deviation in the metadata that the model carries. */
function normalisationOf({ reader, root, buffers }: ReturnType<typeof modelOf>) {
  const [entry] = reader.tableVector(root, schema.model.metadata);
  if (entry === undefined) throw new Error('No metadata');
  expect(reader.text(entry, schema.metadataEntry.name)).toBe('TFLITE_METADATA');
  const data = reader.byteVector(buffers[reader.int32(entry, schema.metadataEntry.buffer)] ?? 0, schema.buffer.data);
  const metadata = new FlatBufferReader(data);
  expect(metadata.identifier()).toBe('M001');
  const only = (table: number, fieldNumber: number): number => {
    const found = metadata.tableVector(table, fieldNumber);
    expect(found).toHaveLength(1);
    return found[0] ?? 0;
  };
  const subgraph = only(metadata.root(), schema.modelMetadata.subgraphMetadata);
  const input = only(subgraph, schema.subGraphMetadata.inputTensorMetadata);
  const processUnit = only(input, schema.tensorMetadata.processUnits);
  expect(metadata.byte(processUnit, schema.processUnit.optionsType)).toBe(1); // NormalizationOptions
  const options = metadata.reference(processUnit, schema.processUnit.options) ?? 0;
  const content = metadata.reference(input, schema.tensorMetadata.content) ?? 0;
  expect(metadata.byte(content, schema.content.propertiesType)).toBe(2); // ImageProperties
  const image = metadata.reference(content, schema.content.properties) ?? 0;
  expect(metadata.byte(image, schema.imageProperties.colorSpace)).toBe(1); // RGB
  return {
    mean: metadata.floatVector(options, schema.normalizationOptions.mean),
    std: metadata.floatVector(options, schema.normalizationOptions.std),
  };
}

describe('landmark bundle', () => {
  it('holds the three files that the runtime expects', () => {
    expect(Object.keys(files)).toEqual([
      'face_detector.tflite',
      'face_landmarks_detector.tflite',
      'geometry_pipeline_metadata_landmarks.binarypb',
    ]);
    expect(files['geometry_pipeline_metadata_landmarks.binarypb']).toEqual(parts.canonicalFace);
  });

  it('is the same to the byte each time', () => {
    expect(Buffer.compare(assembledBundle(), assembledBundle())).toBe(0);
  });

  it('carries noon of 1 January 1980 as the time of its entries, whatever the clock and the time zone', () => {
    // Local file header of the ZIP format (PKWARE's APPNOTE, 4.3.7 and 4.4.6): time at byte 10, date at byte 12;
    // hours are shifted by 11 bits, months by 5, years count from 1980.
    const header = Buffer.from(assembledBundle().subarray(0, 30));
    expect(header.readUInt32LE(0)).toBe(0x04034b50);
    expect(header.readUInt16LE(10)).toBe(12 << 11);
    expect(header.readUInt16LE(12)).toBe((1 << 5) | 1);
  });

  it('gives the landmark model two outputs: 478 points of three numbers, and the face flag', () => {
    const model = modelOf('face_landmarks_detector.tflite');
    expect(model.reader.identifier()).toBe('TFL3');
    expect(model.inputs.map(({ shape }) => shape)).toEqual([[1, 192, 192, 3]]);
    expect(model.outputs.map(({ name, shape, type }) => ({ name, shape, type }))).toEqual([
      { name: 'landmarks', shape: [1, 1, 1, 478 * 3], type: schema.tensorType.float32 },
      { name: 'conv_faceflag', shape: [1, 1, 1, 1], type: schema.tensorType.float32 },
    ]);
  });

  it('appends six reshapes, a concatenation, a gather and a reshape, each fed by the one before', () => {
    const appended = modelOf('face_landmarks_detector.tflite').operators.slice(-9);
    // Codes of RESHAPE 22, CONCATENATION 2, GATHER 36 and option types 17, 10, 23: TensorFlow Lite's schema.fbs.
    expect(appended.map(({ code }) => code)).toEqual([22, 22, 22, 22, 22, 22, 2, 36, 22]);
    expect(appended.map(({ optionsType }) => optionsType)).toEqual([17, 17, 17, 17, 17, 17, 10, 23, 17]);
    const [mesh, lips, rightEye, leftEye, rightIris, leftIris, pool, gather, final] = appended;
    expect([mesh, lips, rightEye, leftEye, rightIris, leftIris].map((reshape) => reshape?.inputs[0]?.name)).toEqual([
      'output_mesh_identity',
      'output_lips',
      'output_left_eye',
      'output_right_eye',
      'output_left_iris',
      'output_right_iris',
    ]);
    expect(pool?.inputs).toEqual(
      [mesh, lips, rightEye, leftEye, rightIris, leftIris].map((reshape) => reshape?.outputs[0]),
    );
    expect(pool?.outputs[0]?.shape).toEqual([1868]);
    expect(gather?.inputs[0]).toEqual(pool?.outputs[0]);
    expect(final?.inputs[0]).toEqual(gather?.outputs[0]);
    const indexData = gather?.inputs[1]?.data.slice() ?? new Uint8Array();
    expect([...new Int32Array(indexData.buffer)]).toEqual(mergedLandmarkIndices());
  });

  it.each([
    ['face_detector.tflite', parts.detector],
    ['face_landmarks_detector.tflite', parts.landmarks],
  ])('leaves the old content of %s as it was, aligned to 16 bytes', (name, original) => {
    const { bytes } = modelOf(name);
    const start = bytes.length - Math.ceil(original.length / 16) * 16;
    expect(start % 16).toBe(0);
    expect(Buffer.compare(bytes.subarray(start, start + original.length), original)).toBe(0);
  });

  it('tells the runtime how to normalise the picture', () => {
    // The detector wants -1 to 1, the landmark model 0 to 1.
    expect(normalisationOf(modelOf('face_detector.tflite'))).toEqual({ mean: [127.5], std: [127.5] });
    expect(normalisationOf(modelOf('face_landmarks_detector.tflite'))).toEqual({ mean: [0], std: [255] });
  });

  it('keeps the outputs of the detector', () => {
    const names = modelOf('face_detector.tflite').outputs.map(({ name }) => name);
    expect(names).toEqual(['regressors', 'classificators']);
  });
});

describe('models that cannot be extended', () => {
  function modelWithSubgraphs(count: number, version = 3, identifier = 'TFL3'): Uint8Array {
    const builder = new Builder();
    const subgraphs = Array.from({ length: count }, () => {
      builder.startObject(0);
      return builder.endObject();
    });
    builder.startVector(4, count, 4);
    for (const subgraph of subgraphs) builder.addOffset(subgraph);
    const vector = builder.endVector();
    builder.startObject(8);
    builder.addFieldInt32(0, version, 0);
    builder.addFieldOffset(2, vector, 0);
    builder.finish(builder.endObject(), identifier);
    return builder.asUint8Array().slice();
  }

  it('are refused when they are of another format or version', () => {
    expect(TensorGraph.open(modelWithSubgraphs(1, 3, 'NOPE'))).toEqual(
      fail({ kind: 'not-a-model', identifier: 'NOPE', version: 0 }),
    );
    expect(TensorGraph.open(modelWithSubgraphs(1, 4))).toEqual(
      fail({ kind: 'not-a-model', identifier: 'TFL3', version: 4 }),
    );
  });

  it.each([0, 2])('are refused with %i subgraphs', (found) => {
    expect(TensorGraph.open(modelWithSubgraphs(found))).toEqual(fail({ kind: 'subgraph-count-unexpected', found }));
  });

  it('are refused when an output has another name or length', () => {
    expect(assembleLandmarkBundle({ ...parts, landmarks: parts.detector })).toEqual(
      fail({ kind: 'output-missing', tensorName: 'output_mesh_identity' }),
    );
    const graph = TensorGraph.open(parts.landmarks);
    expect(graph.ok && graph.value.findOutput('output_lips', 3)).toEqual(
      fail({ kind: 'output-length-unexpected', tensorName: 'output_lips', expected: 3, found: 160 }),
    );
  });
});
