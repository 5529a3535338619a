import { fail, succeed, type Result } from '../src/core/result.js';
import type { Vector3 } from '../src/core/geometry/vector.js';

/**
 * Reads the canonical face out of the geometry pipeline metadata, a protocol buffer. The fields that we read are, after
 * MediaPipe's `geometry_pipeline_metadata.proto` and `mesh_3d.proto` (Apache-2.0):
 * GeometryPipelineMetadata { Mesh3d canonical_mesh = 1; }
 * Mesh3d { VertexType vertex_type = 1; repeated float vertex_buffer = 3; repeated uint32 index_buffer = 4; }
 * with vertex type 0: five floats a vertex, x, y, z in centimetres and two texture coordinates.
 */
export interface CanonicalMesh {
  /** In centimetres, in the mesh's own frame: x to the wearer's left, y up, z forward out of the face. */
  readonly verticesCm: readonly Vector3[];
  /** Three vertex numbers for each triangle. */
  readonly triangles: readonly (readonly [number, number, number])[];
}

export type CanonicalMeshFailure =
  /** The bytes end inside a field, or use a wire type that this message never has. */
  | { readonly kind: 'message-malformed'; readonly atByte: number }
  | { readonly kind: 'mesh-missing' }
  | { readonly kind: 'vertex-type-unknown'; readonly vertexType: number }
  /** The counts of floats or indices do not make whole vertices and triangles, or an index has no vertex. */
  | { readonly kind: 'mesh-inconsistent'; readonly floats: number; readonly indices: number };

const floatsPerVertex = 5;

/** A field of a message: a number for varints and fixed 32-bit floats, a view on the bytes for all with a length. */
type Field = { readonly number: number } & (
  { readonly kind: 'varint' | 'float'; readonly value: number } | { readonly kind: 'bytes'; readonly value: Uint8Array }
);

/** The canonical mesh in the serialised metadata. */
export function parseCanonicalMesh(metadata: Uint8Array): Result<CanonicalMesh, CanonicalMeshFailure> {
  const top = parseFields(metadata);
  if (!top.ok) return top;
  const meshField = top.value.find((field) => field.number === 1 && field.kind === 'bytes');
  if (meshField?.kind !== 'bytes') return fail({ kind: 'mesh-missing' });
  const mesh = parseFields(meshField.value);
  if (!mesh.ok) return mesh;

  const floats: number[] = [];
  const indices: number[] = [];
  for (const field of mesh.value) {
    if (field.number === 1 && field.kind === 'varint' && field.value !== 0) {
      return fail({ kind: 'vertex-type-unknown', vertexType: field.value });
    }
    if (field.number === 3 && field.kind === 'float') floats.push(field.value);
    if (field.number === 4 && field.kind === 'varint') indices.push(field.value);
  }

  const vertexCount = floats.length / floatsPerVertex;
  const consistent =
    vertexCount > 0 &&
    Number.isInteger(vertexCount) &&
    indices.length % 3 === 0 &&
    indices.every((index) => index < vertexCount);
  if (!consistent) return fail({ kind: 'mesh-inconsistent', floats: floats.length, indices: indices.length });

  return succeed({
    verticesCm: triples(floats, floatsPerVertex),
    triangles: triples(indices, 3),
  });
}

/** The first three of every `stride` numbers. */
function triples(numbers: readonly number[], stride: number): [number, number, number][] {
  const result: [number, number, number][] = [];
  for (let first = 0; first < numbers.length; first += stride) {
    result.push([numbers[first] as number, numbers[first + 1] as number, numbers[first + 2] as number]);
  }
  return result;
}

/** The fields of one message in the protocol buffers' wire format (varint, length-delimited and 32-bit fields). */
function parseFields(message: Uint8Array): Result<readonly Field[], CanonicalMeshFailure> {
  const view = new DataView(message.buffer, message.byteOffset, message.byteLength);
  const fields: Field[] = [];
  let position = 0;

  const readVarint = (): number | undefined => {
    let value = 0;
    for (let group = 0; group < 10 && position < message.length; group += 1) {
      const byte = message[position] as number;
      position += 1;
      value += (byte & 0x7f) * 2 ** (7 * group);
      if (byte < 0x80) return value;
    }
    return undefined;
  };

  while (position < message.length) {
    const atByte = position;
    const malformed = fail({ kind: 'message-malformed', atByte } as const);
    const tag = readVarint();
    if (tag === undefined) return malformed;
    const number = Math.floor(tag / 8);
    const wireType = tag % 8;
    if (wireType === 0) {
      const value = readVarint();
      if (value === undefined) return malformed;
      fields.push({ number, kind: 'varint', value });
    } else if (wireType === 2) {
      const length = readVarint();
      if (length === undefined || position + length > message.length) return malformed;
      fields.push({ number, kind: 'bytes', value: message.subarray(position, position + length) });
      position += length;
    } else if (wireType === 5) {
      if (position + 4 > message.length) return malformed;
      fields.push({ number, kind: 'float', value: view.getFloat32(position, true) });
      position += 4;
    } else {
      return malformed;
    }
  }
  return succeed(fields);
}
