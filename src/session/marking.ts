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
  /** earlier and undone versions, the nearest last */
  readonly past: readonly PictureFeatures[];
  readonly future: readonly PictureFeatures[];
  /** the gesture (one drag, one stay on a handle) that made the last edit: its steps are undone together */
  readonly gesture: number | null;
}

export function startMarking(found: PictureFeatures): Marking {
  return { found, features: found, past: [], future: [], gesture: null };
}

/** The marking with its present features put on the pile of the past. */
function kept(marking: Marking): Marking {
  return { ...marking, past: [...marking.past, marking.features], future: [] };
}

/** The marking with a handle moved; the steps of one gesture are undone together. */
export function edit(marking: Marking, handle: Handle, to: ImagePoint, gesture: number): Marking {
  const base = marking.gesture === gesture ? marking : kept(marking);
  return { ...base, features: moveHandle(marking.features, handle, to), future: [], gesture };
}

/** The marking before the last edit; as it is where there was none. */
export function undo(marking: Marking): Marking {
  return withNearest(marking, 'past', 'future');
}

/** The marking with the last undone edit done again; as it is where none was undone. */
export function redo(marking: Marking): Marking {
  return withNearest(marking, 'future', 'past');
}

/** The nearest version of one pile becomes the present one, which goes on the other pile. */
function withNearest(marking: Marking, from: 'past' | 'future', onto: 'past' | 'future'): Marking {
  const features = marking[from].at(-1);
  if (features === undefined) return marking;
  return {
    ...marking,
    features,
    [from]: marking[from].slice(0, -1),
    [onto]: [...marking[onto], marking.features],
    gesture: null,
  };
}

/** The marking as it was found; what was made of it can be brought back by `undo`. */
export function resetToFound(marking: Marking): Marking {
  return marking.features === marking.found ? marking : { ...kept(marking), features: marking.found, gesture: null };
}

/** The marking with its corners vouched for by hand. */
export function vouched(marking: Marking): Marking {
  return { ...marking, features: vouchForCorners(marking.features), gesture: null };
}
