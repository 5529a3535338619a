import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';

export type PictureType = 'image/jpeg' | 'image/png' | 'image/webp';

/** What the first bytes of a picture file say. The size is that of the stored picture, before any EXIF orientation. */
export interface PictureHeader {
  readonly type: PictureType;
  readonly widthPx: number;
  readonly heightPx: number;
}

export type PictureHeaderFailure =
  /** none of the three formats; `type` names the format where its first bytes are known, otherwise it is empty */
  | { readonly kind: 'picture-unsupported'; readonly type: string }
  /** one of the three formats, but its size cannot be read */
  | { readonly kind: 'picture-broken' };

/** Marks of formats that people do try, so that the sentence can name them. */
const OTHER_FORMATS: readonly { readonly offset: number; readonly mark: string; readonly type: string }[] = [
  { offset: 0, mark: 'GIF8', type: 'image/gif' },
  { offset: 0, mark: 'BM', type: 'image/bmp' },
  { offset: 0, mark: 'II*\0', type: 'image/tiff' },
  { offset: 0, mark: 'MM\0*', type: 'image/tiff' },
  { offset: 0, mark: '%PDF', type: 'application/pdf' },
  { offset: 4, mark: 'ftypavif', type: 'image/avif' },
  { offset: 4, mark: 'ftyphei', type: 'image/heic' },
  { offset: 4, mark: 'ftyphev', type: 'image/heic' },
  { offset: 4, mark: 'ftypmif1', type: 'image/heic' },
  { offset: 4, mark: 'ftypqt', type: 'video/quicktime' },
  { offset: 4, mark: 'ftyp', type: 'video/mp4' },
];

/**
 * Type and size of a picture by its bytes, never by its name: nothing is decoded, so a small file that would unfold to an enormous
 * picture is noticed in time. Sources: ITU-T T.81 annex B (JPEG), PNG (ISO/IEC 15948) clause 11.2.2, RFC 9649 (WebP).
 */
export function readPictureHeader(bytes: Uint8Array): Result<PictureHeader, PictureHeaderFailure> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (hasMark(bytes, 0, '\xff\xd8\xff')) return sized('image/jpeg', jpegSize(view));
  if (hasMark(bytes, 0, '\x89PNG\r\n\x1a\n')) return sized('image/png', pngSize(bytes, view));
  if (hasMark(bytes, 0, 'RIFF') && hasMark(bytes, 8, 'WEBP')) return sized('image/webp', webpSize(bytes, view));
  const other = OTHER_FORMATS.find(({ offset, mark }) => hasMark(bytes, offset, mark));
  return fail({ kind: 'picture-unsupported', type: other?.type ?? '' });
}

type Size = readonly [widthPx: number, heightPx: number];

function sized(type: PictureType, size: Size | null): Result<PictureHeader, PictureHeaderFailure> {
  if (size === null || size[0] === 0 || size[1] === 0) return fail({ kind: 'picture-broken' });
  return succeed({ type, widthPx: size[0], heightPx: size[1] });
}

function hasMark(bytes: Uint8Array, offset: number, mark: string): boolean {
  if (bytes.length < offset + mark.length) return false;
  for (let index = 0; index < mark.length; index++) {
    if (bytes[offset + index] !== mark.charCodeAt(index)) return false;
  }
  return true;
}

/** Walks from segment to segment to the first start of frame. */
function jpegSize(view: DataView): Size | null {
  let at = 2;
  while (at + 4 <= view.byteLength) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      // any number of fill bytes may stand before a marker
      at += 1;
      continue;
    }
    if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) {
      at += 2;
      continue;
    }
    // the end, or the compressed data without a frame before it
    if (marker === 0xd9 || marker === 0xda) return null;
    // C0 to CF are frames, but for the Huffman tables, an extension, and arithmetic conditioning
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      return at + 9 <= view.byteLength ? [view.getUint16(at + 7), view.getUint16(at + 5)] : null;
    }
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

function pngSize(bytes: Uint8Array, view: DataView): Size | null {
  if (bytes.length < 24 || !hasMark(bytes, 12, 'IHDR')) return null;
  return [view.getUint32(16), view.getUint32(20)];
}

function webpSize(bytes: Uint8Array, view: DataView): Size | null {
  if (bytes.length < 30) return null;
  if (hasMark(bytes, 12, 'VP8X')) return [1 + uint24(view, 24), 1 + uint24(view, 27)];
  if (hasMark(bytes, 12, 'VP8L')) {
    if (view.getUint8(20) !== 0x2f) return null;
    const packed = view.getUint32(21, true);
    return [1 + (packed & 0x3fff), 1 + ((packed >>> 14) & 0x3fff)];
  }
  if (hasMark(bytes, 12, 'VP8 ')) {
    if (!hasMark(bytes, 23, '\x9d\x01\x2a')) return null;
    return [view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff];
  }
  return null;
}

function uint24(view: DataView, at: number): number {
  return view.getUint16(at, true) | (view.getUint8(at + 2) << 16);
}
