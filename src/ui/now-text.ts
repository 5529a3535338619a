/** The moment, as records write it: ISO 8601. */
export function nowText(): string {
  return new Date().toISOString();
}
