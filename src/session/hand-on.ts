import { parseSessionFile, type SessionFileFailure } from '../core/record/session-file.js';
import type { DecimalSign } from '../core/reading/parse-reading.js';
import type { NewSession } from '../core/record/kept-sheet.js';
import type { SessionRecord } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import { ARMOUR_BEGINNING } from './armoured.js';
import { isoDay } from './iso-day.js';
import { padded } from './sealing.js';
import type { PassphraseFailure, SealFailure, SealingPort } from './sealing.js';
import { fromBase64 } from './sealing-base64.js';
import type { AllSessions, BroughtIn, SessionStore, StoreFailure } from './session-store.js';

/** How sessions are handed on. */
export type HandOnFormat =
  /** everything, to be read back here or by others */
  | 'session-file'
  /** the same, sealed with a passphrase */
  | 'backup'
  /** a spreadsheet of the readings */
  | 'table';

/** What writes sessions as text. */
export interface SessionWriters {
  readonly sessionFile: (records: readonly SessionRecord[]) => string;
  readonly table: (records: readonly SessionRecord[], decimalSign: DecimalSign) => string;
}

/** What handing on and bringing in works with. */
export interface HandOnTools {
  readonly sessions: SessionStore;
  readonly sealing: SealingPort;
  readonly writers: SessionWriters;
  /** an id for a session that has none of its own, and the time */
  readonly fresh: () => NewSession;
}

/** A file to hand to the browser. */
export interface HandedOn {
  readonly fileName: string;
  readonly type: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
  /** how many sessions are in it */
  readonly count: number;
  /** how many were asked for and cannot be read */
  readonly unreadable: number;
}

export type HandOnFailure = StoreFailure | SealFailure;

export interface HandOnWish {
  readonly ids: readonly string[] | 'all';
  readonly format: HandOnFormat;
  readonly decimalSign: DecimalSign;
  /** used for a backup only */
  readonly passphrase: string;
  readonly now: Date;
}

/** Makes the file that was wished for. What cannot be read is left out and counted. */
export async function handOn(
  { sessions, sealing, writers }: Omit<HandOnTools, 'fresh'>,
  { ids, format, decimalSign, passphrase, now }: HandOnWish,
): Promise<Result<HandedOn, HandOnFailure>> {
  const read = await readSessions(sessions, ids);
  if (!read.ok) return read;
  const { records, unreadable } = read.value;
  const facts = { count: records.length, unreadable: unreadable.length };
  const stem = fileStem(facts.count, now);
  if (format === 'table') {
    // The mark at the beginning tells spreadsheets that it is UTF-8.
    const content = `\uFEFF${writers.table(records, decimalSign).replace(/^\uFEFF/, '')}`;
    return succeed({ fileName: `${stem}.csv`, type: 'text/csv', content, ...facts });
  }
  const text = writers.sessionFile(records);
  if (format === 'session-file') {
    return succeed({ fileName: `${stem}.json`, type: 'application/json', content: text, ...facts });
  }
  const sealed = await sealing.sealWithPassphrase(padded(text), passphrase);
  if (!sealed.ok) return sealed;
  return succeed({ fileName: `${stem}.json.age`, type: 'application/octet-stream', content: sealed.value, ...facts });
}

async function readSessions(
  sessions: SessionStore,
  ids: readonly string[] | 'all',
): Promise<Result<AllSessions, StoreFailure>> {
  const [only, ...others] = ids === 'all' ? [] : ids;
  if (only !== undefined && others.length === 0) {
    const one = await sessions.load(only);
    return one.ok ? succeed({ records: [one.value.record], unreadable: [] }) : one;
  }
  const all = await sessions.all();
  if (!all.ok || ids === 'all') return all;
  const wanted = new Set(ids);
  return succeed({
    records: all.value.records.filter(({ id }) => wanted.has(id)),
    unreadable: all.value.unreadable.filter(({ id }) => wanted.has(id)),
  });
}

/** No wearer's name: names of files are seen by more people than their contents. */
function fileStem(count: number, now: Date): string {
  const two = (number: number): string => String(number).padStart(2, '0');
  return `glabella-${count === 1 ? 'session' : 'sessions'}-${isoDay(now)}-${two(now.getHours())}${two(now.getMinutes())}`;
}

/** What a file is from outside. */
export type FileKind =
  /** not sealed: a session file, or something else */
  | 'plain'
  | 'sealed-with-passphrase'
  /** sealed to a key, as the answers of distant wearers are */
  | 'sealed-to-key';

const SEALED_BEGINNING = 'age-encryption.org/v1\n';

/** Whether a file is sealed, and how: by its first lines, before anybody is asked for a passphrase. */
export function fileKind(bytes: Uint8Array): FileKind {
  const beginning = asLetters(bytes.subarray(0, 4096));
  const head = beginning.trimStart().startsWith(ARMOUR_BEGINNING) ? withoutArmour(beginning.trimStart()) : beginning;
  if (!head.startsWith(SEALED_BEGINNING)) return 'plain';
  return head.startsWith('-> scrypt ', SEALED_BEGINNING.length) ? 'sealed-with-passphrase' : 'sealed-to-key';
}

/** The first bytes under an armour, as letters. */
function withoutArmour(text: string): string {
  const lines = text.split(/\r?\n/).slice(1);
  // Only whole lines: what follows may be cut off in the middle of a byte.
  const whole = lines.filter((line) => line.length === 64).join('');
  const bytes = fromBase64(whole === '' ? (lines[0] ?? '') : whole);
  return bytes === null ? '' : asLetters(bytes);
}

function asLetters(bytes: Uint8Array): string {
  return new TextDecoder('latin1').decode(bytes);
}

/** Chosen: far more than the sessions of a long life, far less than a browser takes into memory. */
export const LARGEST_BROUGHT_BYTES = 256 * 2 ** 20;

export type BringFailure =
  | SessionFileFailure
  | PassphraseFailure
  | StoreFailure
  /** text that is no UTF-8: choose another file */
  | { readonly kind: 'not-text' };

/**
 * Brings the sessions of a file into the store: all or none.
 *
 * @param passphrase for sealed files; null for plain ones
 */
export async function bringIn(
  { sessions, sealing, fresh }: Omit<HandOnTools, 'writers'>,
  bytes: Uint8Array,
  passphrase: string | null,
): Promise<Result<BroughtIn, BringFailure>> {
  let plain = bytes;
  if (passphrase !== null) {
    // Not every backup was made here, so none has to be padded.
    const opened = await sealing.openWithPassphrase(bytes, passphrase, {
      limitBytes: LARGEST_BROUGHT_BYTES,
      isPadded: false,
    });
    if (!opened.ok) return opened;
    plain = opened.value;
  }
  const text = decoded(plain);
  if (text === null) return fail({ kind: 'not-text' });
  const parsed = parseSessionFile(text, fresh());
  return parsed.ok ? sessions.bring(parsed.value) : parsed;
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
