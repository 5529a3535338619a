import type { ReactNode } from 'react';
import { useEffect, useId, useRef } from 'react';

/** A dialog over the page: focus stays inside it, Escape closes it, and focus goes back to where it was. */
export function Modal(props: {
  readonly heading: string;
  readonly closeLabel: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly wide?: boolean;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
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
        <h2 id={headingId}>{props.heading}</h2>
        <button type="button" className="quiet" onClick={props.onClose}>
          {props.closeLabel}
        </button>
      </div>
      {props.children}
    </dialog>
  );
}
