import type { StoreFailure } from '../../session/session-store.js';

/**
 * What the browser's refusal of a database means, by the names that the Indexed Database API and its implementations give.
 * Anything else than a refusal of the browser is a bug and is thrown on.
 */
export function storeFailureOf(reason: unknown): StoreFailure {
  if (!(reason instanceof DOMException)) throw reason;
  switch (reason.name) {
    case 'QuotaExceededError':
      return { kind: 'storage-full' };
    // frames that may keep nothing, and private windows of some browsers
    case 'SecurityError':
    case 'NotAllowedError':
    case 'InvalidAccessError':
      return { kind: 'storage-refused' };
    case 'VersionError':
      return { kind: 'storage-newer' };
    // what cannot be cloned or is no key was never to be handed over
    case 'DataCloneError':
    case 'DataError':
      throw reason;
    default:
      return { kind: 'storage-broken' };
  }
}
