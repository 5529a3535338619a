/** An element of the page that has the browser fetch a file before the first screen. */
const FETCHING_TAG = /<(script|link)\b[^>]*>/g;
const LOADED_LINK = /\brel="(stylesheet|modulepreload|icon|manifest)"/;
const ADDRESS = /\b(?:src|href)="([^"]+)"/;

/** `import … from "x"`, `import "x"` and `export … from "x"`, as the bundler writes them; not `import("x")`. */
const STATIC_IMPORT = /(?:^|[;}\s])(?:import|export)(?:[\w$*\s{},]*from)?\s*["'](\.[^"']+)["']/g;

/**
 * What a browser fetches before the first screen of the app: the page, what it names, and what scripts import statically
 * from there. Addresses are relative to the page's folder. Throws where a file is missing.
 *
 * @param read the text of a file of the build by its address; null where there is none
 */
export function firstFiles(read: (address: string) => string | null): readonly string[] {
  const found = new Set<string>();
  const take = (address: string, from: string): void => {
    const path = new URL(address, new URL(from, 'http://app.invalid/')).pathname.slice(1);
    if (found.has(path)) return;
    const text = read(path);
    if (text === null) throw new Error(`${from} names ${address}, which is not in the build.`);
    found.add(path);
    if (path.endsWith('.js')) for (const [, imported = ''] of text.matchAll(STATIC_IMPORT)) take(imported, path);
  };
  take('index.html', 'index.html');
  for (const [tag, name] of (read('index.html') ?? '').matchAll(FETCHING_TAG)) {
    const address = ADDRESS.exec(tag)?.[1];
    if (address !== undefined && (name === 'script' || LOADED_LINK.test(tag))) take(address, 'index.html');
  }
  return [...found];
}
