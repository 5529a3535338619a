import { describe, expect, it } from 'vitest';
import { readVideoFormat } from './video-format.js';
import { placeS } from './video-frames.js';

function bytes(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

/** A box of an MP4 file: its size in four bytes, its name, what is in it (ISO/IEC 14496-12, 4.2). */
function box(name: string, body: string, sizeAs = body.length + 8): string {
  return String.fromCharCode(...[24, 16, 8, 0].map((shift) => (sizeAs >>> shift) & 0xff)) + name + body;
}

/** The same with its size in eight bytes behind the name. */
function longBox(name: string, body: string): string {
  return box(name, `\0\0\0\0${box('', '', body.length + 16)}${body}`, 1);
}

const contents = (codec: string) => box('moov', box('trak', box('stsd', box(codec, 'x'.repeat(40)))));
const format = (...parts: readonly string[]) => readVideoFormat(new Blob(parts.map(bytes)));

describe('readVideoFormat', () => {
  it.each([
    ['before the pictures', (moov: string) => [moov, box('mdat', 'y'.repeat(500))]],
    ['behind them', (moov: string) => [box('wide', ''), box('mdat', 'y'.repeat(500)), moov]],
    ['behind them, beyond 4 GB or said to be', (moov: string) => [longBox('mdat', 'y'.repeat(500)), moov]],
    ['as the last box, without a size', (moov: string) => [box('mdat', 'y'), box('moov', moov.slice(8), 0)]],
  ])('reads the codec of an MP4 file from its table of contents %s', async (_, parts) => {
    expect(await format(box('ftyp', 'isom\0\0\0\0avc1'), ...parts(contents('hvc1')))).toEqual({
      type: 'video/mp4',
      playableAs: 'video/mp4; codecs="hvc1.1.6.L93.B0"',
    });
  });

  it('asks of QuickTime files whether they could be played as MP4, which they mostly are', async () => {
    expect(await format(box('ftyp', 'qt  \0\0\0\0'), contents('avc1'))).toEqual({
      type: 'video/quicktime',
      playableAs: 'video/mp4; codecs="avc1.42E01E"',
    });
  });

  it('does not know the codec of an MP4 file that was cut off', async () => {
    const whole = box('ftyp', 'isom\0\0\0\0') + box('mdat', 'y'.repeat(500)) + contents('hvc1');
    for (const length of [20, 100, whole.length - 1]) {
      expect(await format(whole.slice(0, length)), `${length} bytes`).toEqual({
        type: 'video/mp4',
        playableAs: 'video/mp4',
      });
    }
  });

  it('does not go on for ever over boxes of no size', async () => {
    expect(await format(box('ftyp', 'isom\0\0\0\0'), box('free', '', 4), contents('hvc1'))).toMatchObject({
      playableAs: 'video/mp4',
    });
  });

  it('reads the codec of WebM and Matroska files', async () => {
    // RFC 9559: the EBML header with its DocType, later the CodecID of the track
    const matroska = (docType: string, codec: string) =>
      format(`\x1a\x45\xdf\xa3\x9f\x42\x82\x84${docType}...${codec}`);
    expect(await matroska('webm', 'V_VP9')).toEqual({ type: 'video/webm', playableAs: 'video/webm; codecs="vp9"' });
    expect(await matroska('matroska', 'V_MPEGH/ISO/HEVC')).toEqual({
      type: 'video/x-matroska',
      playableAs: 'video/webm; codecs="hvc1.1.6.L93.B0"',
    });
    expect(await matroska('webm', 'A_OPUS')).toEqual({ type: 'video/webm', playableAs: 'video/webm' });
  });

  it.each([
    ['RIFF\x10\0\0\0AVI LIST', 'video/x-msvideo'],
    ['OggS\0', 'video/ogg'],
    ['FLV\x01', 'video/x-flv'],
    ['\x30\x26\xb2\x75\x8e', 'video/x-ms-wmv'],
    ['\0\0\x01\xba', 'video/mpeg'],
  ])('knows other formats by their mark: %j', async (start, type) => {
    expect(await format(start)).toEqual({ type, playableAs: type });
  });

  it('knows nothing of other bytes, of none, and of a file that cannot be read any more', async () => {
    expect(await format('hello')).toBeNull();
    expect(await format('RIFF\x10\0\0\0WEBP')).toBeNull();
    expect(await format()).toBeNull();
    const gone = { size: 100, slice: () => ({ arrayBuffer: () => Promise.reject(new Error('gone')) }) };
    expect(await readVideoFormat(gone as unknown as Blob)).toBeNull();
  });
});

describe('placeS', () => {
  it('puts frames into the middles of equal parts', () => {
    expect([0, 1, 2, 3].map((index) => placeS(index, 4, 8))).toEqual([1, 3, 5, 7]);
    expect(placeS(0, 1, 3)).toBe(1.5);
  });
});
