import { createHash } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import type { OfflineFile } from '../protocol/offline-files.js';
import type { KeptFiles } from '../session/offline.js';
import { keepAll } from './offline-keeping.js';

const APP = 'https://host.example/app/';

const SMALL = new Uint8Array(100).fill(1);
const LARGE = new Uint8Array(900).fill(2);

const file = (address: string, bytes: Uint8Array): OfflineFile => ({
  address,
  sha256: createHash('sha256').update(bytes).digest('hex'),
  bytes: bytes.length,
  when: 'later',
});
const FILES = [file('small.js', SMALL), file('large.wasm', LARGE)];

/** A body that comes in pieces of 100 bytes, and breaks off where it is told to. */
function inPieces(bytes: Uint8Array, breaksAt = Infinity): ReadableStream<Uint8Array> {
  let at = 0;
  return new ReadableStream({
    pull(controller) {
      if (at >= breaksAt) controller.error(new TypeError('network error'));
      else if (at >= bytes.length) controller.close();
      else controller.enqueue(bytes.slice(at, (at += 100)));
    },
  });
}

let kept: Map<string, Response>;
let asked: string[];
let seen: KeptFiles[];
let answers: Record<string, () => Promise<Response>>;
let isFull: boolean;

function keep() {
  const cache = {
    keys: () => Promise.resolve([...kept.keys()].map((url) => ({ url }))),
    put: (key: string, response: Response) =>
      isFull
        ? Promise.reject(new DOMException('', 'QuotaExceededError'))
        : Promise.resolve(void kept.set(key, response)),
  };
  return keepAll(
    FILES,
    APP,
    { change: ({ files }) => void (files !== undefined && seen.push(files)) },
    {
      caches: { open: () => Promise.resolve(cache as unknown as Cache) },
      fetch: (address) => {
        const name = address.slice(APP.length);
        asked.push(name);
        return answers[name]?.() ?? Promise.resolve(new Response('', { status: 404 }));
      },
      alone: (_name, work) => work(),
    },
  );
}

beforeEach(() => {
  kept = new Map();
  asked = [];
  seen = [];
  isFull = false;
  answers = {
    'small.js': () => Promise.resolve(new Response(inPieces(SMALL))),
    'large.wasm': () => Promise.resolve(new Response(inPieces(LARGE))),
  };
});

describe('keeping all files of a build', () => {
  it('tells the bytes as they come, never backwards, and that all are there', async () => {
    expect(await keep()).toBeNull();
    const counts = seen.map((files) => (files.kind === 'fetching' ? files.keptBytes : files.kind));
    expect(counts).toEqual([0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000, 'complete']);
    expect(seen.at(-1)).toEqual({ kind: 'complete', allBytes: 1000 });
  });

  it('says at once that all are there where that is so, and fetches nothing', async () => {
    await keep();
    [asked, seen] = [[], []];
    expect(await keep()).toBeNull();
    expect(asked).toEqual([]);
    expect(seen).toEqual([{ kind: 'complete', allBytes: 1000 }]);
  });

  it('goes on after the line broke off with what is missing only', async () => {
    answers['large.wasm'] = () => Promise.resolve(new Response(inPieces(LARGE, 400)));
    expect(await keep()).toBe('network');
    expect(seen.at(-1)).toEqual({ kind: 'incomplete', keptBytes: 100, allBytes: 1000, why: 'network' });
    answers['large.wasm'] = () => Promise.resolve(new Response(inPieces(LARGE)));
    asked = [];
    expect(await keep()).toBeNull();
    expect(asked).toEqual(['large.wasm']);
  });

  it('tells a line that is not there, and a server in trouble, as the line', async () => {
    answers['small.js'] = () => Promise.reject(new TypeError('Failed to fetch'));
    expect(await keep()).toBe('network');
    answers['small.js'] = () => Promise.resolve(new Response('', { status: 503 }));
    expect(await keep()).toBe('network');
  });

  it('keeps nothing of another build', async () => {
    answers['small.js'] = () => Promise.resolve(new Response(inPieces(LARGE)));
    expect(await keep()).toBe('other-build');
    delete answers['small.js'];
    expect(await keep()).toBe('other-build');
    expect(kept.size).toBe(0);
  });

  it('says that the device keeps no more', async () => {
    isFull = true;
    expect(await keep()).toBe('storage');
    expect(seen.at(-1)).toEqual({ kind: 'incomplete', keptBytes: 0, allBytes: 1000, why: 'storage' });
  });
});
