/** The clock of a course that is being gone. */
export interface CourseClock {
  /** how far the course has come, ms; what it was held does not count */
  readonly elapsedMs: () => number;
  /** Holds the course where it is, or lets it go on. */
  readonly hold: (isHeld: boolean) => void;
}

/**
 * Begins a course now. It is held while the camera lags behind: on a slow computer the mark waits for its frames, instead of
 * leading the wearer on without any being taken.
 */
export function startCourseClock(): CourseClock {
  let beganMs = performance.now();
  let heldMs: number | null = null;
  return {
    elapsedMs: () => (heldMs ?? performance.now()) - beganMs,
    hold: (isHeld) => {
      const nowMs = performance.now();
      if (isHeld) {
        heldMs ??= nowMs;
      } else if (heldMs !== null) {
        beganMs += nowMs - heldMs;
        heldMs = null;
      }
    },
  };
}
