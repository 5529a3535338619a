/**
 * Field numbers of the tables that we read and write, from the schemas of TensorFlow Lite (`schema.fbs`, version 3) and
 * of its metadata (`metadata_schema.fbs`), both Apache-2.0. A field's number is its place in the table; a union counts
 * twice, first its type.
 */

export const modelIdentifier = 'TFL3';
export const metadataIdentifier = 'M001';
/** The name under which TensorFlow Lite looks for the buffer with the metadata. */
export const metadataName = 'TFLITE_METADATA';

export const model = {
  fieldCount: 8,
  version: 0,
  operatorCodes: 1,
  subgraphs: 2,
  description: 3,
  buffers: 4,
  metadataBuffer: 5,
  metadata: 6,
} as const;

export const buffer = { fieldCount: 1, data: 0 } as const;

export const metadataEntry = { fieldCount: 2, name: 0, buffer: 1 } as const;

export const subGraph = { fieldCount: 5, tensors: 0, inputs: 1, outputs: 2, operators: 3, name: 4 } as const;

export const tensor = { fieldCount: 4, shape: 0, type: 1, buffer: 2, name: 3 } as const;
export const tensorType = { float32: 0, int32: 2 } as const;

/** The code stands twice: in one byte for old readers, which is enough for codes below 127, and in an integer. */
export const operatorCode = { fieldCount: 4, deprecatedBuiltinCode: 0, version: 2, builtinCode: 3 } as const;
export const builtinOperator = { concatenation: 2, reshape: 22, gather: 36 } as const;

export const operator = {
  fieldCount: 5,
  opcodeIndex: 0,
  inputs: 1,
  outputs: 2,
  builtinOptionsType: 3,
  builtinOptions: 4,
} as const;
export const builtinOptionsType = { concatenation: 10, reshape: 17, gather: 23 } as const;
export const reshapeOptions = { fieldCount: 1, newShape: 0 } as const;
export const concatenationOptions = { fieldCount: 2, axis: 0 } as const;
export const gatherOptions = { fieldCount: 2, axis: 0 } as const;

export const modelMetadata = { fieldCount: 8, subgraphMetadata: 3 } as const;
export const subGraphMetadata = { fieldCount: 10, inputTensorMetadata: 2 } as const;
export const tensorMetadata = { fieldCount: 7, name: 0, content: 3, processUnits: 4 } as const;
export const content = { fieldCount: 3, propertiesType: 0, properties: 1 } as const;
export const contentProperties = { image: 2 } as const;
export const imageProperties = { fieldCount: 2, colorSpace: 0 } as const;
export const colorSpace = { rgb: 1 } as const;
export const processUnit = { fieldCount: 2, optionsType: 0, options: 1 } as const;
export const processUnitOptions = { normalization: 1 } as const;
export const normalizationOptions = { fieldCount: 2, mean: 0, std: 1 } as const;
