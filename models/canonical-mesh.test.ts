import { describe, expect, it } from 'vitest';

import { fail, succeed } from '../src/core/result.js';
import { parseCanonicalMesh } from './canonical-mesh.js';

/** A field with a length before its bytes (wire type 2 of the protocol buffers' encoding). */
function lengthDelimited(fieldNumber: number, content: readonly number[]): number[] {
  return [fieldNumber * 8 + 2, content.length, ...content];
}

function floatField(fieldNumber: number, value: number): number[] {
  return [fieldNumber * 8 + 5, ...new Uint8Array(new Float32Array([value]).buffer)];
}

const vertices = [1, 2, 3, 0, 0, 4, 5, 6, 0, 0, 7, 8, 9, 0, 0].flatMap((value) => floatField(3, value));
const triangle = [4 * 8, 0, 4 * 8, 1, 4 * 8, 2];

describe('canonical mesh', () => {
  it('takes x, y, z of each vertex and leaves the texture coordinates', () => {
    // Fields 2 and 9 are unknown to us and are passed over; 0x96 0x01 is the varint 150 (protocol buffers' own example).
    const message = [...lengthDelimited(2, [8, 0x96, 0x01]), ...lengthDelimited(1, [8, 0, ...vertices, ...triangle])];
    expect(parseCanonicalMesh(new Uint8Array(message))).toEqual(
      succeed({
        verticesCm: [
          [1, 2, 3],
          [4, 5, 6],
          [7, 8, 9],
        ],
        triangles: [[0, 1, 2]],
      }),
    );
  });

  it('reports a message without a mesh', () => {
    expect(parseCanonicalMesh(new Uint8Array(lengthDelimited(2, [])))).toEqual(fail({ kind: 'mesh-missing' }));
  });

  it('reports another kind of vertex', () => {
    expect(parseCanonicalMesh(new Uint8Array(lengthDelimited(1, [8, 1, ...vertices])))).toEqual(
      fail({ kind: 'vertex-type-unknown', vertexType: 1 }),
    );
  });

  it.each([
    ['no vertex', [], 0, 0],
    ['a part of a vertex', [...vertices, ...floatField(3, 1)], 16, 0],
    ['a part of a triangle', [...vertices, 4 * 8, 0], 15, 1],
    ['a triangle whose vertex does not exist', [...vertices, 4 * 8, 0, 4 * 8, 1, 4 * 8, 3], 15, 3],
  ])('refuses a mesh with %s', (_case, mesh, floats, indices) => {
    expect(parseCanonicalMesh(new Uint8Array(lengthDelimited(1, mesh)))).toEqual(
      fail({ kind: 'mesh-inconsistent', floats, indices }),
    );
  });

  it.each([
    ['a length beyond the end', [10, 5, 0], 0],
    ['a wire type that the message never has', [8 + 1, 0, 0, 0, 0, 0, 0, 0, 0], 0],
    ['a varint without an end', [8, 0, 8, 0x80], 2],
    ['half a float', [8, 0, 29, 0, 0], 2],
  ])('reports %s', (_case, message, atByte) => {
    expect(parseCanonicalMesh(new Uint8Array(message))).toEqual(fail({ kind: 'message-malformed', atByte }));
  });
});
