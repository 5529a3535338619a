import { unreachable } from '../core/result.js';
import type { LiveHint } from '../session/live-hints.js';
import type { MeasuringFailure } from '../session/ports.js';
import { words } from './language.js';

/** What a hint depends on besides the picture. */
export interface HintContext {
  readonly gaze: 'camera' | 'far';
  readonly shutter: 'by-itself' | 'by-hand';
}

/** The one thing to be told at this moment. */
export function hintSentence(hint: LiveHint, { gaze, shutter }: HintContext): string {
  const said = words.live.hints;
  switch (hint.kind) {
    case 'face-turned':
      return said[hint.kind][hint.back];
    case 'chin':
      return said[hint.kind][hint.move];
    case 'card-level':
      return said[hint.kind][hint.raise];
    case 'card-hidden':
      // At the right of the unmirrored picture is the wearer's left.
      return said[hint.kind][hint.edge === 'right' ? 'L' : hint.edge === 'left' ? 'R' : hint.edge];
    case 'light-from-front':
      return said[hint.kind][hint.darker];
    case 'look':
      return said[hint.kind][gaze];
    case 'all-right':
      return said[hint.kind][shutter];
    case 'no-face':
    case 'more-light':
    case 'farther':
    case 'into-frame':
    case 'nearer':
    case 'no-card':
    case 'card-leans':
    case 'eyes-closed':
    case 'sharper':
    case 'eyes-hidden':
    case 'hold-still':
      return said[hint.kind];
    default:
      return unreachable(hint);
  }
}

/** How a camera that failed comes back without anybody's doing; null where it does not. */
export function goesOnSentence({ kind }: MeasuringFailure): string | null {
  const said: { readonly [Kind in MeasuringFailure['kind']]?: string } = words.live.goesOn;
  return said[kind] ?? null;
}
