/** What stands in a file that was chosen or dropped; null where it went since, or may not be read any more. */
export async function bytesOfFile(file: File): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    return null;
  }
}
