import { mkdir, mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

interface Installation {
  readonly nodeComplaint: (version: string) => string | null;
  readonly newestChangeMs: (paths: readonly string[]) => number;
}

// Plain JavaScript without declarations: it runs before anything is installed.
const path = './installation.mjs';
const { nodeComplaint, newestChangeMs } = (await import(/* @vite-ignore */ path)) as Installation;

describe('nodeComplaint', () => {
  // The engines that vite 8 names in its package.json: ^20.19.0 || >=22.12.0
  it.each(['20.19.0', '20.20.2', '22.12.0', '24.0.0'])('accepts %s', (version) => {
    expect(nodeComplaint(version)).toBeNull();
  });

  it.each(['16.20.0', '18.20.8', '20.18.3', '21.7.3', '22.11.0'])(
    'names what is needed and what is there: %s',
    (version) => {
      expect(nodeComplaint(version)).toMatch(new RegExp(`20\\.19.*${version}`));
    },
  );
});

describe('newestChangeMs', () => {
  let folder: string;

  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'glabella-changes-'));
  });

  afterEach(async () => {
    await rm(folder, { recursive: true });
  });

  async function age(name: string, seconds: number): Promise<void> {
    await utimes(join(folder, name), seconds, seconds);
  }

  it('looks into folders, but not at what was assembled', async () => {
    await mkdir(join(folder, 'models', 'assembled'), { recursive: true });
    for (const name of ['models/manifest.json', 'models/assembled/made.task']) await writeFile(join(folder, name), '');
    await age('models/manifest.json', 2_000);
    await age('models/assembled/made.task', 9_000);
    await age('models/assembled', 9_000);
    await age('models', 1_000);
    expect(newestChangeMs([join(folder, 'models')])).toBe(2_000_000);
  });

  it('sees that a file was taken away by the folder that held it', async () => {
    await mkdir(join(folder, 'src'));
    await age('src', 3_000);
    expect(newestChangeMs([join(folder, 'src')])).toBe(3_000_000);
  });

  it('passes over what does not exist', () => {
    expect(newestChangeMs([join(folder, 'nowhere')])).toBe(0);
  });
});
