import * as z from 'zod/mini';
import type { Result } from '../core/result.js';
import { fail, invariant, succeed } from '../core/result.js';
import { isoDay } from './iso-day.js';
import type { KeyPair, PassphraseFailure, SealFailure, SealingOutage, SealingPort } from './sealing.js';
import { IDENTITY_FORM, padded, RECIPIENT_FORM } from './sealing.js';
import type { StoreFailure } from './session-store.js';

/** A pair of keys that answers of distant wearers are sealed to and opened with. */
export interface PracticeKey extends KeyPair {
  /** ISO 8601 in UTC */
  readonly madeAt: string;
  /**
   * when it was replaced, ISO 8601 in UTC; null while it is in use. A retired key still opens answers to the invitations that
   * were made with it; new ones are made with the key in use.
   */
  readonly retiredAt: string | null;
}

/** All keys of a practice, newest first; at most one is in use. */
export type PracticeKeys = readonly PracticeKey[];

const moment = z.iso.datetime();

const keySchema: z.ZodMiniType<PracticeKey> = z.object({
  identity: z.string().check(z.regex(IDENTITY_FORM)),
  recipient: z.string().check(z.regex(RECIPIENT_FORM)),
  madeAt: moment,
  retiredAt: z.nullable(moment),
});

/** Chosen: keys are replaced once in a while; nobody has a thousand. */
const MOST_KEYS = 1000;

export const practiceKeysSchema: z.ZodMiniType<PracticeKeys> = z.array(keySchema).check(
  z.maxLength(MOST_KEYS),
  z.refine((keys) => keys.filter(({ retiredAt }) => retiredAt === null).length <= 1),
  z.refine((keys) => new Set(keys.map(({ recipient }) => recipient)).size === keys.length),
);

/** Why keys could not be read from where they are kept, or not be kept there. */
export type KeyStoreFailure =
  | StoreFailure
  /** what is kept there cannot be read as keys: bring them back from a backup */
  | { readonly kind: 'keys-damaged' };

/** Keeps the keys on this device. Checked by their schema when they are written and when they are read. */
export interface KeyStore {
  /** All keys; none where none were made yet. */
  load(): Promise<Result<PracticeKeys, KeyStoreFailure>>;
  /**
   * Keeps what the change makes of the keys that are kept at that moment, and resolves with it once it stands. Nobody else
   * writes in between: of two windows that make the first key, one finds the other's.
   */
  update(change: (keys: PracticeKeys) => PracticeKeys): Promise<Result<PracticeKeys, KeyStoreFailure>>;
  /** Adds the keys of a backup. What is kept and cannot be read as keys is moved aside for them, and stays on this device. */
  bringBack(backup: PracticeKeys, now: Date): Promise<Result<PracticeKeys, StoreFailure>>;
}

/** The key that invitations are made with; null where none was made yet. */
export function keyInUse(keys: PracticeKeys): PracticeKey | null {
  return keys.find(({ retiredAt }) => retiredAt === null) ?? null;
}

/** What opens answers: the identities of all keys. */
export function identitiesOf(keys: PracticeKeys): readonly string[] {
  return keys.map(({ identity }) => identity);
}

/** The keys with a new one in use; the one before is retired. */
export function withNewKey(keys: PracticeKeys, { identity, recipient }: KeyPair, now: Date): PracticeKeys {
  return [{ identity, recipient, madeAt: now.toISOString(), retiredAt: null }, ...retired(keys, now)];
}

/**
 * The keys together with those of a backup. Where both have a key in use, the one that was made last stays in use; a key that
 * was retired on either side is retired.
 */
export function withBackup(keys: PracticeKeys, backup: PracticeKeys, now: Date): PracticeKeys {
  const merged = new Map(keys.map((key) => [key.recipient, key]));
  for (const key of backup) {
    const known = merged.get(key.recipient);
    merged.set(key.recipient, known === undefined ? key : { ...known, retiredAt: known.retiredAt ?? key.retiredAt });
  }
  const newestFirst = [...merged.values()].sort((a, b) => Date.parse(b.madeAt) - Date.parse(a.madeAt));
  const inUse = keyInUse(newestFirst);
  return newestFirst.map((key) => (key === inUse ? key : (retired([key], now)[0] ?? key)));
}

function retired(keys: PracticeKeys, now: Date): PracticeKeys {
  return keys.map((key) => (key.retiredAt === null ? { ...key, retiredAt: now.toISOString() } : key));
}

/** Why a backup gave no keys. */
export type KeyBackupFailure =
  | Exclude<PassphraseFailure, { readonly kind: 'sealed-to-key' }>
  /** a sealed file, but of something else */
  | { readonly kind: 'no-key-backup' }
  /** written by a later version of the app: use that one */
  | { readonly kind: 'newer-version'; readonly version: number; readonly knownVersion: number };

const FORMAT = '# glabella-practice-keys ';
const VERSION = 1;

/** Chosen: a key takes about 200 bytes; a larger file is something else. */
export const KEY_BACKUP_LIMIT_BYTES = 1024 * 1024;

/** What a backup is called. */
export function keyBackupName(now: Date): string {
  return `glabella-keys-${isoDay(now)}.age`;
}

/**
 * The keys as a file that is sealed with a passphrase. Inside is an identity file as the format's own programs read it
 * (`age --decrypt --identity`), what else is known of a key in its comments: so answers can be opened without this app.
 */
export async function sealKeyBackup(
  sealing: SealingPort,
  keys: PracticeKeys,
  passphrase: string,
): Promise<Result<Uint8Array<ArrayBuffer>, SealFailure>> {
  const lines = keys.flatMap(({ identity, recipient, madeAt, retiredAt }) => [
    `${CREATED}${madeAt}`,
    ...(retiredAt === null ? [] : [`${RETIRED}${retiredAt}`]),
    `${PUBLIC}${recipient}`,
    identity,
  ]);
  // The padding becomes part of a comment.
  return sealing.sealWithPassphrase(padded([`${FORMAT}${VERSION}`, ...lines, '#'].join('\n')), passphrase);
}

/** The keys of a backup. */
export async function openKeyBackup(
  sealing: SealingPort,
  file: Uint8Array,
  passphrase: string,
): Promise<Result<PracticeKeys, KeyBackupFailure>> {
  const options = { limitBytes: KEY_BACKUP_LIMIT_BYTES, isPadded: true };
  const opened = await sealing.openWithPassphrase(file, passphrase, options);
  if (!opened.ok) {
    const { failure } = opened;
    return fail(failure.kind === 'sealed-to-key' ? { kind: 'no-key-backup' } : failure);
  }
  const [first = '', ...lines] = new TextDecoder().decode(opened.value).split('\n');
  const version = first.slice(FORMAT.length);
  if (!first.startsWith(FORMAT) || !/^[1-9]\d{0,5}$/.test(version)) return fail({ kind: 'no-key-backup' });
  if (Number(version) > VERSION) {
    return fail({ kind: 'newer-version', version: Number(version), knownVersion: VERSION });
  }
  const parsed = practiceKeysSchema.safeParse(keysOfLines(lines));
  return parsed.success ? succeed(parsed.data) : fail({ kind: 'no-key-backup' });
}

const CREATED = '# created: ';
const RETIRED = '# retired: ';
const PUBLIC = '# public key: ';

/** The keys of an identity file, unchecked: each line with an identity ends what the comments before it say of it. */
function keysOfLines(lines: readonly string[]): unknown[] {
  const keys: unknown[] = [];
  let comments: readonly string[] = [];
  for (const line of lines) {
    if (line.startsWith('#')) {
      comments = [...comments, line];
      continue;
    }
    const said = (beginning: string): string | undefined =>
      comments.find((comment) => comment.startsWith(beginning))?.slice(beginning.length);
    keys.push({ identity: line, recipient: said(PUBLIC), madeAt: said(CREATED), retiredAt: said(RETIRED) ?? null });
    comments = [];
  }
  return keys;
}

/** Why there is no key to make an invitation with. */
export type NewKeyFailure = SealingOutage | KeyStoreFailure;

/**
 * The key in use, made and kept now where there is none yet. It is not handed out before it is kept: an answer to a key that is
 * lost could never be opened.
 */
export async function keyForInvitations(
  sealing: SealingPort,
  store: KeyStore,
  now: Date,
): Promise<Result<PracticeKey, NewKeyFailure>> {
  const loaded = await store.load();
  if (!loaded.ok) return loaded;
  const known = keyInUse(loaded.value);
  if (known !== null) return succeed(known);
  return keepNewKey(sealing, store, (keys, pair) => (keyInUse(keys) === null ? withNewKey(keys, pair, now) : keys));
}

/** Makes a new key, keeps it, and retires the one before. */
export function replaceKey(
  sealing: SealingPort,
  store: KeyStore,
  now: Date,
): Promise<Result<PracticeKey, NewKeyFailure>> {
  return keepNewKey(sealing, store, (keys, pair) => withNewKey(keys, pair, now));
}

async function keepNewKey(
  sealing: SealingPort,
  store: KeyStore,
  change: (keys: PracticeKeys, pair: KeyPair) => PracticeKeys,
): Promise<Result<PracticeKey, NewKeyFailure>> {
  const pair = await sealing.makeKeyPair();
  if (!pair.ok) return pair;
  const kept = await store.update((keys) => change(keys, pair.value));
  if (!kept.ok) return kept;
  const inUse = keyInUse(kept.value);
  invariant(inUse !== null, 'a store of keys keeps what it was given');
  return succeed(inUse);
}
