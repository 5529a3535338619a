import { useEffect, useEffectEvent } from 'react';
import { useEquipment } from './equipment.js';
import type { ShortcutId, Stroke } from './shortcuts.js';
import { isPressed, isSign, SHORTCUTS } from './shortcuts.js';

/**
 * Does something when a shortcut is pressed anywhere on the page, unless a dialog stands open. A single character works only
 * where single keys are wanted, and not while something is typed.
 *
 * @param where.worksIn fields in which the shortcut works all the same
 * @param where.isLeftTo elements that have their own meaning for the key
 */
export function useShortcut(
  id: ShortcutId,
  onPressed: () => void,
  where: {
    readonly worksIn?: (target: EventTarget | null) => boolean;
    readonly isLeftTo?: (target: EventTarget | null) => boolean;
  } = {},
): void {
  const { singleKeys } = useEquipment();
  const onKeyDown = useEffectEvent((event: KeyboardEvent): void => {
    if (!isPressed(id, event) || event.defaultPrevented || where.isLeftTo?.(event.target) === true) return;
    if (document.querySelector('dialog[open]') !== null) return;
    if (isPressedSign(id, event)) {
      if (!singleKeys.areOn()) return;
      if (isTypedInto(event.target) && where.worksIn?.(event.target) !== true) return;
    }
    event.preventDefault();
    onPressed();
  });
  useEffect(() => {
    document.addEventListener('keydown', onKeyDown);
    return () => {
      document.removeEventListener('keydown', onKeyDown);
    };
  }, []);
}

function isPressedSign(id: ShortcutId, event: KeyboardEvent): boolean {
  const strokes: readonly Stroke[] = SHORTCUTS[id].strokes;
  return strokes.some((stroke) => isSign(stroke) && stroke.key === event.key);
}

/** Whether keys that are pressed here are typed into something. */
function isTypedInto(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || target.matches('input, select, textarea'));
}
