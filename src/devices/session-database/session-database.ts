import type { Result } from '../../core/result.js';
import { succeed } from '../../core/result.js';
import type { SealingPort } from '../../session/sealing.js';
import type { SessionDatabase } from '../../session/session-database.js';
import type { StoreFailure } from '../../session/session-store.js';
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

export interface OpenedSessionDatabase extends SessionDatabase {
  /** what became of the sheet of versions that had no database */
  readonly keptSheet: KeptSheetFate;
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
): Promise<Result<OpenedSessionDatabase, StoreFailure>> {
  const rows = await openIndexedRows();
  if (!rows.ok) return rows;
  const vault = createVault(rows.value);
  const keptSheet = await takeKeptSheet(vault, options.keptSheet, freshOf(options));
  const channel = openChangesChannel();
  return succeed({ ...storesOf(rows.value, vault, channel, options), keptSheet });
}

/** Keeps everything until the page is closed. The sheet of earlier versions is in it as well, and stays where it was. */
export async function createMemoryDatabase(options: SessionDatabaseOptions): Promise<OpenedSessionDatabase> {
  const rows = createMemoryRows();
  const vault = createVault(rows);
  const fate = await takeKeptSheet(vault, options.keptSheet, freshOf(options));
  const keptSheet = fate === 'taken' ? 'waiting' : fate;
  return { ...storesOf(rows, vault, quietChannel(), options), keptSheet };
}

function freshOf({ newId, now }: SessionDatabaseOptions): { readonly id: string; readonly at: string } {
  return { id: newId(), at: now().toISOString() };
}

function storesOf(
  rows: Rows,
  vault: Vault,
  channel: ChangesChannel,
  { sealing, newId }: SessionDatabaseOptions,
): Omit<OpenedSessionDatabase, 'keptSheet'> {
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
