import type { Result } from '../../core/result.js';
import { succeed } from '../../core/result.js';
import type { InvitationStore } from '../../session/invitation-list.js';
import type { KeyStore } from '../../session/practice-key.js';
import type { SealingPort } from '../../session/sealing.js';
import type { DeskStore, PictureStore, SessionStore, StoreFailure, StoreLock } from '../../session/session-store.js';
import type { ChangesChannel } from './changes-channel.js';
import { openChangesChannel, quietChannel } from './changes-channel.js';
import { openIndexedRows } from './indexed-rows.js';
import { createMemoryRows } from './memory-rows.js';
import type { Rows } from './rows.js';
import { createStoreLock } from './store-lock.js';
import { createDeskStore, createInvitationStore, createKeyStore } from './stored-documents.js';
import { createPictureStore } from './stored-pictures.js';
import { createSessionStore } from './stored-sessions.js';
import type { KeptSheetFate } from './taken-sheet.js';
import { takeKeptSheet } from './taken-sheet.js';
import type { Vault } from './vault.js';
import { createVault } from './vault.js';

/** All that is kept on this device, and its lock. */
export interface SessionDatabase {
  readonly sessions: SessionStore;
  readonly desk: DeskStore;
  readonly pictures: PictureStore;
  readonly keys: KeyStore;
  readonly invitations: InvitationStore;
  readonly lock: StoreLock;
  /** what became of the sheet of versions that had no database */
  readonly keptSheet: KeptSheetFate;
  /** false where all is gone when the page is closed */
  readonly isLasting: boolean;
  /** Lets go of the database; all that is asked of it later fails. */
  close(): void;
}

export interface SessionDatabaseOptions {
  /** wraps the key of the lock */
  readonly sealing: SealingPort;
  /** the text that versions before the database kept; null where there is none */
  readonly keptSheet: string | null;
  readonly newId: () => string;
  readonly now: () => Date;
}

/** The browser's database. Where it cannot be opened nothing was changed in it, and `createMemoryDatabase` takes its place. */
export async function openSessionDatabase(
  options: SessionDatabaseOptions,
): Promise<Result<SessionDatabase, StoreFailure>> {
  const rows = await openIndexedRows();
  if (!rows.ok) return rows;
  const vault = createVault(rows.value);
  const keptSheet = await takeKeptSheet(vault, options.keptSheet, freshOf(options));
  const channel = openChangesChannel();
  return succeed({ ...storesOf(rows.value, vault, channel, options), keptSheet, isLasting: true });
}

/** Keeps everything until the page is closed. The sheet of earlier versions is in it as well, and stays where it was. */
export async function createMemoryDatabase(options: SessionDatabaseOptions): Promise<SessionDatabase> {
  const rows = createMemoryRows();
  const vault = createVault(rows);
  const fate = await takeKeptSheet(vault, options.keptSheet, freshOf(options));
  const keptSheet = fate === 'taken' ? 'waiting' : fate;
  return { ...storesOf(rows, vault, quietChannel(), options), keptSheet, isLasting: false };
}

function freshOf({ newId, now }: SessionDatabaseOptions): { readonly id: string; readonly at: string } {
  return { id: newId(), at: now().toISOString() };
}

function storesOf(
  rows: Rows,
  vault: Vault,
  channel: ChangesChannel,
  { sealing, newId }: SessionDatabaseOptions,
): Omit<SessionDatabase, 'keptSheet' | 'isLasting'> {
  return {
    sessions: createSessionStore(vault, channel, newId),
    desk: createDeskStore(vault),
    pictures: createPictureStore(vault),
    keys: createKeyStore(vault),
    invitations: createInvitationStore(vault),
    lock: createStoreLock(vault, channel, sealing),
    close: () => {
      channel.close();
      rows.close();
    },
  };
}
