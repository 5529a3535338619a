import type { BoardPosition } from '../core/camera/profile-quality.js';

/** What is asked for, as seen in a mirrored preview: left and right are the picture's own, swapped. */
export const positionWords: Readonly<Record<BoardPosition, string>> = {
  middle: 'Hold the sheet in the middle, facing the camera.',
  nearer: 'Nearer, until the sheet fills the large outline.',
  farther: 'Farther away, into the small outline.',
  'left-top': 'Into the upper right corner.',
  'right-top': 'Into the upper left corner.',
  'right-bottom': 'Into the lower left corner.',
  'left-bottom': 'Into the lower right corner.',
  'tilted-left': 'In the middle, its right side tilted towards the camera.',
  'tilted-right': 'In the middle, its left side tilted towards the camera.',
  'tilted-top': 'In the middle, its upper side tilted towards the camera.',
  'tilted-bottom': 'In the middle, its lower side tilted towards the camera.',
  upright: 'In the middle, turned upright by a quarter turn.',
};
