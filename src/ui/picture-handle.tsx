import { useRef } from 'react';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { Handle } from '../session/handles.js';
import { handleId, handleName } from './handle-name.js';
import { formatNumber } from './numbers.js';
import type { PictureRegion } from './picture-region.js';
import { isPressed } from './shortcuts.js';
import { words } from './language.js';

const STEP_PX = 1;
const FINE_STEP_PX = 0.1;

/** How an arrow key moves a handle, in steps; the iris edge only grows and shrinks, whatever the direction. */
function arrowStep(key: string, handle: Handle): ImagePoint | null {
  switch (key) {
    case 'ArrowRight':
      return { xPx: 1, yPx: 0 };
    case 'ArrowLeft':
      return { xPx: -1, yPx: 0 };
    case 'ArrowUp':
      return handle.kind === 'iris-edge' ? { xPx: 1, yPx: 0 } : { xPx: 0, yPx: -1 };
    case 'ArrowDown':
      return handle.kind === 'iris-edge' ? { xPx: -1, yPx: 0 } : { xPx: 0, yPx: 1 };
    default:
      return null;
  }
}

let lastGesture = 0;

/** A point over the picture that is moved with mouse, touch or arrow keys. */
export function PictureHandle(props: {
  readonly handle: Handle;
  readonly at: ImagePoint;
  readonly region: PictureRegion;
  readonly hintId: string;
  readonly onMove: (handle: Handle, to: ImagePoint, gesture: number) => void;
  /** the handle is in hand, or is no longer */
  readonly onHold: (handle: Handle | null) => void;
}) {
  const { handle, at, region, onMove, onHold } = props;
  const gesture = useRef(0);
  // Where the pointer stood from the handle's point when it took hold, in screen px: the point must not jump under the finger.
  const grip = useRef<{ readonly x: number; readonly y: number } | null>(null);

  const stageOf = (element: HTMLElement): DOMRect | undefined => element.parentElement?.getBoundingClientRect();
  const left = (at.xPx - region.xPx) / region.widthPx;
  const top = (at.yPx - region.yPx) / region.heightPx;
  return (
    <div
      id={handleId(handle)}
      role="slider"
      tabIndex={0}
      className={`handle handle-${handle.kind}`}
      aria-label={handleName(handle)}
      aria-describedby={props.hintId}
      aria-valuenow={Math.round(at.xPx * 10) / 10}
      aria-valuetext={words.handle.position(formatNumber(at.xPx, 1), formatNumber(at.yPx, 1))}
      style={{ left: `${left * 100}%`, top: `${top * 100}%` }}
      onFocus={() => {
        gesture.current = ++lastGesture;
        onHold(handle);
      }}
      onBlur={() => {
        onHold(null);
      }}
      onPointerDown={(event) => {
        const stage = stageOf(event.currentTarget);
        if (stage === undefined || event.button !== 0) return;
        event.preventDefault();
        event.currentTarget.focus({ preventScroll: true });
        event.currentTarget.setPointerCapture(event.pointerId);
        gesture.current = ++lastGesture;
        grip.current = {
          x: event.clientX - (stage.left + left * stage.width),
          y: event.clientY - (stage.top + top * stage.height),
        };
      }}
      onPointerMove={(event) => {
        const stage = stageOf(event.currentTarget);
        if (stage === undefined || grip.current === null) return;
        const x = (event.clientX - grip.current.x - stage.left) / stage.width;
        const y = (event.clientY - grip.current.y - stage.top) / stage.height;
        onMove(
          handle,
          { xPx: region.xPx + x * region.widthPx, yPx: region.yPx + y * region.heightPx },
          gesture.current,
        );
      }}
      onLostPointerCapture={() => {
        grip.current = null;
      }}
      onKeyDown={(event) => {
        const step = arrowStep(event.key, handle);
        const isFine = isPressed('movePointFinely', event);
        if (step === null || !(isFine || isPressed('movePoint', event))) return;
        event.preventDefault();
        const length = isFine ? FINE_STEP_PX : STEP_PX;
        onMove(handle, { xPx: at.xPx + step.xPx * length, yPx: at.yPx + step.yPx * length }, gesture.current);
      }}
    >
      <span className="handle-mark" />
    </div>
  );
}
