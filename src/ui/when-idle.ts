/** Does something once the page has nothing else to do, or after two seconds; the function that it returns calls it off. */
export function whenIdle(work: () => void): () => void {
  if (typeof requestIdleCallback !== 'function') {
    const timer = setTimeout(work, 500);
    return () => {
      clearTimeout(timer);
    };
  }
  const handle = requestIdleCallback(work, { timeout: 2000 });
  return () => {
    cancelIdleCallback(handle);
  };
}
