/** Chosen: a sixth of what a key may wait for its sign. */
const BUSY_MS = 8;

/** Lets whatever waits go first. */
export function rest(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

/**
 * All bytes of a stream; `onBytes` is told after every piece how many have come. Rejects where the stream breaks off. Pieces that
 * are there already come without a pause between them: it rests now and then, so that the page is not held up.
 */
export async function readBytes(
  stream: ReadableStream<Uint8Array>,
  onBytes: (loaded: number) => void,
): Promise<Uint8Array<ArrayBuffer>> {
  const pieces: Uint8Array[] = [];
  let loaded = 0;
  const reader = stream.getReader();
  let begunMs = performance.now();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    pieces.push(piece.value);
    loaded += piece.value.length;
    onBytes(loaded);
    if (performance.now() - begunMs > BUSY_MS) {
      await rest();
      begunMs = performance.now();
    }
  }
  await rest();
  const bytes = new Uint8Array(loaded);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
