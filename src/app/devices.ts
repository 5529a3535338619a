import { createAudit } from '../devices/audit.js';
import { createCameras } from '../devices/cameras.js';
import { createPictures } from '../devices/pictures.js';
import { createSweep } from '../devices/sweep.js';
import { createVision } from '../devices/vision.js';

// All that brings pictures in and looks at them, or looks records through: loaded after the first screen, of which none is a part.

export const audit = createAudit();
export const cameras = createCameras();
export const pictures = createPictures();
export const sweep = createSweep();
export const vision = createVision();
