import type { StoreFailure } from '../session/session-store.js';
import { words } from './language.js';
import type { Saying } from './saying.js';

const SAYINGS = {
  'storage-refused': 'refused',
  'storage-full': 'full',
  'storage-broken': 'broken',
  'storage-newer': 'newer',
  'storage-locked': 'locked',
  'session-missing': 'missing',
  'session-unreadable': 'unreadable',
  'changed-elsewhere': 'changedElsewhere',
} as const satisfies Readonly<Record<StoreFailure['kind'], string>>;

/** Why something was not kept, or not read back, and what to do next. */
export function storeFailureSaying({ kind }: StoreFailure): Saying {
  return words.store[SAYINGS[kind]];
}

/** Whether a failure is one of the store, among those of what works with it. */
export function isStoreFailure<Failure extends { readonly kind: string }>(
  failure: Failure | StoreFailure,
): failure is StoreFailure {
  return Object.hasOwn(SAYINGS, failure.kind);
}
