import { readFileSync } from 'node:fs';
import type { BothSides } from '../../src/core/units/side.js';
import sources from '../fixtures/pictures/sources.json';
import type { PictureFile } from './picture-file.js';
import { motionJpeg } from './picture-file.js';

const FOLDER = new URL('../fixtures/pictures/', import.meta.url);

/** What is known of the head in the frames of the sweep, mm. */
export const sweepTruth: { readonly pdFarMm: number; readonly monoPdMm: BothSides<number> } = {
  pdFarMm: sources.sweep.pdFarMm,
  monoPdMm: { R: sources.sweep.monoPdRMm, L: sources.sweep.monoPdLMm },
};

/** The frames of one sweep, rendered: the head turns by 15 degrees to both sides and comes nearer and farther. */
export function sweepFrames(): readonly PictureFile[] {
  return Array.from({ length: sources.sweep.count }, (_, index) => {
    const name = `sweep-${String(index).padStart(2, '0')}.jpg`;
    return { name, mimeType: 'image/jpeg', buffer: readFileSync(new URL(name, FOLDER)) };
  });
}

/** The sweep as a file for a fake camera, which plays 30 frames a second over and over; each frame stands for a while. */
export function sweepVideo(repeats: number): Buffer {
  return Buffer.concat(sweepFrames().map((frame) => motionJpeg(frame, repeats)));
}
