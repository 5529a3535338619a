import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { CameraPort, CameraStream } from '../../src/session/ports.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { addDevice, deviceScript } from '../support/device-script.js';
import { jpegFile, motionJpeg } from '../support/picture-file.js';

// Single frames of a running camera, as a sweep takes them.

const WIDTH_PX = 1280;
const HEIGHT_PX = 720;
/** Bright in its left third only. */
const data = new Uint8ClampedArray(4 * WIDTH_PX * HEIGHT_PX);
for (let at = 0; at < WIDTH_PX * HEIGHT_PX; at++) {
  data.fill(at % WIDTH_PX < WIDTH_PX / 3 ? 220 : 40, 4 * at, 4 * at + 4);
}
const frame = jpegFile('frame.jpg', { widthPx: WIDTH_PX, heightPx: HEIGHT_PX, data });
const folder = mkdtempSync(join(tmpdir(), 'glabella-frames-'));
const videoPath = join(folder, 'still.mjpeg');
writeFileSync(videoPath, motionJpeg(frame, 30));

afterAll(() => rmSync(folder, { recursive: true }));

/** What the page keeps for the tests. */
declare const kept: { readonly camera: CameraStream };
declare const deviceOfTest: { readonly createCameras: () => CameraPort };

describe('a frame of a camera', () => {
  const app = appInBrowser({ camera: { videoPath } });
  let script: string;
  let page: Page;

  beforeAll(async () => {
    script = await deviceScript('cameras');
  });

  beforeEach(async () => {
    ({ page } = await app.open());
    await addDevice(page, script);
    await page.evaluate(async () => {
      const opened = await deviceOfTest.createCameras().open(null);
      if (!opened.ok) throw new Error(opened.failure.kind);
      Object.assign(window, { kept: { camera: opened.value } });
    });
  });

  it('has the full resolution, is unmirrored, and comes again and again', async () => {
    const frames = await page.evaluate(async () => {
      const seen = [];
      for (let taken = 0; taken < 3; taken++) {
        const frame = await kept.camera.takeFrame();
        if (!frame.ok) throw new Error(frame.failure.kind);
        const { bitmap, widthPx, heightPx } = frame.value;
        const context = new OffscreenCanvas(widthPx, heightPx).getContext('2d');
        context?.drawImage(bitmap, 0, 0);
        bitmap.close();
        const isBright = (share: number) =>
          (context?.getImageData(Math.round(share * widthPx), heightPx / 2, 1, 1).data[0] ?? 0) > 128;
        seen.push({ widthPx, heightPx, bright: [isBright(0.3), isBright(0.37), isBright(0.7)] });
      }
      kept.camera.stop();
      return seen;
    });
    const whole = { widthPx: WIDTH_PX, heightPx: HEIGHT_PX, bright: [true, false, false] };
    expect(frames).toEqual([whole, whole, whole]);
  });

  it('fails when the camera is unplugged, also while it is waited for', async () => {
    const outcomes = await page.evaluate(async () => {
      const [track] = kept.camera.stream.getVideoTracks();
      const waiting = kept.camera.takeFrame();
      // no switch of Chromium unplugs its fake camera: the track says what it would say then
      track?.stop();
      track?.dispatchEvent(new Event('ended'));
      return [await waiting, await kept.camera.takeFrame()];
    });
    const unplugged = { ok: false, failure: { kind: 'camera-unplugged' } };
    expect(outcomes).toEqual([unplugged, unplugged]);
  });
});
