import type { CvDeletable } from './open-cv.js';

/**
 * What OpenCV makes lives on the heap of its WebAssembly until it is deleted: runs the work, and deletes afterwards, whatever
 * happened, all that the work handed to `own`, what was made last first.
 */
export function onHeap<Value>(work: (own: <Thing extends CvDeletable>(thing: Thing) => Thing) => Value): Value {
  const made: CvDeletable[] = [];
  try {
    return work((thing) => {
      made.push(thing);
      return thing;
    });
  } finally {
    for (const thing of made.reverse()) thing.delete();
  }
}
