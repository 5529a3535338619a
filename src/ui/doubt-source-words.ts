import type { BudgetSource } from '../core/estimate/estimate.js';

/** Where the doubt of an estimate comes from, as an entry of a list. */
export const doubtSourceWords = {
  'card-size': 'true size of the card',
  'card-edges': 'where the card’s edges lie in the picture',
  'iris-edges': 'where the iris edges lie in the picture',
  'lid-edges': 'where the lid margins lie in the picture',
  'contact-depth': 'how far the touched skin lies before the eyes',
  camera: 'field of view and distortion of the camera',
  'head-pose': 'how the head is turned',
  'iris-size': 'how wide this wearer’s irises are',
  gaze: 'where the eyes looked',
  midline: 'where the midline of the bridge lies',
  'head-shape': 'how this head differs from the fitted one',
  'between-frames': 'scatter between frames',
} satisfies Record<BudgetSource, string>;
