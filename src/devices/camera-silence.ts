/** Chosen: a webcam in the dark still gives five frames a second. */
export const SILENCE_MS = 3_000;

/** Chosen: often enough for a limit of seconds, and nearly free. */
const LOOK_MS = 500;

/**
 * Tells once that a playing camera gave no picture for three seconds in which the page was seen and ran: it sleeps, was covered by
 * its switch, or something else took it. Returns a function that ends the watch.
 */
export function watchForSilence(video: HTMLVideoElement, onSilence: () => void): () => void {
  let frames = framesOf(video);
  let silentMs = 0;
  const timer = setInterval(() => {
    const now = framesOf(video);
    // Looks are counted, not the clock: a computer that wakes up did not look while it slept.
    silentMs = now === frames && document.visibilityState !== 'hidden' ? silentMs + LOOK_MS : 0;
    frames = now;
    if (silentMs < SILENCE_MS) return;
    end();
    onSilence();
  }, LOOK_MS);
  // Browsers may stop a player whose page was hidden.
  const onSeen = (): void => {
    if (document.visibilityState === 'hidden' || !video.paused || video.srcObject === null) return;
    // Where that is refused no picture comes, and that is told.
    video.play().catch(() => undefined);
  };
  document.addEventListener('visibilitychange', onSeen);
  const end = (): void => {
    clearInterval(timer);
    document.removeEventListener('visibilitychange', onSeen);
  };
  return end;
}

function framesOf(video: HTMLVideoElement): number {
  return video.getVideoPlaybackQuality().totalVideoFrames;
}
