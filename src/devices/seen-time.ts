/** Chosen: fine enough for limits of seconds. */
const TICK_MS = 250;

/**
 * Calls the function once so many milliseconds were counted in which the page was seen and ran: neither while it is hidden nor while
 * the computer sleeps. Returns a function that ends it before.
 */
export function afterSeenMs(limitMs: number, onOver: () => void): () => void {
  let seenMs = 0;
  const timer = setInterval(() => {
    if (document.visibilityState === 'hidden') return;
    seenMs += TICK_MS;
    if (seenMs < limitMs) return;
    clearInterval(timer);
    onOver();
  }, TICK_MS);
  return () => clearInterval(timer);
}
