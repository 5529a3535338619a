import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { readPictureHeader } from './picture-header.js';

function ascii(text: string): number[] {
  return [...text].map((letter) => letter.charCodeAt(0));
}

function bytes(...parts: readonly (readonly number[] | Uint8Array)[]): Uint8Array {
  return new Uint8Array(parts.flatMap((part) => [...part]));
}

/** Written by another library, so that the sizes do not come from this code. */
const JPEG = new Uint8Array(jpeg.encode({ width: 37, height: 21, data: new Uint8Array(4 * 37 * 21) }, 80).data);

/** A segment of an extension with `length` bytes in it. */
function segment(marker: number, length: number): number[] {
  return [0xff, marker, (length + 2) >> 8, (length + 2) & 0xff, ...new Array<number>(length).fill(0xff)];
}

function webp(chunk: string, ...body: number[]): Uint8Array {
  return bytes(
    ascii('RIFF'),
    [0, 0, 0, 0],
    ascii('WEBP'),
    ascii(chunk),
    [0, 0, 0, 0],
    body,
    new Array<number>(30).fill(0),
  );
}

describe('readPictureHeader', () => {
  it('reads the size of a JPEG', () => {
    expect(readPictureHeader(JPEG)).toEqual({ ok: true, value: { type: 'image/jpeg', widthPx: 37, heightPx: 21 } });
  });

  it('finds the frame behind extensions, whatever they hold, and behind fill bytes', () => {
    const withExif = bytes(JPEG.slice(0, 2), segment(0xe1, 65_000), [0xff, 0xff], segment(0xfe, 9), JPEG.slice(2));
    expect(readPictureHeader(withExif)).toMatchObject({ ok: true, value: { widthPx: 37, heightPx: 21 } });
  });

  it('reads a progressive frame, and does not take a Huffman table for one', () => {
    // ITU-T T.81, B.2.2: FF C2, length 17, 8 bits, 0x0BB8 lines, 0x0FA0 samples a line, three components
    const frame = [0xff, 0xc2, 0, 17, 8, 0x0b, 0xb8, 0x0f, 0xa0, 3];
    const file = bytes([0xff, 0xd8], segment(0xc4, 20), frame, new Array<number>(12).fill(0));
    expect(readPictureHeader(file)).toMatchObject({ ok: true, value: { widthPx: 4000, heightPx: 3000 } });
  });

  it('reads the size of a PNG', () => {
    const file = new Uint8Array(PNG.sync.write(new PNG({ width: 300, height: 2 })));
    expect(readPictureHeader(file)).toEqual({ ok: true, value: { type: 'image/png', widthPx: 300, heightPx: 2 } });
  });

  it('reads the three forms of WebP', () => {
    // RFC 9649: 2.5 (VP8, via RFC 6386 9.1: 14 bits each), 2.6 (VP8L: 14 bits minus one each), 2.7 (VP8X: 24 bits minus one each)
    const lossy = webp('VP8 ', 0, 0, 0, 0x9d, 0x01, 0x2a, 0x40, 0x01, 0xf0, 0x00);
    expect(readPictureHeader(lossy)).toMatchObject({ ok: true, value: { widthPx: 320, heightPx: 240 } });
    // width - 1 = 319 = 0x13F, height - 1 = 239 = 0xEF: 0x13F | 0xEF << 14 = 0x3BC13F
    const lossless = webp('VP8L', 0x2f, 0x3f, 0xc1, 0x3b, 0x00);
    expect(readPictureHeader(lossless)).toMatchObject({ ok: true, value: { widthPx: 320, heightPx: 240 } });
    // 70000 - 1 = 0x01116F, 50000 - 1 = 0x00C34F
    const extended = webp('VP8X', 0, 0, 0, 0, 0x6f, 0x11, 0x01, 0x4f, 0xc3, 0x00);
    expect(readPictureHeader(extended)).toEqual({
      ok: true,
      value: { type: 'image/webp', widthPx: 70_000, heightPx: 50_000 },
    });
  });

  it('calls what is cut off or senseless broken', () => {
    const broken = { ok: false, failure: { kind: 'picture-broken' } };
    expect(readPictureHeader(JPEG.slice(0, 60))).toEqual(broken);
    expect(readPictureHeader(bytes([0xff, 0xd8, 0xff, 0xd9, 0, 0]))).toEqual(broken);
    expect(readPictureHeader(bytes([0xff, 0xd8, 0xff, 0xe0, 0, 2, 7, 7, 7, 7]))).toEqual(broken);
    expect(readPictureHeader(bytes([0x89], ascii('PNG\r\n\x1a\n'), [0, 0, 0, 13]))).toEqual(broken);
    expect(readPictureHeader(webp('NONE', 1, 2, 3))).toEqual(broken);
    const noWidth = bytes([0xff, 0xd8, 0xff, 0xc0, 0, 17, 8, 0, 9, 0, 0, 3], new Array<number>(12).fill(0));
    expect(readPictureHeader(noWidth)).toEqual(broken);
  });

  it('names other formats where it knows them', () => {
    const typeOf = (file: Uint8Array) => readPictureHeader(file);
    const unsupported = (type: string) => ({ ok: false, failure: { kind: 'picture-unsupported', type } });
    expect(typeOf(bytes(ascii('GIF89a')))).toEqual(unsupported('image/gif'));
    expect(typeOf(bytes([0, 0, 0, 24], ascii('ftypheic')))).toEqual(unsupported('image/heic'));
    expect(typeOf(bytes([0, 0, 0, 24], ascii('ftypavif')))).toEqual(unsupported('image/avif'));
    expect(typeOf(bytes(ascii('%PDF-1.7')))).toEqual(unsupported('application/pdf'));
    expect(typeOf(bytes(ascii('hello')))).toEqual(unsupported(''));
    expect(typeOf(new Uint8Array())).toEqual(unsupported(''));
  });
});
