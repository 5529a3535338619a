/** All bytes of a stream; `onBytes` is told after every piece how many have come. Rejects where the stream breaks off. */
export async function readBytes(
  stream: ReadableStream<Uint8Array>,
  onBytes: (loaded: number) => void,
): Promise<Uint8Array<ArrayBuffer>> {
  const pieces: Uint8Array[] = [];
  let loaded = 0;
  const reader = stream.getReader();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    pieces.push(piece.value);
    loaded += piece.value.length;
    onBytes(loaded);
  }
  const bytes = new Uint8Array(loaded);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
