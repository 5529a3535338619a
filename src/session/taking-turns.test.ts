import { expect, it } from 'vitest';
import { takingTurns } from './taking-turns.js';

/** Keeps the processor busy for so long. */
function work(ms: number): void {
  const until = performance.now() + ms;
  while (performance.now() < until);
}

it('lets something else happen when work has gone on for a slice, and not before', async () => {
  let happened = 0;
  const timer = setInterval(() => {
    happened += 1;
  }, 0);
  const turn = takingTurns(200);
  work(5);
  await turn();
  expect(happened).toBe(0);
  work(200);
  await turn();
  clearInterval(timer);
  expect(happened).toBeGreaterThan(0);
});
