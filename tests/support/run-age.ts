import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ageExecutable } from './age-executable.js';

/** Files for one run of `age`, in a directory of their own that is gone afterwards. */
export type AgeFiles = Readonly<Record<string, Uint8Array | string>>;

function inDirectory<Value>(files: AgeFiles, work: (age: string, directory: string) => Value): Value {
  const age = ageExecutable();
  if (age === null) throw new Error('The program age is missing: npm test installs it, or name it with AGE=…');
  const directory = mkdtempSync(join(tmpdir(), 'glabella-age-'));
  try {
    for (const [name, content] of Object.entries(files)) writeFileSync(join(directory, name), content);
    return work(age, directory);
  } finally {
    rmSync(directory, { recursive: true, force: true });
  }
}

/**
 * What `age` writes with these words, run where the files are; throws with its complaint where it refuses.
 *
 * @param words the last one before the file names; output goes to standard output
 */
export function runAge(words: readonly string[], files: AgeFiles): Uint8Array<ArrayBuffer> {
  return inDirectory(files, (age, cwd) => {
    const { status, stdout, stderr } = spawnSync(age, words, { cwd, maxBuffer: 64 * 1024 * 1024 });
    if (status !== 0) throw new Error(stderr.toString());
    return new Uint8Array(stdout);
  });
}

/**
 * The same with a passphrase typed at each question. `age` asks for it at a terminal only, which `script` of util-linux makes.
 *
 * @param words with the output to the file `out`
 */
export function runAgeWithPassphrase(
  words: readonly string[],
  passphrases: readonly string[],
  files: AgeFiles,
): Uint8Array<ArrayBuffer> {
  return inDirectory(files, (age, cwd) => {
    const command = [age, ...words].join(' ');
    const input = passphrases.map((passphrase) => `${passphrase}\n`).join('');
    const { status, stdout, error } = spawnSync('script', ['-qefc', command, '/dev/null'], { cwd, input });
    if (error !== undefined) throw error;
    if (status !== 0) throw new Error(stdout.toString());
    return new Uint8Array(readFileSync(join(cwd, 'out')));
  });
}
