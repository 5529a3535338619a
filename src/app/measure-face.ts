import canonicalFace from '../../calibration/canonical-face.json';
import contactDepth from '../../calibration/contact-depth.json';
import { createMeasureFace } from '../core/estimate/measure-face.js';

/** Makes estimates of one picture's features, with all that is known of faces. */
export const measureFace = createMeasureFace({ canonicalFace, contactDepth });
