import { readFileSync } from 'node:fs';

/** Text and passphrase of the files in tests/fixtures/age, whose README says how they were made. */
export const FIXTURE_TEXT = 'Sealed by the age of Debian: äöü €\n';
export const FIXTURE_PASSPHRASE = 'correct horse Straße';

export function ageFixture(name: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(readFileSync(new URL(`../fixtures/age/${name}`, import.meta.url)));
}

/** The identity and the recipient of an identity file. */
export function fixtureKeys(name: 'practice' | 'other'): { readonly identity: string; readonly recipient: string } {
  const text = new TextDecoder().decode(ageFixture(`${name}-identity.txt`));
  const identity = /^AGE-SECRET-KEY-1\w+$/m.exec(text)?.[0];
  const recipient = /^# public key: (age1\w+)$/m.exec(text)?.[1];
  if (identity === undefined || recipient === undefined) throw new Error(`${name} is no file of an identity`);
  return { identity, recipient };
}
