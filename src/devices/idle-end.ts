/** Runs work, and counts it: as long as some is under way, nothing is ended. */
export type Busy = <Value>(work: () => Promise<Value>) => Promise<Value>;

/** Calls `end` once no work has been under way for the time of `idleLimitMs`. It can be called again and again. */
export function createIdleEnd(end: () => void, idleLimitMs: number): Busy {
  let working = 0;
  let idleTimer: ReturnType<typeof setTimeout> | undefined;
  return async (work) => {
    clearTimeout(idleTimer);
    working += 1;
    try {
      return await work();
    } finally {
      working -= 1;
      if (working === 0) idleTimer = setTimeout(end, idleLimitMs);
    }
  };
}
