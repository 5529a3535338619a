import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { PicturePort } from '../../src/session/ports.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { addDevice, deviceScript } from '../support/device-script.js';

// Video files are opened with the browser's own player, below the app's own security policy: the frames that come are those
// of the places asked for, and whatever is wrong with a file has a name. The files are made here by the browser's recorder.

const WIDTH_PX = 320;
const HEIGHT_PX = 240;
const RECORDED_MS = 3_000;

/** The recorder starts a moment after the clock of the painting, and a busy computer drops frames: a quarter of a second in all. */
const TIME_LIMIT_MS = 250;

const app = appInBrowser({ switches: ['--autoplay-policy=no-user-gesture-required'] });
let page: Page;

/** What the page keeps for the tests. */
declare const kept: { readonly pictures: PicturePort; readonly webm: Blob; readonly mp4: Blob };
declare const deviceOfTest: { readonly createPictures: () => PicturePort };

beforeAll(async () => {
  const script = await deviceScript('pictures');
  ({ page } = await app.keepOpen());
  await addDevice(page, script);
  await page.evaluate(
    async ({ widthPx, heightPx, recordedMs }) => {
      const canvas = document.createElement('canvas');
      canvas.width = widthPx;
      canvas.height = heightPx;
      const context = canvas.getContext('2d');
      if (context === null) throw new Error('no 2d context');
      const beganMs = performance.now();
      // a bar from the left whose length tells the time
      const paint = () => {
        context.fillStyle = 'black';
        context.fillRect(0, 0, widthPx, heightPx);
        context.fillStyle = 'white';
        context.fillRect(0, 0, (widthPx * (performance.now() - beganMs)) / recordedMs, heightPx);
      };
      paint();
      const painting = setInterval(paint, 33);
      const stream = canvas.captureStream(30);
      const record = async (mimeType: string) => {
        const recorder = new MediaRecorder(stream, { mimeType });
        const parts: Blob[] = [];
        recorder.ondataavailable = ({ data }) => parts.push(data);
        const hasStopped = new Promise((resolve) => (recorder.onstop = resolve));
        // a recorder that hands out parts cannot write the length into the first one
        recorder.start(200);
        await new Promise((resolve) => setTimeout(resolve, recordedMs));
        recorder.stop();
        await hasStopped;
        return new Blob(parts, { type: mimeType.split(';')[0] ?? '' });
      };
      const [webm, mp4] = await Promise.all([record('video/webm;codecs=vp8'), record('video/mp4;codecs=vp9')]);
      clearInterval(painting);
      Object.assign(window, { kept: { pictures: deviceOfTest.createPictures(), webm, mp4 } });
    },
    { widthPx: WIDTH_PX, heightPx: HEIGHT_PX, recordedMs: RECORDED_MS },
  );
});

/** Opens the recording, takes the frames of these places in this order, and reads the time that each shows, ms. */
async function timesShown(file: 'webm' | 'mp4', frameCount: number, places: readonly number[]) {
  return page.evaluate(
    async ({ file, frameCount, places, recordedMs }) => {
      const opened = await kept.pictures.openVideo(kept[file], 'sweep', frameCount);
      if (!opened.ok) throw new Error(opened.failure.kind);
      // all asked for at once: they have to wait for one another
      const taken = await Promise.all(places.map((place) => opened.value.frame(place)));
      const frames = taken.map((frame) => {
        if (!frame.ok) throw new Error(frame.failure.kind);
        const { bitmap, widthPx, heightPx, name } = frame.value;
        const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
        const context = canvas.getContext('2d');
        context?.drawImage(bitmap, 0, 0);
        bitmap.close();
        const row = context?.getImageData(0, heightPx / 2, widthPx, 1).data ?? [];
        let whitePx = 0;
        for (let at = 0; at < row.length; at += 4) if ((row[at] ?? 0) > 127) whitePx += 1;
        return { widthPx, heightPx, name, shownMs: (whitePx / widthPx) * recordedMs };
      });
      opened.value.close();
      return { frameCount: opened.value.frameCount, frames };
    },
    { file, frameCount, places, recordedMs: RECORDED_MS },
  );
}

/** Opens a file made of bytes, and tells the failure, or null where it opened. */
function failureOf(bytes: readonly number[], type: string): Promise<object | null> {
  return page.evaluate(
    async ({ bytes, type }) => {
      const opened = await kept.pictures.openVideo(new Blob([new Uint8Array(bytes)], { type }), 'a', 5);
      return opened.ok ? null : opened.failure;
    },
    { bytes, type },
  );
}

describe('a video file', () => {
  it.each(['webm', 'mp4'] as const)('gives frames from evenly spread places, in any order: %s', async (file) => {
    const { frameCount, frames } = await timesShown(file, 6, [0, 1, 2, 3, 4, 5, 2]);
    expect(frameCount).toBe(6);
    // the middles of six equal parts of three seconds
    [250, 750, 1250, 1750, 2250, 2750, 1250].forEach((expectedMs, at) => {
      expect(Math.abs((frames[at]?.shownMs ?? Infinity) - expectedMs), `frame ${at}`).toBeLessThan(TIME_LIMIT_MS);
    });
    expect(frames[6]?.shownMs, 'the same place shows the same frame').toBe(frames[2]?.shownMs);
    for (const frame of frames) expect(frame).toMatchObject({ widthPx: WIDTH_PX, heightPx: HEIGHT_PX, name: 'sweep' });
  });

  it('may be one that does not say its length', async () => {
    const statedLength = await page.evaluate(
      () =>
        new Promise<string>((resolve) => {
          const video = document.createElement('video');
          video.onloadedmetadata = () => resolve(String(video.duration));
          video.src = URL.createObjectURL(kept.webm);
        }),
    );
    expect(statedLength, 'the recording that is opened above').toBe('Infinity');
  });

  it('is upright where a phone was held on its side', async () => {
    const seen = await page.evaluate(async () => {
      const bytes = new Uint8Array(await kept.mp4.arrayBuffer());
      const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
      const track = text.indexOf('tkhd') - 4;
      const view = new DataView(bytes.buffer);
      // ISO/IEC 14496-12, 8.3.2: the matrix stands 48 or, in version 1, 60 bytes behind the beginning of the track's header;
      // this one turns the picture by 90 degrees clockwise
      const matrixAt = track + (bytes[track + 8] === 1 ? 60 : 48);
      [0, 0x10000, 0, -0x10000, 0, 0, 0, 0, 0x40000000].forEach((entry, at) => view.setInt32(matrixAt + 4 * at, entry));
      const opened = await kept.pictures.openVideo(new Blob([bytes], { type: 'video/mp4' }), 'a', 2);
      if (!opened.ok) throw new Error(opened.failure.kind);
      const frame = await opened.value.frame(1);
      opened.value.close();
      if (!frame.ok) throw new Error(frame.failure.kind);
      const { bitmap, widthPx, heightPx } = frame.value;
      const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
      context?.drawImage(bitmap, 0, 0);
      bitmap.close();
      const level = (xPx: number, yPx: number) => (context?.getImageData(xPx, yPx, 1, 1).data[0] ?? 0) > 127;
      const right = widthPx - 10;
      const bottom = heightPx - 10;
      return { widthPx, heightPx, corners: [level(10, 10), level(right, 10), level(right, bottom), level(10, bottom)] };
    });
    // the bar comes from the left; turned clockwise it comes from the top, and at three quarters it is not yet at the bottom
    expect(seen).toEqual({ widthPx: HEIGHT_PX, heightPx: WIDTH_PX, corners: [true, true, false, false] });
  });

  it('shows later frames at later places, however near they are', async () => {
    const { frameCount, frames } = await timesShown('webm', 20, [...Array(20).keys()]);
    expect(frameCount).toBe(20);
    for (let at = 1; at < 20; at++) {
      expect(frames[at]?.shownMs, `frame ${at}`).toBeGreaterThan(frames[at - 1]?.shownMs ?? Infinity);
    }
  });

  it('gives fewer frames than were asked for where it is too short for them', async () => {
    const { frameCount } = await timesShown('webm', 1_000, [0]);
    // 15 a second
    expect(frameCount).toBeGreaterThan(40);
    expect(frameCount).toBeLessThan(50);
  });

  it('is released when it is closed, and then gives no frames', async () => {
    const seen = await page.evaluate(async () => {
      const revoked: string[] = [];
      const revoke = URL.revokeObjectURL.bind(URL);
      URL.revokeObjectURL = (address) => {
        revoked.push(address);
        revoke(address);
      };
      const opened = await kept.pictures.openVideo(kept.webm, 'a', 5);
      if (!opened.ok) throw new Error(opened.failure.kind);
      const waiting = opened.value.frame(3);
      opened.value.close();
      opened.value.close();
      const outcomes = [await waiting, await opened.value.frame(0)];
      URL.revokeObjectURL = revoke;
      return { revoked: revoked.length, outcomes };
    });
    const broken = { ok: false, failure: { kind: 'video-broken' } };
    expect(seen).toEqual({ revoked: 1, outcomes: [broken, broken] });
  });
});

describe('a file that is no video', () => {
  it.each([
    ['an empty file', [], 'video/webm', { kind: 'video-broken' }],
    [
      'senseless bytes that call themselves a video',
      [1, 2, 3, 4, 5, 6, 7, 8, 9],
      'video/mp4',
      { kind: 'video-broken' },
    ],
    ['a text', [104, 101, 108, 108, 111], 'text/plain', { kind: 'video-unsupported', type: 'text/plain' }],
    [
      'an AVI file, whatever it calls itself',
      Array.from('RIFF\x10\0\0\0AVI LIST', (letter) => letter.charCodeAt(0)),
      'video/mp4',
      { kind: 'video-unsupported', type: 'video/x-msvideo' },
    ],
  ])('is told: %s', async (_, bytes, type, failure) => {
    expect(await failureOf(bytes, type)).toEqual(failure);
  });

  it('is told: a video of which only the head is left', async () => {
    const head = await page.evaluate(async () => [...new Uint8Array(await kept.webm.slice(0, 120).arrayBuffer())]);
    expect(await failureOf(head, 'video/webm')).toEqual({ kind: 'video-broken' });
  });

  it('is told: a video with a codec that the browser has not', async () => {
    const failure = await page.evaluate(async () => {
      const bytes = new Uint8Array(await kept.mp4.arrayBuffer());
      const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
      const codec = text.indexOf('vp09', text.indexOf('moov'));
      // the H.265 of phones
      bytes.set([104, 118, 99, 49], codec);
      const opened = await kept.pictures.openVideo(new Blob([bytes], { type: 'video/mp4' }), 'a', 5);
      return opened.ok ? null : opened.failure;
    });
    expect(failure).toEqual({ kind: 'video-unsupported', type: 'video/mp4' });
  });

  it('is told: one with sound and no picture', async () => {
    const failure = await page.evaluate(async () => {
      const context = new AudioContext();
      const speaker = context.createMediaStreamDestination();
      const tone = context.createOscillator();
      tone.connect(speaker);
      tone.start();
      const recorder = new MediaRecorder(speaker.stream);
      const parts: Blob[] = [];
      recorder.ondataavailable = ({ data }) => parts.push(data);
      const hasStopped = new Promise((resolve) => (recorder.onstop = resolve));
      recorder.start();
      await new Promise((resolve) => setTimeout(resolve, 500));
      recorder.stop();
      await hasStopped;
      await context.close();
      const opened = await kept.pictures.openVideo(new Blob(parts, { type: 'video/webm' }), 'a', 5);
      return opened.ok ? null : opened.failure;
    });
    expect(failure).toEqual({ kind: 'video-broken' });
  });

  it('is told: one whose frames are larger than a picture may be', async () => {
    const failure = await page.evaluate(async () => {
      const real = Object.getOwnPropertyDescriptor(HTMLVideoElement.prototype, 'videoWidth');
      Object.defineProperty(HTMLVideoElement.prototype, 'videoWidth', { configurable: true, get: () => 250_000 });
      const opened = await kept.pictures.openVideo(kept.webm, 'a', 5);
      if (real !== undefined) Object.defineProperty(HTMLVideoElement.prototype, 'videoWidth', real);
      return opened.ok ? null : opened.failure;
    });
    // 250000 times 240
    expect(failure).toEqual({ kind: 'picture-too-large', megapixels: 60, limitMegapixels: 50 });
  });
});
