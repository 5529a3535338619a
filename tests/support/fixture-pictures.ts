import { readFileSync } from 'node:fs';
import jpeg from 'jpeg-js';
import type { RgbaImage } from '../../src/core/camera/pixel-plane.js';
import type { FourCorners } from '../../src/core/camera/features.js';
import type { ImagePoint } from '../../src/core/geometry/vector.js';
import type { BothSides } from '../../src/core/units/side.js';
import sources from '../fixtures/pictures/sources.json';
import type { PictureFile } from './picture-file.js';

export type FixtureName = keyof typeof sources.pictures;

/** A rendered picture with what is known of the head and the card in it; lengths in mm, pixels from the picture's corner. */
export interface FixturePicture {
  readonly file: PictureFile;
  readonly gaze: 'camera' | 'far';
  readonly pdFarMm: number;
  readonly monoPdMm: BothSides<number>;
  readonly apertureMm: BothSides<number>;
  readonly headWidthMm: number;
  readonly pupilPx: BothSides<ImagePoint>;
  /** the sharp corners from the top left clockwise, as seen in the picture */
  readonly cardCornersPx: FourCorners<ImagePoint>;
}

const FOLDER = new URL('../fixtures/pictures/', import.meta.url);

export function fixturePicture(name: FixtureName): FixturePicture {
  const entry = sources.pictures[name];
  return {
    file: { name: entry.file, mimeType: 'image/jpeg', buffer: readFileSync(new URL(entry.file, FOLDER)) },
    gaze: entry.gaze === 'far' ? 'far' : 'camera',
    pdFarMm: entry.pdFarMm,
    monoPdMm: { R: entry.monoPdRMm, L: entry.monoPdLMm },
    apertureMm: { R: entry.apertureRMm, L: entry.apertureLMm },
    headWidthMm: entry.headWidthMm,
    pupilPx: { R: point(entry.pupilPx.R), L: point(entry.pupilPx.L) },
    cardCornersPx: [
      point(entry.cardCornersPx[0]),
      point(entry.cardCornersPx[1]),
      point(entry.cardCornersPx[2]),
      point(entry.cardCornersPx[3]),
    ],
  };
}

/** The pixels of a rendered picture. */
export function fixturePixels(name: FixtureName): RgbaImage {
  const { width, height, data } = jpeg.decode(fixturePicture(name).file.buffer, { useTArray: true });
  return { widthPx: width, heightPx: height, data: new Uint8ClampedArray(data) };
}

function point(pair: readonly number[] | undefined): ImagePoint {
  const [xPx, yPx] = pair ?? [];
  if (xPx === undefined || yPx === undefined) throw new Error('A point of sources.json lacks a coordinate.');
  return { xPx, yPx };
}
