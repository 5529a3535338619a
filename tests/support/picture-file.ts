import { crc32 } from 'node:zlib';
import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';
import type { RgbaImage } from '../../src/core/camera/pixel-plane.js';

/** A file as a browser is handed it. */
export interface PictureFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** High enough that edges lie where they lay. */
const JPEG_QUALITY = 95;

export function jpegFile(name: string, image: RgbaImage): PictureFile {
  const raw = { width: image.widthPx, height: image.heightPx, data: image.data };
  return { name, mimeType: 'image/jpeg', buffer: Buffer.from(jpeg.encode(raw, JPEG_QUALITY).data) };
}

export function pngFile(name: string, image: RgbaImage): PictureFile {
  const png = new PNG({ width: image.widthPx, height: image.heightPx });
  png.data = Buffer.from(image.data);
  // speed before size: the file never leaves the computer
  return { name, mimeType: 'image/png', buffer: PNG.sync.write(png, { deflateLevel: 1, filterType: 1 }) };
}

/**
 * A JPEG with an EXIF orientation: an APP1 segment with one entry (tag 0x0112) right behind the start marker, as EXIF 2.32
 * (4.5.4, 4.6.2) and TIFF 6.0 (section 2) lay it out.
 */
export function withOrientation(file: PictureFile, orientation: 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8): PictureFile {
  const tiff = Buffer.from([
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8], // big-endian; the first directory follows at once
    ...[0, 1], // one entry
    ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0], // orientation, one short
    ...[0, 0, 0, 0], // no further directory
  ]);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, body.length + 2]);
  return { ...file, buffer: Buffer.concat([file.buffer.subarray(0, 2), head, body, file.buffer.subarray(2)]) };
}

/** A file of which the end is missing. */
export function truncated(file: PictureFile, share: number): PictureFile {
  return { ...file, buffer: file.buffer.subarray(0, Math.floor(file.buffer.length * share)) };
}

/** A PNG whose header says that size; behind the header there is nothing (PNG specification, 11.2.2; its checksum is right). */
export function hugePng(name: string, widthPx: number, heightPx: number): PictureFile {
  const { buffer } = pngFile(name, { widthPx: 1, heightPx: 1, data: new Uint8ClampedArray(4) });
  const header = Buffer.from(buffer);
  const kindAndBody = header.subarray(12, 29);
  kindAndBody.writeUInt32BE(widthPx, 4);
  kindAndBody.writeUInt32BE(heightPx, 8);
  header.writeUInt32BE(crc32(kindAndBody), 29);
  return { name, mimeType: 'image/png', buffer: header };
}

/** The beginning of a HEIC file, as phones write them (ISO/IEC 14496-12, 4.3: a box `ftyp` with the major brand). */
export function heicFile(name: string): PictureFile {
  const box = Buffer.from([0, 0, 0, 24, ...Buffer.from('ftypheic', 'latin1'), 0, 0, 0, 0, ...Buffer.from('mif1heic')]);
  return { name, mimeType: 'image/heic', buffer: Buffer.concat([box, Buffer.alloc(256)]) };
}

/** A file for a fake camera: JPEG frames, one behind the other. */
export function motionJpeg(frame: PictureFile, count: number): Buffer {
  return Buffer.concat(Array.from({ length: count }, () => frame.buffer));
}
