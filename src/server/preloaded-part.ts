import { basename } from 'node:path';
import type { Plugin } from 'vite';

/**
 * Names a part of the build in the page, so that it is fetched together with the first script that asks for it later.
 *
 * @param name of its group in vite.config.ts
 */
export function preloadedPart(name: string): Plugin {
  return {
    name: 'glabella-preloaded-part',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (_html, { bundle, filename }) => {
        // the page of a bench stands for itself
        if (basename(filename) !== 'index.html') return [];
        const part = Object.values(bundle ?? {}).find((file) => file.type === 'chunk' && file.name === name);
        if (part === undefined) throw new Error(`The build has no part called ${name}.`);
        return [
          {
            tag: 'link',
            attrs: { rel: 'modulepreload', crossorigin: true, href: `./${part.fileName}` },
            injectTo: 'head',
          },
        ];
      },
    },
  };
}
