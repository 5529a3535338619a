/** An expected outcome as a value: what was found, or the reason why not. Exceptions are kept for bugs. */
export type Result<Value, Failure> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly failure: Failure };

export function succeed<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

export function fail<Failure>(failure: Failure): { readonly ok: false; readonly failure: Failure } {
  return { ok: false, failure };
}

/** Throws where a caller broke a contract of the code (never for bad input of a user). */
export function invariant(condition: boolean, message: string): asserts condition {
  if (!condition) throw new Error(`Broken invariant: ${message}`);
}

/** Makes a switch over a discriminated union exhaustive at compile time. */
export function unreachable(value: never): never {
  throw new Error(`Unreachable: ${JSON.stringify(value)}`);
}
