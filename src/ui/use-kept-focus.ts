import type { RefObject } from 'react';
import { useEffect } from 'react';

/**
 * Where an element goes that has the focus, the focus goes to `refuge` instead of getting lost on the page. Not while a
 * dialog is open: it keeps the focus to itself, and gives it back when it closes.
 */
export function useKeptFocus(refuge: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    let last: Element | null = null;
    const isLost = (): boolean => document.activeElement === null || document.activeElement === document.body;
    const rescue = (): void => {
      if (last === null || last.isConnected || !isLost() || document.querySelector('dialog[open]') !== null) return;
      last = null;
      refuge.current?.focus();
    };
    const onFocusIn = ({ target }: FocusEvent): void => {
      last = target instanceof Element ? target : null;
    };
    const onFocusOut = (): void => {
      // A click beside everything leaves the element where it is: that is the reader's own wish.
      queueMicrotask(() => {
        if (last?.isConnected === true && isLost()) last = null;
      });
    };
    const observer = new MutationObserver(rescue);
    observer.observe(document.body, { childList: true, subtree: true });
    document.addEventListener('focusin', onFocusIn);
    document.addEventListener('focusout', onFocusOut);
    return () => {
      observer.disconnect();
      document.removeEventListener('focusin', onFocusIn);
      document.removeEventListener('focusout', onFocusOut);
    };
  }, [refuge]);
}
