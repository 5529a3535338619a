import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

const ICON_FOLDER = 'src/app/icons';

/** An icon of the installed app; drawn by tests/screens/draw-icons.ts. */
interface Icon {
  readonly file: string;
  readonly sidePx: number;
  readonly purpose: 'any' | 'maskable';
}

const ICONS: readonly Icon[] = [
  { file: 'icon-192.png', sidePx: 192, purpose: 'any' },
  { file: 'icon-512.png', sidePx: 512, purpose: 'any' },
  { file: 'icon-maskable-512.png', sidePx: 512, purpose: 'maskable' },
];

/** What a browser has to know to install the app (W3C Web Application Manifest). All addresses are relative to it. */
export const WEB_APP_MANIFEST = {
  name: 'Glabella',
  short_name: 'Glabella',
  description: 'A second, independent reading of a face for dispensing opticians. No picture leaves this device.',
  lang: 'en',
  dir: 'ltr',
  id: './',
  start_url: './',
  scope: './',
  display: 'standalone',
  // of the light screen, as in src/ui/styles/tokens.css
  background_color: '#f7f6f2',
  theme_color: '#f7f6f2',
  categories: ['medical', 'business', 'utilities'],
  icons: ICONS.map(({ file, sidePx, purpose }) => ({
    src: `icons/${file}`,
    sizes: `${sidePx}x${sidePx}`,
    type: 'image/png',
    purpose,
  })),
} as const;

/** Puts manifest and icons into the build, beside the page, and names them in it. */
export function webAppManifest(): Plugin {
  return {
    name: 'glabella-web-app-manifest',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: () => [{ tag: 'link', attrs: { rel: 'manifest', href: './manifest.webmanifest' }, injectTo: 'head' }],
    },
    generateBundle() {
      for (const { file } of ICONS) {
        const source = readFileSync(join(this.environment.config.root, ICON_FOLDER, file));
        this.emitFile({ type: 'asset', fileName: `icons/${file}`, source });
      }
      const source = `${JSON.stringify(WEB_APP_MANIFEST, null, 2)}\n`;
      this.emitFile({ type: 'asset', fileName: 'manifest.webmanifest', source });
    },
  };
}
