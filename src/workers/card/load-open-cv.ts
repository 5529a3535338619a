import openCv from '@techstark/opencv-js';
import type { OpenCv } from './open-cv.js';
import { readyOpenCv } from './open-cv.js';

/**
 * Resolves with OpenCV, wrapped, once it runs. This module is there to be imported lazily: OpenCV's own module must not be,
 * since its `then` would make the import wait for ever.
 */
export function loadOpenCv(): Promise<{ readonly cv: OpenCv }> {
  return readyOpenCv(openCv);
}
