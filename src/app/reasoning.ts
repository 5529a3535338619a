import { reconcile } from '../core/crosscheck/reconcile.js';
import type { Reasoning } from '../session/reasoning.js';
import { measureFace } from './measure-face.js';

/** Estimates and the cross-check, with all that they know of faces: loaded after the first screen. */
export const reasoning: Reasoning = {
  measureFace,
  reconcile,
};
