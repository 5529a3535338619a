import { describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';

const app = appInBrowser();

describe('privacy', () => {
  it('asks nobody but its own origin while the page loads', async () => {
    const { page, guard } = await app.open();
    await page.waitForLoadState('networkidle');
    expect(guard.requests.length).toBeGreaterThan(1);
    // foreign requests fail the test through the guard
  });
});
