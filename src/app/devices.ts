import { createAudit } from '../devices/audit.js';
import { createCameras } from '../devices/cameras.js';
import { createLive } from '../devices/live.js';
import { createPictures } from '../devices/pictures.js';
import { createSweep } from '../devices/sweep.js';
import { createVision } from '../devices/vision.js';
import type { VisionPort } from '../session/ports.js';

// All that brings pictures in and looks at them, or looks records through: loaded after the first screen, of which none is a part.

export const audit = createAudit();
export const cameras = createCameras();
export const pictures = createPictures();
export const sweep = createSweep();
const eyes = createVision();
export const vision: VisionPort = eyes;
export const live = createLive(eyes);
