/** The address of this page, without what stands behind it. */
export function ownAddress(): string {
  return `${location.origin}${location.pathname}`;
}
