import * as z from 'zod/mini';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import { crc32 } from './invitation-check.js';
import { BEGINNING } from './is-invitation.js';
import { isoDay } from './iso-day.js';
import { RANDOM_ID_FORM, RECIPIENT_FORM } from './sealing.js';
import { fromBase64Url, toBase64Url } from './sealing-base64.js';

export type CardKind = SheetSettings['card'];

/**
 * What a distant wearer is sent, in the fragment of a link: it reaches no server. Only who holds the link knows the id, which
 * an answer has to repeat.
 */
export interface Invitation {
  /** 128 random bits, as 22 letters of base64url; see `SealingPort.randomId` */
  readonly id: string;
  /** the practice's public key, `age1…` */
  readonly recipient: string;
  /** who invites, as typed; may be empty */
  readonly practice: string;
  /** of the wearer's page, as a language tag (BCP 47) */
  readonly language: string;
  /** to the minute, ISO 8601 in UTC */
  readonly madeAt: string;
  /** the last day on which it counts, `YYYY-MM-DD` */
  readonly expiresOn: string;
  /** what the wearer may hold to the face; at least one */
  readonly cards: readonly CardKind[];
  /** whether the wearer is asked to send pictures along; the wearer may refuse */
  readonly asksForPictures: boolean;
}

/** Why a fragment gave no invitation. */
export type InvitationFailure =
  /** it is something else, or nothing: open the link as it was sent */
  | { readonly kind: 'no-invitation' }
  /** cut off or changed on its way: open the whole link, or ask for it once more */
  | { readonly kind: 'damaged' }
  /** made by a later version of the app: load the page anew */
  | { readonly kind: 'newer-version'; readonly version: number; readonly knownVersion: number }
  /** ask the practice for another one */
  | { readonly kind: 'expired'; readonly expiresOn: string; readonly practice: string };

/** The longest name of a practice, in bytes of UTF-8. Chosen: with it, a link still fits into the QR code below. */
export const PRACTICE_NAME_LIMIT_BYTES = 80;

/**
 * The longest link, in letters: what a QR code of version 15 holds at level M (ISO/IEC 18004, table 7: 412 bytes). A phone reads
 * such a code of 77 by 77 cells from a screen without effort.
 */
export const LINK_LIMIT = 412;

/** Chosen: how long an invitation counts where nobody says otherwise. */
export const DEFAULT_DAYS = 14;

const VERSION = 1;
const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** The cards by the letter that stands for each in a link. */
const CARD_LETTERS: Readonly<Record<CardKind, string>> = { bought: 'b', printed: 'p' };

/** A language tag (BCP 47), as far as this app has any use for. */
export const languageTagSchema: z.ZodMiniType<string> = z
  .string()
  .check(z.regex(/^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$/), z.maxLength(24));

export const invitationSchema: z.ZodMiniType<Invitation> = z.object({
  id: z.string().check(z.regex(RANDOM_ID_FORM)),
  recipient: z.string().check(z.regex(RECIPIENT_FORM)),
  practice: z.string().check(z.refine((name) => byteLength(name) <= PRACTICE_NAME_LIMIT_BYTES)),
  language: languageTagSchema,
  madeAt: z.iso.datetime(),
  expiresOn: z.iso.date(),
  cards: z.array(z.enum(['bought', 'printed'])).check(
    z.minLength(1),
    z.maxLength(2),
    z.refine((cards) => new Set(cards).size === cards.length),
  ),
  asksForPictures: z.boolean(),
});

/** What is chosen for an invitation. */
export interface InvitationChoices {
  readonly recipient: string;
  /** as typed; what goes beyond the longest name is cut off */
  readonly practice: string;
  readonly language: string;
  readonly cards: readonly CardKind[];
  readonly asksForPictures: boolean;
  /** how many days it counts after the day on which it is made */
  readonly days: number;
}

/** An invitation made at this moment. */
export function makeInvitation(choices: InvitationChoices, id: string, now: Date): Invitation {
  const { recipient, practice, language, cards, asksForPictures, days } = choices;
  return {
    id,
    recipient,
    practice: clipped(practice.trim()),
    language,
    madeAt: new Date(Math.floor(now.getTime() / MINUTE_MS) * MINUTE_MS).toISOString(),
    expiresOn: isoDay(new Date(now.getTime() + days * DAY_MS)),
    cards,
    asksForPictures,
  };
}

/**
 * The moment from which an invitation counts no more: when its last day is over everywhere on earth, twelve hours after it is
 * over in UTC. The wearer's day may not be the practice's.
 */
export function endOfInvitation({ expiresOn }: Pick<Invitation, 'expiresOn'>): Date {
  return new Date(Date.parse(`${expiresOn}T00:00:00Z`) + 1.5 * DAY_MS);
}

/**
 * The fragment of a link, without its `#`: fields with points between them, and at the end a check over all that stands before
 * it. Later versions may have other fields, but begin and end alike, so that a damaged link is always told from a newer one.
 */
export function encodeInvitation(invitation: Invitation): string {
  const { id, recipient, practice, language, madeAt, expiresOn, cards, asksForPictures } = invitation;
  const fields = [
    VERSION,
    id,
    recipient.slice('age1'.length),
    Math.round(Date.parse(madeAt) / MINUTE_MS).toString(36),
    Math.round(Date.parse(`${expiresOn}T00:00:00Z`) / DAY_MS).toString(36),
    cards.map((card) => CARD_LETTERS[card]).join('') + (asksForPictures ? 'i' : ''),
    language,
    toBase64Url(new TextEncoder().encode(practice)),
  ];
  const text = `${BEGINNING}${fields.join('.')}.`;
  return text + checkOf(text);
}

/**
 * The invitation of a fragment, with or without its `#`. Blanks and marks that a message left at its end do not matter.
 *
 * @param now an invitation whose last day is over is refused
 */
export function parseInvitation(fragment: string, now: Date): Result<Invitation, InvitationFailure> {
  const text = fragment
    .trim()
    .replace(/^#/, '')
    .replace(/[^0-9A-Za-z]+$/, '');
  if (!text.startsWith(BEGINNING)) return fail({ kind: 'no-invitation' });
  const checked = text.slice(0, -CHECK_LETTERS);
  if (!checked.endsWith('.') || checkOf(checked) !== text.slice(-CHECK_LETTERS)) return fail({ kind: 'damaged' });
  const [version = '', ...fields] = checked.slice(BEGINNING.length, -1).split('.');
  if (!/^[1-9]\d{0,5}$/.test(version)) return fail({ kind: 'damaged' });
  if (Number(version) > VERSION) {
    return fail({ kind: 'newer-version', version: Number(version), knownVersion: VERSION });
  }
  const parsed = invitationSchema.safeParse(fromFields(fields));
  if (!parsed.success) return fail({ kind: 'damaged' });
  const { expiresOn, practice } = parsed.data;
  if (now.getTime() >= endOfInvitation(parsed.data).getTime()) return fail({ kind: 'expired', expiresOn, practice });
  return succeed(parsed.data);
}

/** Why there is no link. */
export type LinkFailure = { readonly kind: 'link-too-long'; readonly letters: number; readonly limit: number };

/**
 * The link that is sent, or shown as a QR code.
 *
 * @param address of the page; a fragment that it has is left out
 */
export function linkOf(invitation: Invitation, address: string): Result<string, LinkFailure> {
  const link = `${address.replace(/#.*$/, '')}#${encodeInvitation(invitation)}`;
  return link.length > LINK_LIMIT
    ? fail({ kind: 'link-too-long', letters: link.length, limit: LINK_LIMIT })
    : succeed(link);
}

/** What the fields after the version say, unchecked; undefined where their number is another. */
function fromFields(fields: readonly string[]): unknown {
  if (fields.length !== 7) return undefined;
  const [id, recipient, madeAt, expiresOn, choices = '', language, practice] = fields;
  const letters = Object.entries(CARD_LETTERS);
  return {
    id,
    recipient: `age1${recipient}`,
    practice: textOf(practice),
    language,
    madeAt: momentOf(madeAt, 6, MINUTE_MS),
    expiresOn: momentOf(expiresOn, 4, DAY_MS)?.slice(0, 'YYYY-MM-DD'.length),
    cards: [...choices.replace(/i$/, '')].map((letter) => letters.find(([, one]) => one === letter)?.[0]),
    asksForPictures: choices.endsWith('i'),
  };
}

/** The moment this many units after 1970, given in base 36; undefined where it is none, or beyond the calendar. */
function momentOf(text: string | undefined, letters: number, unitMs: number): string | undefined {
  if (text === undefined || text.length > letters || !/^[0-9a-z]+$/.test(text)) return undefined;
  return new Date(parseInt(text, 36) * unitMs).toISOString();
}

/** The UTF-8 text in base64url; undefined where it is none. */
function textOf(base64: string | undefined): string | undefined {
  const bytes = fromBase64Url(base64 ?? '');
  if (bytes === null) return undefined;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

const CHECK_LETTERS = 7;

/** CRC-32 in base 36, always of the same length. */
function checkOf(text: string): string {
  return crc32(new TextEncoder().encode(text)).toString(36).padStart(CHECK_LETTERS, '0');
}

function byteLength(text: string): number {
  return new TextEncoder().encode(text).length;
}

/** The text without the letters at its end that are too many. */
function clipped(text: string): string {
  // By code points: half a letter is none.
  const letters = [...text];
  while (byteLength(letters.join('')) > PRACTICE_NAME_LIMIT_BYTES) letters.pop();
  return letters.join('').trimEnd();
}
