import * as z from 'zod/mini';

/** What a row holds besides the names by which it is found: as it is, or sealed. */
export type Content =
  | { readonly kind: 'plain'; readonly json: string; readonly bytes: Uint8Array<ArrayBuffer> | null }
  | {
      readonly kind: 'sealed';
      /** of the key that it is sealed with */
      readonly keyId: string;
      readonly iv: Uint8Array<ArrayBuffer>;
      readonly sealed: Uint8Array<ArrayBuffer>;
    };

/**
 * What stands in a row: JSON, and where it is a picture its bytes. Text, because browsers take several times as long to copy what
 * is made of many objects.
 */
export interface Opened {
  readonly json: string;
  readonly bytes: Uint8Array<ArrayBuffer> | null;
}

/** A key and its name. */
export interface DataKey {
  readonly id: string;
  readonly key: CryptoKey;
}

const bytesSchema = z.custom<Uint8Array<ArrayBuffer>>((value) => value instanceof Uint8Array);

export const contentSchema: z.ZodMiniType<Content> = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('plain'), json: z.string(), bytes: z.nullable(bytesSchema) }),
  z.object({ kind: z.literal('sealed'), keyId: z.string(), iv: bytesSchema, sealed: bytesSchema }),
]);

/** As NIST SP 800-38D, 8.2.2 has it for vectors by chance: 96 bits, so that 2^32 contents may be sealed with one key. */
const IV_BYTES = 12;

/** The JSON before the bytes: its length in four bytes. */
const LENGTH_BYTES = 4;

/**
 * A row's content, sealed by AES-GCM where there is a key.
 *
 * @param place table, id and revision: sealed contents cannot be exchanged for one another, nor for their own earlier states
 */
export async function contentOf(place: string, { json, bytes }: Opened, dataKey: DataKey | null): Promise<Content> {
  if (dataKey === null) return { kind: 'plain', json, bytes };
  const encoded = new TextEncoder().encode(json);
  const whole = new Uint8Array(LENGTH_BYTES + encoded.length + (bytes?.length ?? 0));
  new DataView(whole.buffer).setUint32(0, encoded.length);
  whole.set(encoded, LENGTH_BYTES);
  whole.set(bytes ?? [], LENGTH_BYTES + encoded.length);
  const iv = crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const sealed = await crypto.subtle.encrypt(algorithm(iv, place), dataKey.key, whole);
  return { kind: 'sealed', keyId: dataKey.id, iv, sealed: new Uint8Array(sealed) };
}

/** What stands in a content; null where it cannot be opened with this key, or is damaged. */
export async function openContent(place: string, content: Content, dataKey: DataKey | null): Promise<Opened | null> {
  if (content.kind === 'plain') return content;
  if (content.keyId !== dataKey?.id) return null;
  try {
    const opened = await crypto.subtle.decrypt(algorithm(content.iv, place), dataKey.key, content.sealed);
    const length = new DataView(opened).getUint32(0);
    const json = new TextDecoder().decode(new Uint8Array(opened, LENGTH_BYTES, length));
    const rest = new Uint8Array(opened.slice(LENGTH_BYTES + length));
    // a picture has bytes, and nothing else has any
    return { json, bytes: rest.length === 0 ? null : rest };
  } catch {
    // not as it was sealed
    return null;
  }
}

function algorithm(iv: Uint8Array<ArrayBuffer>, place: string): AesGcmParams {
  return { name: 'AES-GCM', iv, additionalData: new TextEncoder().encode(place) };
}

/** Random bytes for a key, and the key that they are; nobody can read it out of the page again. */
export async function newDataKey(): Promise<{ readonly dataKey: DataKey; readonly bytes: Uint8Array<ArrayBuffer> }> {
  const bytes = crypto.getRandomValues(new Uint8Array(32));
  return { dataKey: await dataKeyOf(crypto.randomUUID(), bytes), bytes };
}

export async function dataKeyOf(id: string, bytes: Uint8Array<ArrayBuffer>): Promise<DataKey> {
  return { id, key: await crypto.subtle.importKey('raw', bytes, 'AES-GCM', false, ['encrypt', 'decrypt']) };
}
