/**
 * The icons of the installed app as PNG files, drawn from src/app/icon.svg: `npx tsx tests/screens/draw-icons.ts`. Only to
 * be run when that drawing changes; the files are kept in the repository.
 */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { launchChromium } from '../support/chromium.js';

const FOLDER = new URL('../../src/app/', import.meta.url);
const drawing = await readFile(new URL('icon.svg', FOLDER), 'utf8');

/** A system may cut a maskable icon down to a circle of four fifths of its width: the ground fills it, the marks keep inside. */
const maskable = drawing.replace('viewBox="0 0 32 32"', 'viewBox="-5 -5 42 42"');

const icons = [
  { name: 'icon-192.png', sidePx: 192, svg: drawing },
  { name: 'icon-512.png', sidePx: 512, svg: drawing },
  { name: 'icon-maskable-512.png', sidePx: 512, svg: maskable },
];

const browser = await launchChromium();
for (const { name, sidePx, svg } of icons) {
  const page = await browser.newPage({ viewport: { width: sidePx, height: sidePx } });
  await page.setContent(`<style>
    body { margin: 0; }
    svg { display: block; width: 100vw; height: 100vh; background: ${svg === maskable ? '#1b2125' : 'none'}; }
  </style>${svg}`);
  await page.screenshot({ path: fileURLToPath(new URL(`icons/${name}`, FOLDER)), omitBackground: true });
  await page.close();
}
await browser.close();
