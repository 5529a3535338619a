import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { englishLater } from '../../src/ui/english-later.js';

// English comes in two pieces. What is imported statically from the app's first script may be drawn before the second piece has come.

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const STATIC_IMPORT = /^(?:import|export) (?!type )(?:[^;]*? from )?'(\.[^']+)'/gm;

/** All scripts that are loaded with the one at this path, itself included; paths relative to the project. */
function loadedWith(path: string, found = new Set<string>()): ReadonlySet<string> {
  if (found.has(path)) return found;
  found.add(path);
  for (const [, target = ''] of readFileSync(join(PROJECT, path), 'utf8').matchAll(STATIC_IMPORT)) {
    if (!target.endsWith('.js')) continue;
    const imported = join(dirname(path), target);
    const source = [imported.replace(/\.js$/, '.ts'), imported.replace(/\.js$/, '.tsx')].find(isThere);
    if (source !== undefined) loadedWith(source, found);
  }
  return found;
}

function isThere(path: string): boolean {
  try {
    readFileSync(join(PROJECT, path));
    return true;
  } catch {
    return false;
  }
}

describe('the first screen', () => {
  const first = loadedWith('src/app/main.tsx');

  it('is read from its sources', () => {
    expect(first).toContain('src/ui/sheet-screen.tsx');
    expect(first).toContain('src/ui/languages/en.ts');
    expect(first).not.toContain('src/ui/order-dialog.tsx');
    expect(first).not.toContain('src/ui/english-later.ts');
  });

  it('says nothing that comes later only', () => {
    const later = new RegExp(`\\bwords\\.(${Object.keys(englishLater).join('|')})\\b`, 'g');
    const offences = [...first]
      .filter((path) => path.startsWith('src/ui/'))
      .flatMap((path) =>
        (readFileSync(join(PROJECT, path), 'utf8').match(later) ?? []).map((use) => `${path}: ${use}`),
      );
    expect(offences, 'move these words to languages/en.ts, or load the part later (later-part.tsx)').toEqual([]);
  });
});
