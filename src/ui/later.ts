/** Something that is no part of what is loaded first, and is there some time later. */
export interface Later<Value> {
  /** null until it is there */
  readonly now: () => Value | null;
  /** Calls the listener when it has come or could not be loaded, until the function that it returns is called. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Loads it unless that was done or is under way; a failure is told by `hasFailed`, and the next call tries again. */
  readonly load: () => void;
  readonly hasFailed: () => boolean;
}

/** All that was made, in this order, for `loadAllLater`. */
const made: Later<unknown>[] = [];

/** Makes a value of the function that loads it. */
export function createLater<Value>(load: () => Promise<Value>): Later<Value> {
  let value: Value | null = null;
  let state: 'wanted' | 'under way' | 'failed' | 'here' = 'wanted';
  const listeners = new Set<() => void>();
  const settle = (next: 'failed' | 'here'): void => {
    state = next;
    for (const listener of listeners) listener();
  };
  const later: Later<Value> = {
    now: () => value,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    load() {
      if (state === 'under way' || state === 'here') return;
      const isAgain = state === 'failed';
      state = 'under way';
      if (isAgain) for (const listener of listeners) listener();
      load().then(
        (loaded) => {
          value = loaded;
          settle('here');
        },
        (error: unknown) => {
          console.warn('A part of the page could not be loaded:', String(error));
          settle('failed');
        },
      );
    },
    hasFailed: () => state === 'failed',
  };
  made.push(later);
  return later;
}

/** Loads everything that was left for later, so that it opens at once when it is wanted. */
export function loadAllLater(): void {
  for (const later of made) later.load();
}
