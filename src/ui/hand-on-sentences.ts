import type { DamagePath } from '../core/record/session-schema.js';
import { unreachable } from '../core/result.js';
import type { BringFailure, HandOnFailure } from '../session/hand-on.js';
import { LARGEST_BROUGHT_BYTES } from '../session/hand-on.js';
import type { PassphraseProblem } from '../session/passphrase.js';
import type { SealFailure } from '../session/sealing.js';
import type { LockFailure } from '../session/session-store.js';
import { words } from './language.js';
import { formatNumber } from './numbers.js';
import type { Saying } from './saying.js';
import { isStoreFailure, storeFailureSaying } from './store-sentences.js';

/** Why a file was not made. */
export function handOnFailureSaying(failure: HandOnFailure): Saying {
  return isStoreFailure(failure) ? storeFailureSaying(failure) : sealFailureSaying(failure);
}

/** Why a lock was not set, opened or removed. */
export function lockFailureSaying(failure: LockFailure): Saying {
  if (isStoreFailure(failure)) return storeFailureSaying(failure);
  return failure.kind === 'passphrase-wrong' ? words.lock.wrongPassphrase : sealFailureSaying(failure);
}

function sealFailureSaying(failure: SealFailure): Saying {
  switch (failure.kind) {
    case 'sealing-not-loadable':
      return words.handOn.sealingNotLoadable;
    case 'sealing-unsupported':
    case 'no-recipient':
      return words.handOn.sealingUnsupported;
    case 'passphrase-empty':
      return words.handOn.noPassphrase;
    default:
      return unreachable(failure);
  }
}

/** Why a file was not brought in. */
export function bringFailureSaying(failure: BringFailure): Saying {
  if (isStoreFailure(failure)) return storeFailureSaying(failure);
  const said = words.handOn.failure;
  switch (failure.kind) {
    case 'not-text':
      return said.notText;
    case 'not-json':
      return said.notJson;
    case 'not-a-session-file':
      return said.notASessionFile;
    case 'file-newer':
      return said.newer(failure.version);
    case 'file-damaged':
      return damageSaying(failure.path);
    case 'file-too-large':
      return tooLargeSaying(failure.characters, failure.limit);
    case 'too-large':
      return tooLargeSaying(failure.bytes, failure.limitBytes);
    case 'not-sealed':
      return said.notSealed;
    case 'truncated':
      return said.truncated;
    case 'altered':
      return said.altered;
    case 'wrong-passphrase':
      return said.wrongPassphrase;
    case 'sealed-to-key':
      return said.sealedToKey;
    case 'passphrase-too-costly':
      return said.tooCostly;
    case 'sealing-not-loadable':
    case 'sealing-unsupported':
      return sealFailureSaying(failure);
    default:
      return unreachable(failure);
  }
}

/** The file is larger than anything that is taken into memory. */
export function tooLargeSaying(bytes: number, limitBytes: number = LARGEST_BROUGHT_BYTES): Saying {
  const megabytes = (count: number): string => formatNumber(count / 1_000_000, 0);
  return words.handOn.failure.tooLarge(megabytes(bytes), megabytes(limitBytes));
}

/** Names of the file's own places are no words of any language. */
function damageSaying(path: DamagePath): Saying {
  const [list, place, ...inside] = path;
  return list === 'sessions' && typeof place === 'number'
    ? words.handOn.failure.damagedSession(place + 1, inside.join('.'))
    : words.handOn.failure.damaged(path.join('.'));
}

export function passphraseProblemSentence(problem: PassphraseProblem): string {
  return words.handOn.problem[problem];
}
