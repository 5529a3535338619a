import type { ReactNode } from 'react';
import { useEffect, useId, useRef } from 'react';

/**
 * A dialog over the page: focus stays inside it, also where an element goes that has it; Escape closes it, and focus goes back to
 * where it was.
 */
export function Modal(props: {
  readonly heading: string;
  readonly closeLabel: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly wide?: boolean;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const headingId = useId();
  useEffect(() => {
    const element = dialog.current;
    if (element === null || element.open) return;
    const before = document.activeElement;
    element.showModal();
    return () => {
      element.close();
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  useEffect(() => {
    const element = dialog.current;
    return element === null ? undefined : keepFocus(element, () => heading.current?.focus());
  }, []);
  return (
    <dialog
      ref={dialog}
      className={props.wide === true ? 'modal modal-wide' : 'modal'}
      aria-labelledby={headingId}
      onCancel={(event) => {
        // The cancelled choice of a file, or a dialog inside this one, comes up here too.
        if (event.target !== event.currentTarget) return;
        event.preventDefault();
        props.onClose();
      }}
    >
      <div className="modal-head">
        <h2 id={headingId} tabIndex={-1} ref={heading}>
          {props.heading}
        </h2>
        <button type="button" className="quiet" onClick={props.onClose}>
          {props.closeLabel}
        </button>
      </div>
      {props.children}
    </dialog>
  );
}

/** Long enough for whatever takes the place of what went to take the focus itself. */
const FOCUS_GRACE_MS = 60;

/** Calls `rescue` where an element of the dialog went, or was disabled, that had the focus, and nothing else took it. */
function keepFocus(dialog: HTMLDialogElement, rescue: () => void): () => void {
  let last: HTMLElement | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const onFocusIn = ({ target }: FocusEvent): void => {
    last = target instanceof HTMLElement ? target : null;
  };
  const isGone = (): boolean => last !== null && (!last.isConnected || last.matches(':disabled'));
  const observer = new MutationObserver(() => {
    if (!isGone()) return;
    clearTimeout(timer);
    timer = setTimeout(() => {
      const { activeElement } = document;
      if (isGone() && dialog.open && (activeElement === null || activeElement === document.body)) rescue();
    }, FOCUS_GRACE_MS);
  });
  observer.observe(dialog, { childList: true, subtree: true, attributeFilter: ['disabled'] });
  dialog.addEventListener('focusin', onFocusIn);
  return () => {
    clearTimeout(timer);
    observer.disconnect();
    dialog.removeEventListener('focusin', onFocusIn);
  };
}
