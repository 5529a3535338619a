import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RunningServer } from '../../src/server/static-server.js';
import { killWhileTyping } from '../kills/kill-while-typing.js';
import { startBuiltApp } from '../support/built-app.js';
import { seededRandom } from '../support/seeded-random.js';

// `npm run kills` does the same fifty times.

describe('a browser that is killed while someone types', () => {
  let server: RunningServer;

  beforeAll(async () => {
    server = await startBuiltApp();
  });

  afterAll(() => server.close());

  it('has lost nothing that was said to be saved', async () => {
    const kills = await killWhileTyping({ address: server.address, count: 3, random: seededRandom(3) });
    expect(kills.map(({ broken }) => broken)).toEqual([[], [], []]);
    expect(kills.some(({ acknowledgements }) => acknowledgements > 0)).toBe(true);
  });
});
