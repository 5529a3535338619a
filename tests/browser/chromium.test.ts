import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CameraOfBrowser } from '../support/chromium.js';
import { launchChromium } from '../support/chromium.js';

// The cameras that other tests wish for are really there, or really not.

let server: Server;
let address: string;
let folder: string;

beforeAll(async () => {
  server = createServer((_, response) => response.setHeader('Content-Type', 'text/html').end('<!doctype html>'));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  folder = await mkdtemp(join(tmpdir(), 'glabella-camera-'));
});

afterAll(async () => {
  server.close();
  server.closeAllConnections();
  await rm(folder, { recursive: true });
});

/** What a page gets that asks for a camera: the size of its picture, or the name of the error. */
async function askForCamera(camera: CameraOfBrowser): Promise<string> {
  const browser = await launchChromium({ camera });
  try {
    const page = await browser.newPage();
    await page.goto(address);
    return await page.evaluate(() =>
      navigator.mediaDevices.getUserMedia({ video: true }).then(
        (stream) => {
          const { width, height } = stream.getVideoTracks()[0]?.getSettings() ?? {};
          return `${width} x ${height}`;
        },
        (error: Error) => error.name,
      ),
    );
  } finally {
    await browser.close();
  }
}

describe('launchChromium', () => {
  it('has no camera unless one is wished for', async () => {
    expect(await askForCamera('none')).toBe('NotFoundError');
  });

  it('refuses the camera', async () => {
    expect(await askForCamera('refused')).toBe('NotAllowedError');
  });

  it('plays a video as the camera', async () => {
    const videoPath = join(folder, 'grey.y4m');
    const frame = Buffer.concat([Buffer.from('FRAME\n'), Buffer.alloc((320 * 240 * 3) / 2, 128)]);
    await writeFile(
      videoPath,
      Buffer.concat([Buffer.from('YUV4MPEG2 W320 H240 F10:1 Ip A1:1 C420jpeg\n'), frame, frame]),
    );
    expect(await askForCamera({ videoPath })).toBe('320 x 240');
  });
});
