import type { InvitationStore } from './invitation-list.js';
import type { KeyStore } from './practice-key.js';
import type { DeskStore, PictureStore, SessionStore, StoreLock } from './session-store.js';

/** All that is kept on this device, and its lock. */
export interface SessionDatabase {
  readonly sessions: SessionStore;
  readonly desk: DeskStore;
  readonly pictures: PictureStore;
  readonly keys: KeyStore;
  readonly invitations: InvitationStore;
  readonly lock: StoreLock;
}
