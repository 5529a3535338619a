/** Chosen: an answer within 50 ms seems to come at once; half of that leaves room for what the browser does besides. */
const SLICE_MS = 20;

/**
 * A function to be awaited between small pieces of long work: it lets the page do something else whenever the work has gone on for
 * a slice of time, and otherwise costs next to nothing.
 */
export function takingTurns(sliceMs = SLICE_MS): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < sliceMs) return;
    await new Promise((resolve) => setTimeout(resolve, 0));
    since = performance.now();
  };
}
