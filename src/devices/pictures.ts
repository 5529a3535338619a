import { fail, succeed } from '../core/result.js';
import type { PicturePort } from '../session/ports.js';
import { readPictureHeader } from './picture-header.js';
import { tooLargeToOpen } from './picture-limit.js';
import { openVideoFrames } from './video-frames.js';

/** Segments before the size of a JPEG (EXIF, colour profiles) rarely take more. */
const HEAD_BYTES = 512 * 1024;

/**
 * Opens JPEG, PNG and WebP files, told by their bytes; the EXIF orientation is obeyed. Files that unfold to
 * too many pixels are refused before they are decoded.
 */
export function createPictures(): PicturePort {
  return {
    storedSize: async (file) => {
      const head = await bytesOf(file.slice(0, HEAD_BYTES));
      const header = head === null ? null : readPictureHeader(head);
      return header?.ok === true ? header.value : null;
    },
    open: async (file, name) => {
      const head = await bytesOf(file.slice(0, HEAD_BYTES));
      if (head === null) return fail({ kind: 'picture-broken' });
      let header = readPictureHeader(head);
      let all: Uint8Array<ArrayBuffer> | null = null;
      if (header.ok || header.failure.kind === 'picture-broken') {
        all = file.size <= HEAD_BYTES ? head : await bytesOf(file);
        if (all === null) return fail({ kind: 'picture-broken' });
        // the size may stand behind an unusually long head
        if (!header.ok) header = readPictureHeader(all);
      }
      if (!header.ok) {
        const { failure } = header;
        // where the bytes say nothing, the browser's guess by the file's name is better than nothing
        return fail(
          failure.kind === 'picture-unsupported' && failure.type === '' ? { ...failure, type: file.type } : failure,
        );
      }
      const { type, widthPx, heightPx } = header.value;
      const tooLarge = tooLargeToOpen(widthPx, heightPx);
      if (tooLarge !== null) return fail(tooLarge);
      if (all === null || isCutOff(type, all)) return fail({ kind: 'picture-broken' });
      try {
        const bitmap = await createImageBitmap(new Blob([all], { type }), { imageOrientation: 'from-image' });
        return succeed({ bitmap, widthPx: bitmap.width, heightPx: bitmap.height, name });
      } catch {
        return fail({ kind: 'picture-broken' });
      }
    },
    openVideo: openVideoFrames,
  };
}

/** Null where the file cannot be read any more: it was moved, or its disk was taken away. */
async function bytesOf(file: Blob): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    return null;
  }
}

/** Browsers show what there is of a JPEG that was cut off, grey below: it must not be measured. */
export function isCutOff(type: string, bytes: Uint8Array): boolean {
  if (type !== 'image/jpeg') return false;
  // the end marker stands at the end; what cameras add behind it is searched as well, from the back
  for (let at = bytes.length - 2; at > 0; at--) {
    if (bytes[at] !== 0xff) continue;
    const marker = bytes[at + 1];
    if (marker === 0xd9) return false;
    // the start of the compressed data came first: there is no end to it
    if (marker === 0xda) return true;
  }
  return true;
}
