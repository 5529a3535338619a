import { unreachable } from '../core/result.js';
import type { Handle } from '../session/handles.js';
import { handleKey } from '../session/handles.js';
import { words } from './language.js';

/** The name of a handle. */
export function handleName(handle: Handle): string {
  switch (handle.kind) {
    case 'card-corner':
      return words.handle.cardCorners[handle.corner];
    case 'iris-centre':
      return words.handle.irisCentre[handle.side];
    case 'iris-edge':
      return words.handle.irisEdge[handle.side];
    case 'lid-upper':
      return words.handle.lidUpper[handle.side];
    case 'lid-lower':
      return words.handle.lidLower[handle.side];
    case 'midline':
      return words.handle.midline;
    default:
      return unreachable(handle);
  }
}

/** The id of the element by which it is moved. */
export function handleId(handle: Handle): string {
  return `handle-${handleKey(handle)}`;
}
