/**
 * Read access to tables of a serialised FlatBuffer by field number, without generated code. Positions are bytes from the
 * start of the buffer. The format is described in "FlatBuffer Internals" of the FlatBuffers documentation.
 */
export class FlatBufferReader {
  private readonly view: DataView;

  constructor(readonly bytes: Uint8Array) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  /** The four letters after the root's offset that name the schema, `TFL3` for a TensorFlow Lite model. */
  identifier(): string {
    return String.fromCharCode(...this.bytes.subarray(4, 8));
  }

  /** Position of the root table. */
  root(): number {
    return this.followed(0);
  }

  /** Position of a field's inline value, or undefined where the table leaves the field at its default. */
  field(table: number, fieldNumber: number): number | undefined {
    const vtable = table - this.view.getInt32(table, true);
    const fieldCount = (this.view.getUint16(vtable, true) - 4) / 2;
    if (fieldNumber >= fieldCount) return undefined;
    const offset = this.view.getUint16(vtable + 4 + 2 * fieldNumber, true);
    return offset === 0 ? undefined : table + offset;
  }

  /** Position of the table, vector or text that the field points to. */
  reference(table: number, fieldNumber: number): number | undefined {
    const field = this.field(table, fieldNumber);
    return field === undefined ? undefined : this.followed(field);
  }

  /** A field of one byte; zero, the schema's default, where it is absent. */
  byte(table: number, fieldNumber: number): number {
    const field = this.field(table, fieldNumber);
    return field === undefined ? 0 : this.view.getUint8(field);
  }

  /** A field of 32 bits; zero, the schema's default, where it is absent. */
  int32(table: number, fieldNumber: number): number {
    const field = this.field(table, fieldNumber);
    return field === undefined ? 0 : this.view.getInt32(field, true);
  }

  text(table: number, fieldNumber: number): string {
    const start = this.reference(table, fieldNumber);
    return start === undefined ? '' : new TextDecoder().decode(this.vectorBytes(start));
  }

  /** A field that is a vector of bytes. */
  byteVector(table: number, fieldNumber: number): Uint8Array {
    const start = this.reference(table, fieldNumber);
    return start === undefined ? new Uint8Array() : this.vectorBytes(start);
  }

  /** A field that is a vector of 32-bit integers. */
  int32Vector(table: number, fieldNumber: number): number[] {
    return this.elements(table, fieldNumber).map((element) => this.view.getInt32(element, true));
  }

  /** A field that is a vector of single-precision floats. */
  floatVector(table: number, fieldNumber: number): number[] {
    return this.elements(table, fieldNumber).map((element) => this.view.getFloat32(element, true));
  }

  /** Positions of the tables in a field that is a vector of tables. */
  tableVector(table: number, fieldNumber: number): number[] {
    return this.elements(table, fieldNumber).map((element) => this.followed(element));
  }

  private followed(position: number): number {
    return position + this.view.getUint32(position, true);
  }

  private vectorBytes(start: number): Uint8Array {
    return this.bytes.subarray(start + 4, start + 4 + this.view.getUint32(start, true));
  }

  private elements(table: number, fieldNumber: number): number[] {
    const start = this.reference(table, fieldNumber);
    if (start === undefined) return [];
    return Array.from({ length: this.view.getUint32(start, true) }, (_, order) => start + 4 + 4 * order);
  }
}
