import * as z from 'zod/mini';
import { settingsSchema, typedText } from '../../core/record/session-parts.js';
import { sessionIdSchema } from '../../core/record/session-schema.js';
import { fail, succeed } from '../../core/result.js';
import type { InvitationStore } from '../../session/invitation-list.js';
import { invitationListSchema, invitationReducer } from '../../session/invitation-list.js';
import type { KeyStore } from '../../session/practice-key.js';
import { practiceKeysSchema, withBackup } from '../../session/practice-key.js';
import type { Desk, DeskStore } from '../../session/session-store.js';
import type { DocumentForm } from './stored-document.js';
import { createStoredDocument } from './stored-document.js';
import type { Vault } from './vault.js';

const deskSchema: z.ZodMiniType<Desk> = z.object({
  settings: settingsSchema,
  readerNames: z.object({ first: typedText, second: typedText }),
  openSessionId: z.nullable(sessionIdSchema),
});

export const DESK_FORM: DocumentForm<Desk> = { id: 'desk', version: 1, schema: deskSchema };

/** A desk that cannot be read is none: nothing of a wearer is lost with it, and it is moved aside by the next one. */
export function createDeskStore(vault: Vault): DeskStore {
  const desk = createStoredDocument(vault, DESK_FORM);
  return {
    load: async () => {
      const found = await desk.load();
      if (!found.ok) return found;
      return succeed(found.value.kind === 'kept' ? found.value.value : null);
    },
    save: async (next) => {
      const saved = await desk.update(() => succeed(next));
      return saved.ok ? succeed(null) : saved;
    },
  };
}

/** Keys that cannot be read are never written over: a backup is put in their place, and a later version may read them. */
export function createKeyStore(vault: Vault): KeyStore {
  const keys = createStoredDocument(vault, { id: 'keys', version: 1, schema: practiceKeysSchema });
  return {
    load: async () => {
      const found = await keys.load();
      if (!found.ok) return found;
      switch (found.value.kind) {
        case 'none':
          return succeed([]);
        case 'kept':
          return succeed(found.value.value);
        case 'unreadable':
          return fail({ kind: 'keys-damaged' });
      }
    },
    update: (change) =>
      keys.update((state) =>
        state.kind === 'unreadable'
          ? fail({ kind: 'keys-damaged' } as const)
          : succeed(change(state.kind === 'kept' ? state.value : [])),
      ),
    bringBack: (backup, now) =>
      keys.update((state) => succeed(withBackup(state.kind === 'kept' ? state.value : [], backup, now))),
  };
}

export function createInvitationStore(vault: Vault): InvitationStore {
  const invitations = createStoredDocument(vault, { id: 'invitations', version: 1, schema: invitationListSchema });
  return {
    load: async () => {
      const found = await invitations.load();
      if (!found.ok) return found;
      return succeed(found.value.kind === 'kept' ? found.value.value : []);
    },
    update: (event) =>
      invitations.update((state) => succeed(invitationReducer(state.kind === 'kept' ? state.value : [], event))),
  };
}
