import canonicalFace from '../../calibration/canonical-face.json';
import contactDepth from '../../calibration/contact-depth.json';
import { reconcile } from '../core/crosscheck/reconcile.js';
import { createMeasureFace } from '../core/estimate/measure-face.js';
import { sheetEvidence } from '../session/evidence.js';
import { sheetMisfits } from '../session/misfits.js';
import type { Reasoning } from '../session/reasoning.js';

/** Estimates and the cross-check, with all that they know of faces: loaded after the first screen. */
export const reasoning: Reasoning = {
  measureFace: createMeasureFace({ canonicalFace, contactDepth }),
  reconcile,
  sheetEvidence,
  sheetMisfits,
};
