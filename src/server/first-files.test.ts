import { describe, expect, it } from 'vitest';
import { firstFiles } from './first-files.js';

const PAGE = `<!doctype html>
  <link rel="icon" type="image/svg+xml" href="./assets/icon-1.svg" />
  <link rel="manifest" href="./manifest.webmanifest">
  <link rel="help" href="./assets/help-1.js">
  <script type="module" crossorigin src="./assets/index-1.js"></script>
  <link rel="modulepreload" crossorigin href="./assets/shared-1.js">
  <link rel="stylesheet" crossorigin href="./assets/index-1.css">`;

const BUILD: Readonly<Record<string, string>> = {
  'index.html': PAGE,
  'manifest.webmanifest': '{}',
  'assets/icon-1.svg': '<svg/>',
  'assets/index-1.css': 'a{}',
  'assets/index-1.js': `import{a as b}from"./shared-1.js";import"./effect-1.js";const c=()=>import("./later-1.js");`,
  'assets/shared-1.js': 'var a=1;export{a};export*from"./deeper-1.js";',
  'assets/effect-1.js': "import x,{y}from'./deeper-1.js';x(y)",
  'assets/deeper-1.js': 'export default 0',
  'assets/later-1.js': 'import"./index-1.js"',
  'assets/help-1.js': '',
};

describe('firstFiles', () => {
  it('follows the page and static imports, but no import that waits', () => {
    const found = firstFiles((address) => BUILD[address] ?? null);
    expect(found.toSorted()).toEqual([
      'assets/deeper-1.js',
      'assets/effect-1.js',
      'assets/icon-1.svg',
      'assets/index-1.css',
      'assets/index-1.js',
      'assets/shared-1.js',
      'index.html',
      'manifest.webmanifest',
    ]);
  });

  it('does not pass over a file that is missing', () => {
    expect(() => firstFiles((address) => (address.includes('deeper') ? null : (BUILD[address] ?? null)))).toThrow(
      /deeper-1\.js, which is not in the build/,
    );
  });
});
