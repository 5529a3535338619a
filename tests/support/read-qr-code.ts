import type { CvMat, OpenCvInNode } from '../../calibration/opencv-in-node.js';
import { openCvInNode } from '../../calibration/opencv-in-node.js';
import type { GreyImage } from './detect-markers.js';

type OpenCvWithQrCodes = OpenCvInNode & {
  readonly QRCodeDetector: new () => {
    detectAndDecode(image: CvMat, points: CvMat, straight: CvMat): string;
    delete(): void;
  };
};

/** The text of the one QR code in a picture, as OpenCV reads it; empty where it reads none. */
export async function readQrCode({ widthPx, heightPx, levels }: GreyImage): Promise<string> {
  const cv = (await openCvInNode()).cv as OpenCvWithQrCodes;
  const image = new cv.Mat(heightPx, widthPx, cv.CV_8UC1);
  const points = new cv.Mat();
  const straight = new cv.Mat();
  const detector = new cv.QRCodeDetector();
  try {
    image.data.set(levels);
    return detector.detectAndDecode(image, points, straight);
  } finally {
    for (const one of [image, points, straight, detector]) one.delete();
  }
}
