import type { Builder } from 'flatbuffers';

/** Vectors for a FlatBuffers builder, which writes from the end to the start. Each returns the vector's offset. */

export function writeOffsetVector(builder: Builder, offsets: readonly number[]): number {
  builder.startVector(4, offsets.length, 4);
  for (const offset of offsets.toReversed()) builder.addOffset(offset);
  return builder.endVector();
}

export function writeInt32Vector(builder: Builder, numbers: readonly number[]): number {
  builder.startVector(4, numbers.length, 4);
  for (const number of numbers.toReversed()) builder.addInt32(number);
  return builder.endVector();
}

export function writeFloatVector(builder: Builder, numbers: readonly number[]): number {
  builder.startVector(4, numbers.length, 4);
  for (const number of numbers.toReversed()) builder.addFloat32(number);
  return builder.endVector();
}

/** The first byte lies at a multiple of 16 in the finished buffer, as TensorFlow Lite asks of its buffers. */
export function writeAlignedBytes(builder: Builder, bytes: Uint8Array): number {
  builder.startVector(1, bytes.length, 16);
  writeBytesInFront(builder, bytes);
  return builder.endVector();
}

/** Bare bytes, without a length. The room must have been made with the builder's `prep` or `startVector`. */
export function writeBytesInFront(builder: Builder, bytes: Uint8Array): void {
  for (const byte of bytes.toReversed()) builder.writeInt8(byte);
}
