import type { SweepGap } from './sweep-coverage.js';

/** What the wearer does at a moment of the sweep. */
export type CourseStep = 'hold' | 'turn-R' | 'turn-L' | 'to-middle' | 'nearer' | 'farther' | 'back';

/** Where the mark that leads the wearer stands. */
export interface CourseMark {
  readonly step: CourseStep;
  /** positive: to the wearer's right */
  readonly turnDeg: number;
  /** -1 as far, 1 as near as is asked for */
  readonly lean: number;
}

/** A part of the course: the mark glides from where it was to where this part ends. */
export interface CourseLeg {
  readonly step: CourseStep;
  readonly ms: number;
  readonly turnDeg: number;
  readonly lean: number;
}

export type Course = readonly CourseLeg[];

/** How far the wearer is asked to turn. Asked for by the design; beyond it the eyes can no longer hold the camera well. */
export const COURSE_TURN_DEG = 15;

// Chosen: 12 degrees a second on average, so that a frame of a thirtieth of a second blurs by less than half a degree.
const QUARTER_MS = 1250;
const LEAN_MS = 700;

const HOLD: CourseLeg = { step: 'hold', ms: 500, turnDeg: 0, lean: 0 };
const TO_MIDDLE: CourseLeg = { step: 'to-middle', ms: QUARTER_MS, turnDeg: 0, lean: 0 };
const TURN_R: CourseLeg = { step: 'turn-R', ms: QUARTER_MS, turnDeg: COURSE_TURN_DEG, lean: 0 };
const TURN_L: CourseLeg = { step: 'turn-L', ms: QUARTER_MS, turnDeg: -COURSE_TURN_DEG, lean: 0 };
const LEAN: Course = [
  { step: 'nearer', ms: LEAN_MS, turnDeg: 0, lean: 1 },
  { step: 'farther', ms: 1.5 * LEAN_MS, turnDeg: 0, lean: -1 },
  { step: 'back', ms: LEAN_MS, turnDeg: 0, lean: 0 },
];
const BOTH_SIDES: Course = [TURN_R, { ...TURN_L, ms: 2 * QUARTER_MS }, TO_MIDDLE];

/** The way that the wearer is led, to fill what is missing; the whole way takes about eight seconds. */
export function courseFor(missing: readonly SweepGap[]): Course {
  const right = missing.includes('turned-R');
  const left = missing.includes('turned-L');
  const lean = missing.includes('distance');
  const turning = right && left ? BOTH_SIDES : right ? [TURN_R, TO_MIDDLE] : left ? [TURN_L, TO_MIDDLE] : [];
  // Where only frames are wanting, turning once more gives them.
  const legs = [...(turning.length === 0 && !lean ? BOTH_SIDES : turning), ...(lean ? LEAN : [])];
  return [HOLD, ...legs];
}

export function courseMs(course: Course): number {
  return course.reduce((sum, { ms }) => sum + ms, 0);
}

/**
 * The mark at a moment of the course. It starts and stops gently; where `isStill`, it does not glide but stands at once
 * where each part ends, for those who do not want things to move on the screen.
 */
export function courseAt(course: Course, elapsedMs: number, isStill = false): CourseMark {
  let turnDeg = 0;
  let lean = 0;
  let beganMs = 0;
  let step: CourseStep = 'hold';
  for (const leg of course) {
    step = leg.step;
    if (elapsedMs < beganMs + leg.ms) {
      const share = isStill ? 1 : (1 - Math.cos((Math.PI * Math.max(0, elapsedMs - beganMs)) / leg.ms)) / 2;
      return { step, turnDeg: turnDeg + share * (leg.turnDeg - turnDeg), lean: lean + share * (leg.lean - lean) };
    }
    beganMs += leg.ms;
    turnDeg = leg.turnDeg;
    lean = leg.lean;
  }
  return { step, turnDeg, lean };
}

/** Chosen: the whole way gives about two dozen frames. */
const STEP_TURN_DEG = 4;
const STEP_LEAN = 0.4;

/** Whether a frame taken at one place of the course adds something to one taken at another. */
export function isStepApart(one: CourseMark, other: CourseMark): boolean {
  return Math.hypot((one.turnDeg - other.turnDeg) / STEP_TURN_DEG, (one.lean - other.lean) / STEP_LEAN) >= 1;
}
