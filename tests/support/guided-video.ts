import { cameraFromFieldOfView } from '../../src/core/camera/pinhole.js';
import { BOARD_POSITIONS } from '../../src/core/camera/profile-quality.js';
import { poseOfPosition } from '../../src/session/profile-outline.js';
import { boardByOpenCv, photographSheet } from './detect-board.js';
import type { GreyImage } from './detect-markers.js';
import { jpegFile, motionJpeg } from './picture-file.js';

const PIXELS_PER_MM = 4;
/** white paper around the board, mm */
const WHITE_MM = 10;

/**
 * A film for a fake camera in which the sheet is held in all positions that are asked for, in their order, each for two
 * seconds. Nothing of it comes from the app but where it asks the sheet to be held; the board is OpenCV's own drawing.
 */
export async function guidedVideo(widthPx: number, heightPx: number, fieldOfViewDeg: number): Promise<Buffer> {
  const sheet = onPaper(await boardByOpenCv(PIXELS_PER_MM));
  const camera = cameraFromFieldOfView(widthPx, heightPx, (fieldOfViewDeg * Math.PI) / 180);
  // Who fills an outline stands nearer or farther, as the camera's field of view has it; outlines are drawn for 66 degrees.
  const nearer = camera.fx / cameraFromFieldOfView(widthPx, heightPx, (66 * Math.PI) / 180).fx;
  const parts = BOARD_POSITIONS.map((position) => {
    const { rotation, translationMm } = poseOfPosition(position, widthPx, heightPx);
    const [x, y, z] = rotation.map((row) => -WHITE_MM * (row[0] + row[1]));
    const pose = {
      rotation,
      translationMm: [
        translationMm[0] + (x ?? 0),
        translationMm[1] + (y ?? 0),
        translationMm[2] * nearer + (z ?? 0),
      ] as const,
    };
    const { levels } = photographSheet(sheet, PIXELS_PER_MM, camera, pose, widthPx, heightPx);
    const data = new Uint8ClampedArray(4 * widthPx * heightPx).fill(255);
    levels.forEach((level, index) => data.fill(level, 4 * index, 4 * index + 3));
    // Chromium plays 30 frames a second.
    return motionJpeg(jpegFile(`${position}.jpg`, { widthPx, heightPx, data }), 60);
  });
  return Buffer.concat(parts);
}

function onPaper({ widthPx, heightPx, levels }: GreyImage): GreyImage {
  const white = WHITE_MM * PIXELS_PER_MM;
  const paper = { widthPx: widthPx + 2 * white, heightPx: heightPx + 2 * white };
  const all = new Uint8Array(paper.widthPx * paper.heightPx).fill(255);
  for (let row = 0; row < heightPx; row++) {
    all.set(levels.subarray(row * widthPx, (row + 1) * widthPx), (row + white) * paper.widthPx + white);
  }
  return { ...paper, levels: all };
}
