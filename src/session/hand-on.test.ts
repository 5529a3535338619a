import { describe, expect, it } from 'vitest';
import { writeSessionFile } from '../core/record/session-file.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import { exampleSession, MemorySessionStore } from '../../tests/support/memory-session-store.js';
import type { HandOnTools, HandOnWish } from './hand-on.js';
import { bringIn, fileKind, handOn } from './hand-on.js';
import type { PassphraseFailure, SealingPort } from './sealing.js';
import { toBase64 } from './sealing-base64.js';

const FIRST = '11111111-1111-4111-8111-111111111111';
const SECOND = '22222222-2222-4222-8222-222222222222';
const FRESH = '33333333-3333-4333-8333-333333333333';

/** Marks bytes with the passphrase instead of sealing them: the real sealing has tests of its own. */
const sealing: Pick<SealingPort, 'sealWithPassphrase' | 'openWithPassphrase'> = {
  sealWithPassphrase: (plain, passphrase) =>
    Promise.resolve(succeed(bytesOf(`${SCRYPT_HEAD}${passphrase}\n${new TextDecoder().decode(plain)}`))),
  openWithPassphrase: (sealed, passphrase): Promise<Result<Uint8Array<ArrayBuffer>, PassphraseFailure>> => {
    const text = new TextDecoder().decode(sealed);
    const head = `${SCRYPT_HEAD}${passphrase}\n`;
    return Promise.resolve(
      text.startsWith(head) ? succeed(bytesOf(text.slice(head.length))) : fail({ kind: 'wrong-passphrase' }),
    );
  },
};

const SCRYPT_HEAD = 'age-encryption.org/v1\n-> scrypt c2FsdA 18\n';
const KEY_HEAD = 'age-encryption.org/v1\n-> X25519 c2hhcmU\n';

function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(text);
}

function toolsWith(sessions: MemorySessionStore): HandOnTools {
  return {
    sessions,
    sealing: sealing as SealingPort,
    writers: {
      sessionFile: (records) => writeSessionFile(records, { writtenAt: '2026-11-25T12:00:00.000Z' }),
      table: (records, sign) => `${sign}:${records.map(({ id }) => id).join()}`,
    },
    fresh: () => ({ id: FRESH, at: '2026-11-25T12:00:00.000Z' }),
  };
}

const wish: HandOnWish = {
  ids: 'all',
  format: 'session-file',
  decimalSign: ',',
  passphrase: '',
  now: new Date(2026, 10, 25, 9, 5),
};

describe('handing on', () => {
  const store = new MemorySessionStore([exampleSession(FIRST), exampleSession(SECOND)]);
  store.unreadable = [{ id: 'bad', raw: '?' }];

  it('gives all back in another store, equal', async () => {
    const made = await handOn(toolsWith(store), wish);
    if (!made.ok) throw new Error(made.failure.kind);
    expect(made.value).toMatchObject({ fileName: 'glabella-sessions-2026-11-25-0905.json', count: 2, unreadable: 1 });
    const other = new MemorySessionStore();
    const brought = await bringIn(toolsWith(other), bytesOf(String(made.value.content)), null);
    expect(brought).toEqual(succeed({ added: 2, renewed: 0, beside: 0, same: 0 }));
    const [here, there] = [await store.all(), await other.all()];
    expect(there.ok && there.value.records).toEqual(here.ok && here.value.records);
  });

  it('gives a backup back with its passphrase only', async () => {
    const made = await handOn(toolsWith(store), { ...wish, format: 'backup', passphrase: 'calm herons' });
    if (!made.ok || typeof made.value.content === 'string') throw new Error('a sealed file was expected');
    expect(made.value.fileName).toBe('glabella-sessions-2026-11-25-0905.json.age');
    expect(fileKind(made.value.content)).toBe('sealed-with-passphrase');
    const tools = toolsWith(new MemorySessionStore());
    expect(await bringIn(tools, made.value.content, 'loud herons')).toEqual(fail({ kind: 'wrong-passphrase' }));
    expect(await bringIn(tools, made.value.content, 'calm herons')).toMatchObject({ ok: true, value: { added: 2 } });
  });

  it('takes only what was chosen, and names no wearer in the name of the file', async () => {
    const made = await handOn(toolsWith(store), { ...wish, ids: [SECOND], format: 'table' });
    expect(made).toMatchObject({
      ok: true,
      value: { fileName: 'glabella-session-2026-11-25-0905.csv', content: `\uFEFF,:${SECOND}`, count: 1 },
    });
  });

  it('says what the store says', async () => {
    const broken = new MemorySessionStore();
    broken.failure = { kind: 'storage-locked' };
    expect(await handOn(toolsWith(broken), wish)).toEqual(fail({ kind: 'storage-locked' }));
    const one = await handOn(toolsWith(store), { ...wish, ids: [FRESH] });
    expect(one).toEqual(fail({ kind: 'session-missing', id: FRESH }));
  });
});

describe('bringing in', () => {
  const tools = toolsWith(new MemorySessionStore());

  it('says what is wrong with a file, and brings in nothing of it', async () => {
    // 0xff stands nowhere in UTF-8
    expect(await bringIn(tools, new Uint8Array([0xff, 0xfe, 0x00]), null)).toEqual(fail({ kind: 'not-text' }));
    expect(await bringIn(tools, bytesOf('{"sess'), null)).toEqual(fail({ kind: 'not-json' }));
    expect(await bringIn(tools, bytesOf('{}'), null)).toEqual(fail({ kind: 'not-a-session-file' }));
    const summaries = await tools.sessions.summaries();
    expect(summaries.ok && summaries.value.summaries).toEqual([]);
  });
});

describe('what a file is from outside', () => {
  const armoured = (head: string): string => {
    const lines = toBase64(bytesOf(head + 'x'.repeat(200))).match(/.{1,64}/g) ?? [];
    return ['-----BEGIN AGE ENCRYPTED FILE-----', ...lines, '-----END AGE ENCRYPTED FILE-----', ''].join('\n');
  };

  it('tells how it is sealed, armoured or not', () => {
    expect(fileKind(bytesOf(SCRYPT_HEAD))).toBe('sealed-with-passphrase');
    expect(fileKind(bytesOf(KEY_HEAD))).toBe('sealed-to-key');
    expect(fileKind(bytesOf(armoured(SCRYPT_HEAD)))).toBe('sealed-with-passphrase');
    expect(fileKind(bytesOf(armoured(KEY_HEAD).replaceAll('\n', '\r\n')))).toBe('sealed-to-key');
  });

  it('takes everything else for plain', () => {
    expect(fileKind(bytesOf('{"format":"glabella-sessions"}'))).toBe('plain');
    expect(fileKind(new Uint8Array())).toBe('plain');
    expect(fileKind(bytesOf('-----BEGIN AGE ENCRYPTED FILE-----\n?'))).toBe('plain');
  });
});
