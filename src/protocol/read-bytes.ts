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
 *
 * @param expected how many there should be: right, they are copied once, piece by piece
 */
export async function readBytes(
  stream: ReadableStream<Uint8Array>,
  onBytes: (loaded: number) => void,
  expected = 0,
): Promise<Uint8Array<ArrayBuffer>> {
  let bytes = new Uint8Array(expected);
  let loaded = 0;
  const reader = stream.getReader();
  let begunMs = performance.now();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    const { value } = piece;
    if (loaded + value.length > bytes.length) {
      const larger = new Uint8Array(Math.max(loaded + value.length, 2 * bytes.length));
      larger.set(bytes.subarray(0, loaded));
      bytes = larger;
    }
    bytes.set(value, loaded);
    loaded += value.length;
    onBytes(loaded);
    if (performance.now() - begunMs > BUSY_MS) {
      await rest();
      begunMs = performance.now();
    }
  }
  return loaded === bytes.length ? bytes : bytes.slice(0, loaded);
}
