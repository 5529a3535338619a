import { describe, expect, it } from 'vitest';
import type { SweepGap } from './sweep-coverage.js';
import type { Course, CourseMark } from './sweep-course.js';
import { COURSE_TURN_DEG, courseAt, courseFor, courseMs, isStepApart } from './sweep-course.js';

const ALL: readonly SweepGap[] = ['turned-R', 'turned-L', 'distance', 'frames'];
const EVERY_MS = 10;

function along(course: Course, isStill = false): readonly CourseMark[] {
  const count = Math.ceil(courseMs(course) / EVERY_MS);
  return Array.from({ length: count }, (_, index) => courseAt(course, index * EVERY_MS, isStill));
}

function reach(marks: readonly CourseMark[]) {
  const turns = marks.map(({ turnDeg }) => turnDeg);
  const leans = marks.map(({ lean }) => lean);
  return { right: Math.max(...turns), left: -Math.min(...turns), near: Math.max(...leans), far: -Math.min(...leans) };
}

describe('the way of a sweep', () => {
  const whole = courseFor(ALL);

  it('takes four to eight seconds and leads to both sides, nearer and farther, and back', () => {
    expect(courseMs(whole)).toBeGreaterThanOrEqual(4000);
    expect(courseMs(whole)).toBeLessThanOrEqual(8000);
    const { right, left, near, far } = reach(along(whole));
    expect(right).toBeCloseTo(COURSE_TURN_DEG, 1);
    expect(left).toBeCloseTo(COURSE_TURN_DEG, 1);
    expect(near).toBeCloseTo(1, 1);
    expect(far).toBeCloseTo(1, 1);
    expect(courseAt(whole, 1e6)).toMatchObject({ turnDeg: 0, lean: 0 });
  });

  it('is slow, and nowhere jumps', () => {
    const marks = along(whole);
    marks.slice(1).forEach((mark, index) => {
      // 20 degrees a second blur a frame of a thirtieth of a second by two thirds of a degree
      expect(Math.abs(mark.turnDeg - (marks[index]?.turnDeg ?? NaN))).toBeLessThan((20 * EVERY_MS) / 1000);
    });
  });

  it('leads only to what is missing', () => {
    expect(reach(along(courseFor(['turned-L'])))).toMatchObject({ right: 0, near: 0 });
    expect(reach(along(courseFor(['turned-R', 'frames'])))).toMatchObject({ left: -0, near: 0 });
    expect(reach(along(courseFor(['distance'])))).toMatchObject({ right: 0, left: -0 });
    const { right, left, near } = reach(along(courseFor(['frames'])));
    expect([right > 14, left > 14, near]).toEqual([true, true, 0]);
  });

  it('stands still between its ends for those who want no motion', () => {
    const places = new Set(along(whole, true).map(({ turnDeg, lean }) => `${turnDeg} ${lean}`));
    expect([...places]).toEqual(['0 0', '15 0', '-15 0', '0 1', '0 -1']);
  });

  it('gives about two dozen frames', () => {
    let last: CourseMark | null = null;
    let frames = 0;
    for (const mark of along(whole)) {
      if (last !== null && !isStepApart(mark, last)) continue;
      last = mark;
      frames += 1;
    }
    expect(frames).toBeGreaterThanOrEqual(20);
    expect(frames).toBeLessThanOrEqual(28);
  });
});
