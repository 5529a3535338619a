import { Builder } from 'flatbuffers';

import { fail, succeed, type Result } from '../src/core/result.js';
import { FlatBufferReader } from './flat-buffer-reader.js';
import { writeAlignedBytes, writeBytesInFront, writeInt32Vector, writeOffsetVector } from './flat-vectors.js';
import * as schema from './tflite-schema.js';

/**
 * A TensorFlow Lite model to which operators and metadata are added without writing its weights anew.
 *
 * A FlatBuffers builder writes from the end of the file to its start. We begin with the whole old model as the tail. The
 * builder counts offsets from the end of the file, so an old table that lay at position P has the offset `length - P`,
 * and what we write in front of it can point there. The old root table stays in the file, but nothing leads to it.
 */

export type ModelFailure =
  /** The bytes are no TensorFlow Lite model of schema version 3. */
  | { readonly kind: 'not-a-model'; readonly identifier: string; readonly version: number }
  /** Only models with one subgraph can be extended. */
  | { readonly kind: 'subgraph-count-unexpected'; readonly found: number }
  | { readonly kind: 'output-missing'; readonly tensorName: string }
  | {
      readonly kind: 'output-length-unexpected';
      readonly tensorName: string;
      readonly expected: number;
      readonly found: number;
    };

/** An output of a model: which tensor it is, and how many numbers it holds. */
export interface OutputTensor {
  /** Number of the tensor in the subgraph. */
  readonly index: number;
  readonly name: string;
  readonly length: number;
}

/** FlatBuffers and TensorFlow Lite align nothing to more than this. */
const alignment = 16;

/** Room for what is added, so that the builder need not copy the model while it grows. */
const roomForAdditions = 1 << 18;

const modelSchemaVersion = 3;

type AppendedOperator = keyof typeof schema.builtinOperator;

/** Offsets of the tables in each list of the model, old ones first. */
type OffsetVectors = {
  readonly operatorCodes: number[];
  readonly buffers: number[];
  readonly tensors: number[];
  readonly operators: number[];
};

export class TensorGraph {
  private readonly builder: Builder;
  private readonly paddedLength: number;
  private readonly offsets: OffsetVectors;
  private outputIndices: readonly number[];
  private readonly appendedCodes = new Map<AppendedOperator, number>();

  private constructor(
    private readonly reader: FlatBufferReader,
    private readonly subgraph: number,
  ) {
    const { bytes } = reader;
    this.paddedLength = Math.ceil(bytes.length / alignment) * alignment;
    this.builder = new Builder(this.paddedLength + roomForAdditions);
    this.builder.prep(alignment, this.paddedLength);
    this.builder.pad(this.paddedLength - bytes.length);
    writeBytesInFront(this.builder, bytes);

    const root = reader.root();
    const oldTables = (table: number, fieldNumber: number) =>
      reader.tableVector(table, fieldNumber).map((position) => this.offsetOf(position));
    this.offsets = {
      operatorCodes: oldTables(root, schema.model.operatorCodes),
      buffers: oldTables(root, schema.model.buffers),
      tensors: oldTables(subgraph, schema.subGraph.tensors),
      operators: oldTables(subgraph, schema.subGraph.operators),
    };
    this.outputIndices = reader.int32Vector(subgraph, schema.subGraph.outputs);
  }

  /** Opens a serialised model for additions. Fails when the bytes are not a model of one subgraph. */
  static open(bytes: Uint8Array): Result<TensorGraph, ModelFailure> {
    const reader = new FlatBufferReader(bytes);
    const identifier = reader.identifier();
    if (identifier !== schema.modelIdentifier) return fail({ kind: 'not-a-model', identifier, version: 0 });
    const version = reader.int32(reader.root(), schema.model.version);
    if (version !== modelSchemaVersion) return fail({ kind: 'not-a-model', identifier, version });
    const subgraphs = reader.tableVector(reader.root(), schema.model.subgraphs);
    const [subgraph] = subgraphs;
    if (subgraph === undefined || subgraphs.length > 1) {
      return fail({ kind: 'subgraph-count-unexpected', found: subgraphs.length });
    }
    return succeed(new TensorGraph(reader, subgraph));
  }

  /** The model's own output of this name; fails when it is missing or does not hold `length` numbers. */
  findOutput(tensorName: string, length: number): Result<OutputTensor, ModelFailure> {
    const tables = this.reader.tableVector(this.subgraph, schema.subGraph.tensors);
    for (const index of this.reader.int32Vector(this.subgraph, schema.subGraph.outputs)) {
      const table = tables[index];
      if (table === undefined || this.reader.text(table, schema.tensor.name) !== tensorName) continue;
      const shape = this.reader.int32Vector(table, schema.tensor.shape);
      const found = shape.reduce((product, size) => product * size, 1);
      if (found !== length) return fail({ kind: 'output-length-unexpected', tensorName, expected: length, found });
      return succeed({ index, name: tensorName, length });
    }
    return fail({ kind: 'output-missing', tensorName });
  }

  /** Appends a RESHAPE of a float tensor; returns the index of the new tensor. */
  appendReshape(input: number, shape: readonly number[], name: string): number {
    const shapeTensor = this.appendConstant(`${name}_shape`, shape);
    const output = this.appendTensor(name, shape, schema.tensorType.float32, 0);
    const newShape = writeInt32Vector(this.builder, shape);
    this.builder.startObject(schema.reshapeOptions.fieldCount);
    this.builder.addFieldOffset(schema.reshapeOptions.newShape, newShape, 0);
    const options = this.builder.endObject();
    this.appendOperator('reshape', [input, shapeTensor], output, options);
    return output;
  }

  /** Appends a CONCATENATION of float tensors of one dimension; returns the index of the new tensor. */
  appendConcatenation(inputs: readonly number[], totalLength: number, name: string): number {
    const output = this.appendTensor(name, [totalLength], schema.tensorType.float32, 0);
    this.builder.startObject(schema.concatenationOptions.fieldCount); // Axis 0 is the default.
    this.appendOperator('concatenation', inputs, output, this.builder.endObject());
    return output;
  }

  /** Appends a GATHER of numbers out of a float tensor of one dimension; returns the index of the new tensor. */
  appendGather(input: number, indices: readonly number[], name: string): number {
    const indexTensor = this.appendConstant(`${name}_indices`, indices);
    const output = this.appendTensor(name, [indices.length], schema.tensorType.float32, 0);
    this.builder.startObject(schema.gatherOptions.fieldCount); // Axis 0 is the default.
    this.appendOperator('gather', [input, indexTensor], output, this.builder.endObject());
    return output;
  }

  /** From now on the model gives these tensors, in this order. */
  replaceOutputs(indices: readonly number[]): void {
    this.outputIndices = indices;
  }

  /** The whole model with everything appended and with this metadata. The graph cannot be used afterwards. */
  serialise(metadata: Uint8Array): Uint8Array {
    const { builder, reader } = this;
    const root = reader.root();
    const subgraphs = writeOffsetVector(builder, [this.writeSubgraph()]);

    const metadataBuffer = this.appendBuffer(metadata);
    const name = builder.createString(schema.metadataName);
    builder.startObject(schema.metadataEntry.fieldCount);
    builder.addFieldOffset(schema.metadataEntry.name, name, 0);
    builder.addFieldInt32(schema.metadataEntry.buffer, metadataBuffer, 0);
    const metadataEntries = writeOffsetVector(builder, [builder.endObject()]);

    const buffers = writeOffsetVector(builder, this.offsets.buffers);
    const operatorCodes = writeOffsetVector(builder, this.offsets.operatorCodes);
    builder.startObject(schema.model.fieldCount);
    builder.addFieldInt32(schema.model.version, modelSchemaVersion, 0);
    builder.addFieldOffset(schema.model.operatorCodes, operatorCodes, 0);
    builder.addFieldOffset(schema.model.subgraphs, subgraphs, 0);
    builder.addFieldOffset(schema.model.buffers, buffers, 0);
    builder.addFieldOffset(schema.model.metadata, metadataEntries, 0);
    for (const unchanged of [schema.model.description, schema.model.metadataBuffer]) {
      builder.addFieldOffset(unchanged, this.offsetOf(reader.reference(root, unchanged)), 0);
    }
    builder.finish(builder.endObject(), schema.modelIdentifier);
    return builder.asUint8Array().slice();
  }

  private writeSubgraph(): number {
    const { builder } = this;
    const tensors = writeOffsetVector(builder, this.offsets.tensors);
    const outputs = writeInt32Vector(builder, this.outputIndices);
    const operators = writeOffsetVector(builder, this.offsets.operators);
    builder.startObject(schema.subGraph.fieldCount);
    builder.addFieldOffset(schema.subGraph.tensors, tensors, 0);
    builder.addFieldOffset(schema.subGraph.outputs, outputs, 0);
    builder.addFieldOffset(schema.subGraph.operators, operators, 0);
    for (const unchanged of [schema.subGraph.inputs, schema.subGraph.name]) {
      builder.addFieldOffset(unchanged, this.offsetOf(this.reader.reference(this.subgraph, unchanged)), 0);
    }
    return builder.endObject();
  }

  /** Offset, from the end of the new file, of what lay at this position of the old model; zero stands for "absent". */
  private offsetOf(position: number | undefined): number {
    return position === undefined ? 0 : this.paddedLength - position;
  }

  private appendBuffer(data: Uint8Array): number {
    const vector = writeAlignedBytes(this.builder, data);
    this.builder.startObject(schema.buffer.fieldCount);
    this.builder.addFieldOffset(schema.buffer.data, vector, 0);
    return this.offsets.buffers.push(this.builder.endObject()) - 1;
  }

  private appendTensor(name: string, shape: readonly number[], type: number, bufferIndex: number): number {
    const shapeVector = writeInt32Vector(this.builder, shape);
    const nameText = this.builder.createString(name);
    this.builder.startObject(schema.tensor.fieldCount);
    this.builder.addFieldOffset(schema.tensor.shape, shapeVector, 0);
    this.builder.addFieldInt8(schema.tensor.type, type, 0);
    // Buffer 0 is by convention the empty one of tensors that are computed.
    this.builder.addFieldInt32(schema.tensor.buffer, bufferIndex, 0);
    this.builder.addFieldOffset(schema.tensor.name, nameText, 0);
    return this.offsets.tensors.push(this.builder.endObject()) - 1;
  }

  private appendConstant(name: string, numbers: readonly number[]): number {
    // Written number by number: the file is little-endian whatever the machine is.
    const data = new DataView(new ArrayBuffer(4 * numbers.length));
    numbers.forEach((number, order) => data.setInt32(4 * order, number, true));
    const bufferIndex = this.appendBuffer(new Uint8Array(data.buffer));
    return this.appendTensor(name, [numbers.length], schema.tensorType.int32, bufferIndex);
  }

  private appendOperator(kind: AppendedOperator, inputs: readonly number[], output: number, options: number): void {
    const { builder } = this;
    const opcodeIndex = this.operatorCodeIndex(kind);
    const inputVector = writeInt32Vector(builder, inputs);
    const outputVector = writeInt32Vector(builder, [output]);
    builder.startObject(schema.operator.fieldCount);
    builder.addFieldInt32(schema.operator.opcodeIndex, opcodeIndex, 0);
    builder.addFieldOffset(schema.operator.inputs, inputVector, 0);
    builder.addFieldOffset(schema.operator.outputs, outputVector, 0);
    builder.addFieldInt8(schema.operator.builtinOptionsType, schema.builtinOptionsType[kind], 0);
    builder.addFieldOffset(schema.operator.builtinOptions, options, 0);
    this.offsets.operators.push(builder.endObject());
  }

  /** Place of the operator in the model's list of operator codes; added at its first use. */
  private operatorCodeIndex(kind: AppendedOperator): number {
    const known = this.appendedCodes.get(kind);
    if (known !== undefined) return known;
    const { builder } = this;
    const code = schema.builtinOperator[kind];
    builder.startObject(schema.operatorCode.fieldCount);
    builder.addFieldInt8(schema.operatorCode.deprecatedBuiltinCode, code, 0);
    builder.addFieldInt32(schema.operatorCode.version, 1, 1);
    builder.addFieldInt32(schema.operatorCode.builtinCode, code, 0);
    const index = this.offsets.operatorCodes.push(builder.endObject()) - 1;
    this.appendedCodes.set(kind, index);
    return index;
  }
}
