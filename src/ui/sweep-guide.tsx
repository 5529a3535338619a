import { useEffect, useState } from 'react';
import type { HeadView } from '../core/camera/head-view.js';
import { ENOUGH } from '../session/sweep-coverage.js';
import type { Course, CourseMark } from '../session/sweep-course.js';
import { COURSE_TURN_DEG, courseAt } from '../session/sweep-course.js';
import type { CourseClock } from './course-clock.js';
import { words } from './language.js';

/** A course that is being gone. */
export interface CourseUnderWay {
  readonly course: Course;
  readonly clock: CourseClock;
}

const MIDDLE_X = 150;
const PX_PER_DEG = 7.5;
const MOST_DEG = 19;
const LEAN_X = 326;
const LEAN_Y = 38;
const LEAN_HALF = 24;

/** How much nearer, as a ratio, the mark stands at its end; half of the way from nearest to farthest that is useful, and some more. */
const LEAN_RATIO = 1.12;

/**
 * The way of the sweep: an arc for the turning and a scale for the leaning, with a ring where to go, a dot where the head is
 * now, and a small line for each frame taken. Mirrored like the preview, so that a turn to the right goes right. What it
 * shows is also said in words beside it.
 */
export function SweepGuide(props: {
  readonly underWay: CourseUnderWay | null;
  readonly head: HeadView | null;
  /** views of the usable frames, the first of them the one that leaning is told from */
  readonly views: readonly HeadView[];
}) {
  const { head, underWay, views } = props;
  const mark = useCourseMark(underWay);
  const base = views[0] ?? head;
  const leanOf = (view: HeadView): number =>
    base === null ? 0 : Math.log(view.spanPx / base.spanPx) / Math.log(LEAN_RATIO);
  const at = arcPoint(mark.turnDeg);
  return (
    <svg className="guide" viewBox="0 0 360 76" aria-hidden="true">
      <path className="guide-way" d={arcPath(COURSE_TURN_DEG)} />
      <path
        className="guide-needed"
        d={[-ENOUGH.turnDeg, ENOUGH.turnDeg].map((turnDeg) => tick(turnDeg, 9)).join('')}
      />
      <path className="guide-frames" d={views.map(({ yawDeg }) => tick(-yawDeg, 5)).join('')} />
      <text x={MIDDLE_X - 132} y={62}>
        {words.sweep.left}
      </text>
      <text x={MIDDLE_X + 132} y={62} textAnchor="end">
        {words.sweep.right}
      </text>
      <path className="guide-way" d={`M${LEAN_X} ${LEAN_Y - LEAN_HALF}V${LEAN_Y + LEAN_HALF}`} />
      <path className="guide-frames" d={views.map((view) => `M${LEAN_X - 5} ${leanY(leanOf(view))}h10`).join('')} />
      <text x={LEAN_X} y={9} textAnchor="middle">
        {words.sweep.far}
      </text>
      <text x={LEAN_X} y={74} textAnchor="middle">
        {words.sweep.near}
      </text>
      {head !== null && (
        <>
          <circle className="guide-head" {...centre(arcPoint(-head.yawDeg))} r={5} />
          <circle className="guide-head" cx={LEAN_X} cy={leanY(leanOf(head))} r={5} />
        </>
      )}
      {underWay !== null && (
        <>
          <circle className="guide-target" {...centre(at)} r={11} />
          <circle className="guide-target" cx={LEAN_X} cy={leanY(mark.lean)} r={9} />
        </>
      )}
    </svg>
  );
}

/** Where the ring stands now. */
function useCourseMark(underWay: CourseUnderWay | null): CourseMark {
  const [elapsedMs, setElapsedMs] = useState(0);
  const isStill = usePrefersStillness();
  useEffect(() => {
    if (underWay === null) return;
    let handle = requestAnimationFrame(function show() {
      setElapsedMs(underWay.clock.elapsedMs());
      handle = requestAnimationFrame(show);
    });
    return () => {
      cancelAnimationFrame(handle);
    };
  }, [underWay]);
  return underWay === null ? { step: 'hold', turnDeg: 0, lean: 0 } : courseAt(underWay.course, elapsedMs, isStill);
}

const STILLNESS = '(prefers-reduced-motion: reduce)';

function usePrefersStillness(): boolean {
  const [prefers, setPrefers] = useState(() => matchMedia(STILLNESS).matches);
  useEffect(() => {
    const query = matchMedia(STILLNESS);
    const listen = (): void => {
      setPrefers(query.matches);
    };
    query.addEventListener('change', listen);
    return () => {
      query.removeEventListener('change', listen);
    };
  }, []);
  return prefers;
}

interface DrawnPoint {
  readonly x: number;
  readonly y: number;
}

/** `turnDeg` positive: to the wearer's right, which is to the right of the looking glass. */
function arcPoint(turnDeg: number): DrawnPoint {
  const shown = Math.max(-MOST_DEG, Math.min(MOST_DEG, turnDeg));
  return { x: MIDDLE_X + PX_PER_DEG * shown, y: 24 + 0.09 * shown * shown };
}

function centre({ x, y }: DrawnPoint): { readonly cx: number; readonly cy: number } {
  return { cx: x, cy: y };
}

function arcPath(endDeg: number): string {
  const [from, to] = [arcPoint(-endDeg), arcPoint(endDeg)];
  // A quadratic curve through a parabola's ends, with the crossing of its tangents as control point, is that parabola.
  return `M${from.x} ${from.y}Q${MIDDLE_X} ${2 * arcPoint(0).y - from.y} ${to.x} ${to.y}`;
}

function tick(turnDeg: number, half: number): string {
  const { x, y } = arcPoint(turnDeg);
  return `M${x} ${y - half}v${2 * half}`;
}

function leanY(lean: number): number {
  return LEAN_Y + LEAN_HALF * Math.max(-1.15, Math.min(1.15, lean));
}
