import { Builder } from 'flatbuffers';
import { describe, expect, it } from 'vitest';

import { FlatBufferReader } from './flat-buffer-reader.js';

/** A buffer written by the FlatBuffers library: what our reader must find in it is what was put in. */
function builtBuffer(): Uint8Array {
  const builder = new Builder();
  const text = builder.createString('glabella');
  const bytes = builder.createByteVector(new Uint8Array([7, 8, 9]));
  builder.startVector(4, 2, 4);
  builder.addInt32(-5);
  builder.addInt32(6);
  const integers = builder.endVector();
  builder.startVector(4, 2, 4);
  builder.addFloat32(0.25);
  builder.addFloat32(-2);
  const floats = builder.endVector();
  builder.startObject(1);
  builder.addFieldInt32(0, 41, 0);
  const child = builder.endObject();
  builder.startVector(4, 1, 4);
  builder.addOffset(child);
  const children = builder.endVector();
  builder.startObject(8);
  builder.addFieldOffset(0, text, 0);
  builder.addFieldOffset(1, bytes, 0);
  builder.addFieldOffset(2, integers, 0);
  builder.addFieldOffset(3, floats, 0);
  builder.addFieldOffset(4, children, 0);
  builder.addFieldInt8(5, 200, 0);
  builder.finish(builder.endObject(), 'TEST');
  return builder.asUint8Array();
}

describe('FlatBuffer reader', () => {
  const reader = new FlatBufferReader(builtBuffer());
  const root = reader.root();

  it('finds what the library wrote', () => {
    expect(reader.identifier()).toBe('TEST');
    expect(reader.text(root, 0)).toBe('glabella');
    expect([...reader.byteVector(root, 1)]).toEqual([7, 8, 9]);
    expect(reader.int32Vector(root, 2)).toEqual([6, -5]); // The builder writes backwards.
    expect(reader.floatVector(root, 3)).toEqual([-2, 0.25]);
    expect(reader.byte(root, 5)).toBe(200);
    const [child] = reader.tableVector(root, 4);
    expect(child === undefined ? undefined : reader.int32(child, 0)).toBe(41);
  });

  it('gives the default for fields that are absent or unknown', () => {
    for (const absent of [6, 30]) {
      expect(reader.field(root, absent)).toBeUndefined();
      expect(reader.reference(root, absent)).toBeUndefined();
      expect(reader.int32(root, absent)).toBe(0);
      expect(reader.byte(root, absent)).toBe(0);
      expect(reader.text(root, absent)).toBe('');
      expect(reader.tableVector(root, absent)).toEqual([]);
      expect(reader.byteVector(root, absent)).toHaveLength(0);
    }
  });
});
