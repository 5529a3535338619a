import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createPictures, isCutOff } from './pictures.js';

const JPEG = new Uint8Array(jpeg.encode({ width: 16, height: 8, data: new Uint8Array(4 * 16 * 8) }, 80).data);

afterEach(() => {
  vi.unstubAllGlobals();
});

/** Stands for the browser's decoder, which Node has not. */
function stubDecoder(decode: () => Promise<unknown>) {
  const decoder = vi.fn(decode);
  vi.stubGlobal('createImageBitmap', decoder);
  return decoder;
}

describe('createPictures', () => {
  it('opens what the decoder makes of the file, and asks it to obey the orientation', async () => {
    const decoder = stubDecoder(() => Promise.resolve({ width: 8, height: 16 }));
    const opened = await createPictures().open(new Blob([JPEG]), 'a.jpg');
    expect(opened).toMatchObject({ ok: true, value: { widthPx: 8, heightPx: 16, name: 'a.jpg' } });
    expect(decoder).toHaveBeenCalledWith(expect.objectContaining({ type: 'image/jpeg' }), {
      imageOrientation: 'from-image',
    });
  });

  it('refuses more than 50 megapixels before anything is decoded', async () => {
    const decoder = stubDecoder(() => Promise.resolve({}));
    const file = new Uint8Array(PNG.sync.write(new PNG({ width: 1, height: 1 })));
    // IHDR holds the width at byte 16, the height at byte 20
    new DataView(file.buffer, file.byteOffset).setUint32(16, 10_000);
    new DataView(file.buffer, file.byteOffset).setUint32(20, 5_001);
    const opened = await createPictures().open(new Blob([file]), 'large.png');
    expect(opened).toEqual({
      ok: false,
      failure: { kind: 'picture-too-large', megapixels: 50.01, limitMegapixels: 50 },
    });
    expect(decoder).not.toHaveBeenCalled();
  });

  it('calls a file broken that the decoder refuses, or that is cut off', async () => {
    const decoder = stubDecoder(() => Promise.reject(new Error('no picture')));
    const broken = { ok: false, failure: { kind: 'picture-broken' } };
    expect(await createPictures().open(new Blob([JPEG]), 'b.jpg')).toEqual(broken);
    expect(decoder).toHaveBeenCalledTimes(1);
    expect(await createPictures().open(new Blob([JPEG.slice(0, -20)]), 'b.jpg')).toEqual(broken);
    expect(decoder).toHaveBeenCalledTimes(1);
  });

  it('tells the type of other files by their bytes, otherwise by what the browser says of them', async () => {
    const open = (file: Blob) => createPictures().open(file, 'c');
    expect(await open(new Blob(['GIF89a'], { type: 'image/jpeg' }))).toEqual({
      ok: false,
      failure: { kind: 'picture-unsupported', type: 'image/gif' },
    });
    expect(await open(new Blob(['hello'], { type: 'text/plain' }))).toEqual({
      ok: false,
      failure: { kind: 'picture-unsupported', type: 'text/plain' },
    });
  });
});

describe('isCutOff', () => {
  it('looks for the end of a JPEG, also before what a camera added', () => {
    expect(isCutOff('image/jpeg', JPEG)).toBe(false);
    expect(isCutOff('image/jpeg', new Uint8Array([...JPEG, 1, 2, 3, 4]))).toBe(false);
    expect(isCutOff('image/jpeg', JPEG.slice(0, -2))).toBe(true);
  });

  it('is not misled by the end of a small picture inside of the head', () => {
    const head = [0xff, 0xd8, 0xff, 0xe1, 0, 8, 0xff, 0xd8, 0xff, 0xd9, 0, 0];
    expect(isCutOff('image/jpeg', new Uint8Array([...head, ...JPEG.slice(2, -2)]))).toBe(true);
    expect(isCutOff('image/jpeg', new Uint8Array([...head, ...JPEG.slice(2)]))).toBe(false);
  });
});
