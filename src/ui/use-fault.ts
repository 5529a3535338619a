import { useCallback, useState } from 'react';

/** Hands what was thrown where React does not see it, in a promise, to the boundary at the top: it is thrown again on the next render. */
export function useFault(): (reason: unknown) => void {
  const [fault, setFault] = useState<{ readonly reason: unknown } | null>(null);
  if (fault !== null) throw fault.reason;
  return useCallback((reason: unknown) => {
    setFault({ reason });
  }, []);
}
