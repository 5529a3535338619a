import type { Plugin } from 'vite';

const STUB = '\0without-node';

/**
 * Gives a library that also runs in Node, and asks for Node's modules behind a test for it, an empty module in their
 * place. `library` is part of the path of the importing file; everybody else's imports are left alone.
 */
export function withoutNode(library: string, modules: readonly string[]): Plugin {
  return {
    name: 'glabella-without-node',
    enforce: 'pre',
    resolveId(source, importer) {
      return importer?.includes(library) === true && modules.includes(source) ? STUB : null;
    },
    load(id) {
      return id === STUB ? 'export default {};' : null;
    },
  };
}
