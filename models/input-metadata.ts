import { Builder } from 'flatbuffers';

import { writeFloatVector, writeOffsetVector } from './flat-vectors.js';
import * as schema from './tflite-schema.js';

/** How a channel value from 0 to 255 becomes the model's input: (value - mean) / standardDeviation. */
export interface InputNormalisation {
  readonly mean: number;
  readonly standardDeviation: number;
}

/**
 * Metadata for a model with one picture as input: RGB, normalised as given. The runtime of Tasks refuses a float model
 * without it ("requires specifying NormalizationOptions metadata").
 */
export function serialiseInputMetadata(normalisation: InputNormalisation): Uint8Array {
  const builder = new Builder(512);
  const mean = writeFloatVector(builder, [normalisation.mean]);
  const standardDeviation = writeFloatVector(builder, [normalisation.standardDeviation]);

  builder.startObject(schema.normalizationOptions.fieldCount);
  builder.addFieldOffset(schema.normalizationOptions.mean, mean, 0);
  builder.addFieldOffset(schema.normalizationOptions.std, standardDeviation, 0);
  const normalizationOptions = builder.endObject();

  builder.startObject(schema.processUnit.fieldCount);
  builder.addFieldInt8(schema.processUnit.optionsType, schema.processUnitOptions.normalization, 0);
  builder.addFieldOffset(schema.processUnit.options, normalizationOptions, 0);
  const processUnits = writeOffsetVector(builder, [builder.endObject()]);

  builder.startObject(schema.imageProperties.fieldCount);
  builder.addFieldInt8(schema.imageProperties.colorSpace, schema.colorSpace.rgb, 0);
  const imageProperties = builder.endObject();

  builder.startObject(schema.content.fieldCount);
  builder.addFieldInt8(schema.content.propertiesType, schema.contentProperties.image, 0);
  builder.addFieldOffset(schema.content.properties, imageProperties, 0);
  const content = builder.endObject();

  const name = builder.createString('image');
  builder.startObject(schema.tensorMetadata.fieldCount);
  builder.addFieldOffset(schema.tensorMetadata.name, name, 0);
  builder.addFieldOffset(schema.tensorMetadata.content, content, 0);
  builder.addFieldOffset(schema.tensorMetadata.processUnits, processUnits, 0);
  const inputTensorMetadata = writeOffsetVector(builder, [builder.endObject()]);

  builder.startObject(schema.subGraphMetadata.fieldCount);
  builder.addFieldOffset(schema.subGraphMetadata.inputTensorMetadata, inputTensorMetadata, 0);
  const subgraphMetadata = writeOffsetVector(builder, [builder.endObject()]);

  builder.startObject(schema.modelMetadata.fieldCount);
  builder.addFieldOffset(schema.modelMetadata.subgraphMetadata, subgraphMetadata, 0);
  builder.finish(builder.endObject(), schema.metadataIdentifier);
  return builder.asUint8Array().slice();
}
