import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { PictureFeatures } from '../core/camera/features.js';
import type { FindingFailure, Picture, VisionPort } from '../session/ports.js';
import type { FrameSource, SettledFrame } from './sweep-finder.js';
import { createSweepFinder } from './sweep-finder.js';

type Found = Result<PictureFeatures, FindingFailure>;

interface Asked {
  readonly picture: Picture;
  readonly answer: (found: Found) => void;
}

// Node has no bitmaps: these count how many of them are open.
let open = 0;

function bitmap(): ImageBitmap {
  open += 1;
  let isClosed = false;
  return {
    width: 1280,
    height: 720,
    close: () => {
      if (!isClosed) open -= 1;
      isClosed = true;
    },
  };
}

function source(id: number): FrameSource {
  const picture: Picture = { bitmap: bitmap(), widthPx: 1280, heightPx: 720, name: String(id) };
  return {
    id,
    open: () => Promise.resolve(succeed(picture)),
    discard: () => {
      picture.bitmap.close();
    },
    file: new Blob([String(id)]),
  };
}

function start(isNewestFirst: boolean) {
  const asked: Asked[] = [];
  const settled: SettledFrame[] = [];
  const findFeatures: VisionPort['findFeatures'] = (picture, _, signal) =>
    new Promise((answer, reject) => {
      asked.push({ picture, answer });
      signal.addEventListener('abort', () => {
        reject(new Error('aborted'));
      });
    });
  const finder = createSweepFinder({
    vision: { findFeatures } as VisionPort,
    isNewestFirst,
    onSettled: (frame) => settled.push(frame),
    onLoading: () => undefined,
    onFault: (reason) => {
      throw reason;
    },
  });
  return { asked, settled, finder };
}

/** Lets all that is settled by now be heard of. */
function rest(): Promise<void> {
  return new Promise((done) => setTimeout(done, 0));
}

describe('looking at the frames of a sweep', () => {
  beforeEach(() => {
    open = 0;
    vi.stubGlobal('createImageBitmap', () => Promise.resolve(bitmap()));
  });
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it('has two frames under way, the newest first, and keeps only a small copy and the file', async () => {
    const { asked, finder, settled } = start(true);
    for (let id = 0; id < 5; id++) finder.add(source(id));
    await rest();
    expect(asked.map(({ picture }) => picture.name)).toEqual(['0', '1']);
    asked[0]?.answer(succeed(exampleFeatures()));
    await rest();
    expect(asked.map(({ picture }) => picture.name)).toEqual(['0', '1', '4']);
    expect(settled).toMatchObject([{ id: 0, outcome: { kind: 'found' }, thumbnail: { widthPx: 1280 } }]);
    expect(await settled[0]?.kept?.text()).toBe('0');
    // four frames and one small copy
    expect(open).toBe(5);
  });

  it('goes on after a frame that failed', async () => {
    const { asked, finder, settled } = start(false);
    for (let id = 0; id < 3; id++) finder.add(source(id));
    await rest();
    asked[0]?.answer(fail({ failure: { kind: 'no-card' }, partial: exampleFeatures() }));
    await rest();
    expect(settled[0]?.outcome).toEqual({ kind: 'missed', failure: { kind: 'no-card' }, view: null });
    expect(asked.map(({ picture }) => picture.name)).toEqual(['0', '1', '2']);
  });

  it('says why a frame could not be opened', async () => {
    const { finder, settled } = start(false);
    finder.add({ ...source(7), open: () => Promise.resolve(fail({ kind: 'picture-broken' })) });
    await rest();
    expect(settled).toMatchObject([{ id: 7, outcome: { failure: { kind: 'picture-broken' } }, thumbnail: null }]);
  });

  it('closes everything and reports nothing once it was stopped', async () => {
    const { asked, finder, settled } = start(false);
    for (let id = 0; id < 6; id++) finder.add(source(id));
    await rest();
    finder.stop();
    asked[0]?.answer(succeed(exampleFeatures()));
    await rest();
    finder.add(source(9));
    await rest();
    expect(settled).toEqual([]);
    expect(open).toBe(0);
  });
});
