import { unreachable } from '../core/result.js';
import type { StoreFailure } from '../session/session-store.js';
import { words } from './language.js';
import type { Saying } from './picture-sentences.js';

/** Why something was not kept, or not read back, and what to do next. */
export function storeFailureSaying({ kind }: StoreFailure): Saying {
  switch (kind) {
    case 'storage-refused':
      return words.store.refused;
    case 'storage-full':
      return words.store.full;
    case 'storage-broken':
      return words.store.broken;
    case 'storage-newer':
      return words.store.newer;
    case 'storage-locked':
      return words.store.locked;
    case 'session-missing':
      return words.store.missing;
    case 'session-unreadable':
      return words.store.unreadable;
    case 'changed-elsewhere':
      return words.store.changedElsewhere;
    default:
      return unreachable(kind);
  }
}
