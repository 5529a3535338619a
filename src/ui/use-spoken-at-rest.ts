import { useEffect, useState } from 'react';

/** Time to say one thing before the next. Chosen. */
const SPOKEN_MS = 2_000;

/** The text as a live region may have it: the newest one, but never two within two seconds. */
export function useSpokenAtRest(text: string): string {
  const [spoken, setSpoken] = useState({ text: '', atMs: -Infinity });
  useEffect(() => {
    if (text === spoken.text) return;
    const restMs = Math.max(0, spoken.atMs + SPOKEN_MS - performance.now());
    const timer = setTimeout(() => {
      setSpoken({ text, atMs: performance.now() });
    }, restMs);
    return () => {
      clearTimeout(timer);
    };
  }, [text, spoken]);
  return spoken.text;
}
