import type { SweepAdvice } from '../core/estimate/sweep.js';
import { unreachable } from '../core/result.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { SweepGap } from '../session/sweep-coverage.js';
import type { FramesMissing, SweepTrouble } from '../session/sweep-frames.js';
import type { Saying } from './picture-sentences.js';
import { failureSaying } from './picture-sentences.js';

/** What kept a frame of a sweep from being used, in a few words that go on a sentence. */
export function frameFailureWords(failure: MeasuringFailure): string {
  switch (failure.kind) {
    case 'no-face':
      return 'no face seen';
    case 'several-faces':
      return 'several faces seen';
    case 'no-card':
      return 'card not seen';
    case 'several-cards':
      return 'several cards seen';
    case 'card-not-flat':
      return 'card bent, or a corner covered';
    case 'card-tilted':
      return 'card leans too far';
    case 'head-turned':
      return 'face turned too far';
    case 'eyes-closed':
      return 'eyes closed';
    case 'iris-not-found':
      return 'iris edge not seen';
    case 'blurred':
      return 'blurred';
    case 'too-dark':
      return 'too dark';
    case 'implausible':
      return 'card and eyes do not fit together';
    case 'too-far':
      return 'too far from the camera';
    case 'picture-unsupported':
    case 'picture-broken':
    case 'picture-too-large':
      return 'file cannot be opened';
    case 'video-unsupported':
    case 'video-broken':
      return 'frame cannot be read';
    case 'camera-refused':
    case 'camera-missing':
    case 'camera-busy':
    case 'camera-unplugged':
    case 'camera-unsupported':
      return 'no camera';
    case 'model-not-loadable':
    case 'vision-not-loadable':
    case 'vision-stopped':
      return 'could not be looked at';
    default:
      return unreachable(failure);
  }
}

/**
 * What kept a sweep from being measured, and the way out.
 *
 * @param missing what the frames lacked that do not count
 */
export function sweepFailureSaying(failure: SweepTrouble, missing: FramesMissing): Saying {
  switch (failure.kind) {
    case 'too-few-frames': {
      const others = othersWords(missing);
      if (missing.leftOut > 0) {
        return {
          what: `With what was left out, only ${frameCountWords(failure.usable)} could be used, and a sweep needs ${failure.needed}.`,
          next: 'Put frames back that were left out, or measure the best frame as one picture.',
        };
      }
      return {
        what: `Only ${frameCountWords(failure.usable)} could be used, and a sweep needs ${failure.needed}.${others}`,
        next: 'Take the sweep again, slowly, with the whole card and both eyes in the frame and light from the front. Or measure the best frame alone.',
      };
    }
    case 'card-not-still':
      return {
        what: `The card never sat still on the face: at most ${frameCountWords(failure.longestRun)} in a row belong together, and ${failure.needed} are needed.`,
        next: 'Hold the card firmly, with a finger of the same hand on the head, and move head and card as one. Or measure the best frame alone.',
      };
    case 'frames-of-different-size':
      return {
        what: 'These pictures have different sizes, so they were not taken by one camera in one go.',
        next: 'Choose only pictures of one sweep, not cropped and not turned, or choose the best of them alone.',
      };
    case 'no-face':
    case 'several-faces':
    case 'no-card':
    case 'several-cards':
    case 'card-not-flat':
    case 'card-tilted':
    case 'head-turned':
    case 'eyes-closed':
    case 'iris-not-found':
    case 'blurred':
    case 'too-dark':
    case 'implausible':
    case 'too-far':
      return {
        what: `The frames of this sweep could not be measured. Most of them: ${frameFailureWords(failure)}.`,
        next: failureSaying(failure).next,
      };
    case 'picture-unsupported':
    case 'picture-broken':
    case 'picture-too-large':
    case 'video-unsupported':
    case 'video-broken':
    case 'camera-refused':
    case 'camera-missing':
    case 'camera-busy':
    case 'camera-unplugged':
    case 'camera-unsupported':
    case 'model-not-loadable':
    case 'vision-not-loadable':
    case 'vision-stopped':
      return failureSaying(failure);
    default:
      return unreachable(failure);
  }
}

/** What the other frames lacked; empty where there are none. */
function othersWords({ missed, commonest }: FramesMissing): string {
  if (commonest === null) return '';
  return ` ${missed === 1 ? 'The other one' : 'Most of the others'}: ${frameFailureWords(commonest)}.`;
}

function frameCountWords(count: number): string {
  return count === 1 ? '1 frame' : `${count} frames`;
}

/** Chosen: below this the reader would not call it a turn. */
export const HARDLY_TURNED_DEG = 6;

/** What would make the next sweep better; `frameNumber` gives the number on the screen of a frame's place. */
export function sweepAdviceSentence(advice: SweepAdvice, frameNumber: (place: number) => number): string {
  switch (advice.kind) {
    case 'turn-further':
      if (advice.rangeDeg < HARDLY_TURNED_DEG) {
        return `The head hardly turned: by ${advice.rangeDeg.toFixed(0)}° from one end to the other, and ${advice.usefulDeg.toFixed(0)}° are useful. Without it the sweep says little more than one picture.`;
      }
      return `Turn the head further: from one end to the other it turned by ${advice.rangeDeg.toFixed(0)}°, and ${advice.usefulDeg.toFixed(0)}° are useful.`;
    case 'lean-more':
      return `Lean more: the farthest frame is only ${percentBeyond(advice.ratio)} % farther away than the nearest, and ${percentBeyond(advice.usefulRatio)} % are useful.`;
    case 'more-frames':
      return `More frames: ${frameCountWords(advice.used)} could be used, and ${advice.useful} are useful. Go slowly, in good light.`;
    case 'card-slipped':
      return `The card slipped at frame ${frameNumber(advice.fromFrame)}, or these frames are of another wearer: hold the card firmly, with a finger on the head, and let no other face in.`;
    case 'come-nearer':
      return `Come nearer: the face has only ${advice.pixelsPerMm.toFixed(1)} pixels per millimetre.`;
    case 'eyes-elsewhere':
      return 'Both eyes on the lens: card and eyes moved as if they had looked elsewhere, which makes every PD here less sure.';
    default:
      return unreachable(advice);
  }
}

function percentBeyond(ratio: number): string {
  return (100 * (ratio - 1)).toFixed(0);
}

/** What a sweep still lacks, in words that go on a list. */
export function gapWords(gap: SweepGap): string {
  switch (gap) {
    case 'turned-R':
      return 'turned to the right';
    case 'turned-L':
      return 'turned to the left';
    case 'distance':
      return 'nearer and farther';
    case 'frames':
      return 'more frames';
    default:
      return unreachable(gap);
  }
}
