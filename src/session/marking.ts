import type { PictureFeatures } from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { Handle } from './handles.js';
import { moveHandle, vouchForCorners } from './handles.js';

/** What was found in a picture, and what a person made of it. */
export interface Marking {
  /** as the computer found it, or, with a guessed card, as it starts */
  readonly found: PictureFeatures;
  /** as it stands now: all estimates follow from it */
  readonly features: PictureFeatures;
}

export function startMarking(found: PictureFeatures): Marking {
  return { found, features: found };
}

/** The marking with a handle moved. */
export function edit(marking: Marking, handle: Handle, to: ImagePoint): Marking {
  return { ...marking, features: moveHandle(marking.features, handle, to) };
}

/** The marking as it was found. */
export function resetToFound(marking: Marking): Marking {
  return marking.features === marking.found ? marking : { ...marking, features: marking.found };
}

/** The marking with its corners vouched for by hand. */
export function vouched(marking: Marking): Marking {
  return { ...marking, features: vouchForCorners(marking.features) };
}
