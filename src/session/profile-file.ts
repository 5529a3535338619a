import * as z from 'zod/mini';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { StoredProfile } from './stored-profile.js';
import { PROFILE_NAME_LIMIT } from './stored-profile.js';

/** A profile that has not been put on the shelf yet. */
export type LooseProfile = Omit<StoredProfile, 'id'>;

/** Why a file gave no profile. */
export type ProfileFileFailure =
  /** the file is something else: choose another one */
  | { readonly kind: 'no-profile' }
  /** written by a later version of the app: use that one, or make the profile again */
  | { readonly kind: 'newer-version'; readonly version: number; readonly knownVersion: number }
  /** it was cut off or changed: export it again; `place` is the first field that cannot be right, null for the whole text */
  | { readonly kind: 'damaged'; readonly place: string | null };

const FORMAT = 'glabella-camera-profile';
const VERSION = 1;

/** Beyond this many letters it is no name of a profile. */
const READABLE_NAME_LIMIT = 512;

/** Chosen: a profile is about a kilobyte; a file beyond this is something else, and is not read at all. */
export const PROFILE_FILE_LIMIT_BYTES = 64 * 1024;

const positive = z.number().check(z.positive());
const nonNegative = z.number().check(z.nonnegative());
const size = z.int().check(z.gte(16), z.lte(20_000));

const coefficients = <Entry extends z.ZodMiniType>(entry: Entry) => z.tuple([entry, entry, entry, entry, entry]);

const cameraProfileSchema = z
  .object({
    widthPx: size,
    heightPx: size,
    fx: positive,
    fy: positive,
    cx: positive,
    cy: positive,
    distortion: coefficients(z.number()),
    uncertainty: z.object({
      fx: positive,
      fy: positive,
      cx: nonNegative,
      cy: nonNegative,
      // of a coefficient that was held at zero: none
      distortion: coefficients(nonNegative),
    }),
    rmsPx: nonNegative,
    viewCount: z.int().check(z.positive()),
  })
  // Chosen: fields of view from 5 to 140 degrees, and an optical axis that meets the picture. A camera beyond that is none.
  .check(
    z.refine(({ fx, widthPx }) => fx > 0.18 * widthPx && fx < 12 * widthPx, { path: ['fx'] }),
    z.refine(({ fy, fx }) => fy > 0.5 * fx && fy < 2 * fx, { path: ['fy'] }),
    z.refine(({ cx, widthPx }) => cx < widthPx, { path: ['cx'] }),
    z.refine(({ cy, heightPx }) => cy < heightPx, { path: ['cy'] }),
  );

const looseProfileSchema = z.object({
  name: z.pipe(
    z.string().check(z.trim(), z.minLength(1), z.maxLength(READABLE_NAME_LIMIT)),
    z.transform((name: string) => name.slice(0, PROFILE_NAME_LIMIT)),
  ),
  cameraLabel: z.nullable(z.string().check(z.maxLength(512))),
  madeOn: z.iso.date(),
  profile: cameraProfileSchema,
  coverage: z.number().check(z.gte(0), z.lte(1)),
});

const storedProfileSchema = z.extend(looseProfileSchema, { id: z.string().check(z.minLength(1), z.maxLength(64)) });

/** A profile as the text of a file of its own. What the file does not carry is the shelf's own id. */
export function writeProfileFile({ name, cameraLabel, madeOn, profile, coverage }: StoredProfile): string {
  return `${JSON.stringify({ format: FORMAT, version: VERSION, name, cameraLabel, madeOn, coverage, profile }, null, 2)}\n`;
}

/** The profile of a file. */
export function parseProfileFile(text: string): Result<LooseProfile, ProfileFileFailure> {
  const raw = parseJson(text);
  const head = z.object({ format: z.literal(FORMAT), version: z.int().check(z.positive()) }).safeParse(raw);
  if (!head.success) {
    // Ours, but cut off: the name of the format stands at its beginning.
    return fail(text.slice(0, 200).includes(FORMAT) ? { kind: 'damaged', place: null } : { kind: 'no-profile' });
  }
  if (head.data.version > VERSION) {
    return fail({ kind: 'newer-version', version: head.data.version, knownVersion: VERSION });
  }
  const parsed = looseProfileSchema.safeParse(raw);
  return parsed.success
    ? succeed(parsed.data)
    : fail({ kind: 'damaged', place: parsed.error.issues[0]?.path.join('.') ?? null });
}

/** What is kept on a device: the profiles, and the entries that this version cannot read, untouched. */
export interface KeptProfiles {
  readonly profiles: readonly StoredProfile[];
  readonly unread: readonly unknown[];
}

/** The shelf as the text that is kept. */
export function writeKeptProfiles({ profiles, unread }: KeptProfiles): string {
  return JSON.stringify({ version: VERSION, profiles: [...profiles, ...unread] });
}

/** The shelf from kept text; null where the text as a whole is not what `writeKeptProfiles` writes. */
export function parseKeptProfiles(text: string): KeptProfiles | null {
  const outer = z.object({ version: z.literal(VERSION), profiles: z.array(z.unknown()) }).safeParse(parseJson(text));
  if (!outer.success) return null;
  const profiles: StoredProfile[] = [];
  const unread: unknown[] = [];
  for (const entry of outer.data.profiles) {
    const parsed = storedProfileSchema.safeParse(entry);
    if (parsed.success && profiles.every(({ id }) => id !== parsed.data.id)) profiles.push(parsed.data);
    else unread.push(entry);
  }
  return { profiles, unread };
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
