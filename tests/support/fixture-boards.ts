import { readFileSync } from 'node:fs';
import sources from '../fixtures/pictures/board/sources.json' with { type: 'json' };
import type { PictureFile } from './picture-file.js';

const FOLDER = new URL('../fixtures/pictures/board/', import.meta.url);

/** The camera through which the pictures of the sheet were rendered; distortion by k1 alone. */
export const BOARD_CAMERA = sources.camera;

/** Rendered pictures of the printed ChArUco sheet, all by one camera. */
export function fixtureBoards(): readonly PictureFile[] {
  return sources.files.map((name) => ({ name, mimeType: 'image/jpeg', buffer: readFileSync(new URL(name, FOLDER)) }));
}
