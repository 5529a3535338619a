import { useEffect } from 'react';

/**
 * As long as this is open, it is what is printed, and not the sheet behind it: by a button of its own, or by the browser's own
 * command. What is printed has the class `<what>-paper`.
 */
export function useInPlaceOfSheet(what: 'order' | 'help' | 'history' | 'differences'): void {
  useEffect(() => {
    document.body.dataset.printing = what;
    return () => {
      delete document.body.dataset.printing;
    };
  }, [what]);
}
