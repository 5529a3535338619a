import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { startCourseClock } from './course-clock.js';

describe('the clock of a course', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('goes on from where it was held, however often it is told so', () => {
    const clock = startCourseClock();
    vi.advanceTimersByTime(300);
    expect(clock.elapsedMs()).toBe(300);
    clock.hold(true);
    vi.advanceTimersByTime(500);
    clock.hold(true);
    vi.advanceTimersByTime(500);
    expect(clock.elapsedMs()).toBe(300);
    clock.hold(false);
    vi.advanceTimersByTime(40);
    clock.hold(false);
    expect(clock.elapsedMs()).toBe(340);
  });
});
