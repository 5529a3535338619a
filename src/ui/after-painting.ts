/** Resolves once what was drawn last is on the screen: what holds up the page then comes after the words that announce it. */
export function afterPainting(): Promise<void> {
  return new Promise((resolve) => {
    // A hidden page draws nothing, and must not wait for that.
    const timer = setTimeout(resolve, 100);
    requestAnimationFrame(() => {
      clearTimeout(timer);
      setTimeout(resolve, 0);
    });
  });
}
