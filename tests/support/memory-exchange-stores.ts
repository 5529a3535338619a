import { succeed } from '../../src/core/result.js';
import type { InvitationList, InvitationStore } from '../../src/session/invitation-list.js';
import { invitationListSchema, invitationReducer } from '../../src/session/invitation-list.js';
import type { KeyStore, PracticeKeys } from '../../src/session/practice-key.js';
import { practiceKeysSchema, withBackup } from '../../src/session/practice-key.js';

/** Keys in memory, checked by their schema like those of a device. */
export function memoryKeyStore(keys: PracticeKeys = []): KeyStore {
  let kept = practiceKeysSchema.parse(keys);
  return {
    load: () => Promise.resolve(succeed(kept)),
    update: (change) => {
      kept = practiceKeysSchema.parse(change(kept));
      return Promise.resolve(succeed(kept));
    },
    bringBack: (backup, now) => {
      kept = practiceKeysSchema.parse(withBackup(kept, backup, now));
      return Promise.resolve(succeed(kept));
    },
  };
}

/** Invitations in memory, checked by their schema like those of a device. */
export function memoryInvitationStore(list: InvitationList = []): InvitationStore {
  let kept = invitationListSchema.parse(list);
  return {
    load: () => Promise.resolve(succeed(kept)),
    update: (event) => {
      kept = invitationListSchema.parse(invitationReducer(kept, event));
      return Promise.resolve(succeed(kept));
    },
  };
}
