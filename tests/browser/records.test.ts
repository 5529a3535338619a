import { expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { bundledScript } from '../support/device-script.js';
import type { ThousandSessionsTimes } from '../support/thousand-sessions-page.js';

// A thousand sessions in the browser's own database, under the schema checks that the app has.

const app = appInBrowser();

/** What has to be reached, in milliseconds; on a computer that does other work, within this factor. */
const LIMITS_MS = { list: 200, export: 3000, import: 3000, listLocked: 200 };
const BUSY_FACTOR = 2;

const HTML = '<!doctype html><title>A thousand sessions</title><script src="thousand-sessions.js"></script>';

it('keeps a thousand sessions, lists them at once, and gives the same ones back', async () => {
  const { page } = await app.prepare();
  const script = await bundledScript(new URL('../support/thousand-sessions-page.ts', import.meta.url));
  await page.route('**/thousand-sessions.*', (route) =>
    route.request().url().endsWith('.js')
      ? route.fulfill({ contentType: 'text/javascript', body: script })
      : route.fulfill({ contentType: 'text/html', body: HTML }),
  );
  await page.goto(`${app.address()}thousand-sessions.html`);
  const times = await page.evaluate(() =>
    (window as unknown as { measureThousandSessions: () => Promise<ThousandSessionsTimes> }).measureThousandSessions(),
  );
  console.log(
    (Object.entries(times) as [string, number][]).map(([name, value]) => `${name} ${Math.round(value)}`).join(', '),
  );
  expect(times.unequal).toBe(0);
  for (const [name, limitMs] of Object.entries(LIMITS_MS) as [keyof typeof LIMITS_MS, number][]) {
    expect(times[name], name).toBeLessThan(limitMs * BUSY_FACTOR);
  }
});
