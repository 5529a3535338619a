import type { RefObject } from 'react';
import { useEffect, useRef } from 'react';

/** For the part of a dialog that takes the place of another: without it the focus would be lost with what went. */
export function useFocusOnCome<Element extends HTMLElement>(): RefObject<Element | null> {
  const element = useRef<Element>(null);
  useEffect(() => {
    element.current?.focus();
  }, []);
  return element;
}
