import type { SweepAdvice } from '../core/estimate/sweep.js';
import { unreachable } from '../core/result.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { SweepGap } from '../session/sweep-coverage.js';
import type { FramesMissing, SweepTrouble } from '../session/sweep-frames.js';
import { words } from './language.js';
import { formatNumber, formatPercent } from './numbers.js';
import type { Saying } from './saying.js';
import { failureSaying } from './picture-sentences.js';

/** What kept a frame of a sweep from being used, in a few words that go on a sentence. */
export function frameFailureText({ kind }: MeasuringFailure): string {
  return words.frameFailure[kind];
}

/**
 * What kept a sweep from being measured, and the way out.
 *
 * @param missing what the frames lacked that do not count
 */
export function sweepFailureSaying(failure: SweepTrouble, missing: FramesMissing): Saying {
  const said = words.sweepFailure;
  switch (failure.kind) {
    case 'too-few-frames': {
      const { usable, needed } = failure;
      if (missing.leftOut > 0) return said.tooFewLeft(usable, needed);
      const { commonest, missed } = missing;
      return commonest === null
        ? said.tooFew(usable, needed)
        : said.tooFewAs(usable, needed, missed, frameFailureText(commonest));
    }
    case 'card-not-still':
      return said.cardNotStill(failure.longestRun, failure.needed);
    case 'frames-of-different-size':
      return said.differentSizes;
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
      return { what: said.mostly(frameFailureText(failure)), next: failureSaying(failure).next };
    case 'picture-unsupported':
    case 'picture-broken':
    case 'picture-too-large':
    case 'video-unsupported':
    case 'video-broken':
    case 'camera-refused':
    case 'camera-missing':
    case 'camera-busy':
    case 'camera-unplugged':
    case 'camera-silent':
    case 'camera-unsupported':
    case 'model-not-loadable':
    case 'vision-not-loadable':
    case 'vision-stopped':
      return failureSaying(failure);
    default:
      return unreachable(failure);
  }
}

/** Chosen: below this the reader would not call it a turn. */
export const HARDLY_TURNED_DEG = 6;

/** What would make the next sweep better; `frameNumber` gives the number on the screen of a frame's place. */
export function sweepAdviceSentence(advice: SweepAdvice, frameNumber: (place: number) => number): string {
  const said = words.sweepAdvice;
  switch (advice.kind) {
    case 'turn-further': {
      const [turned, useful] = [formatNumber(advice.rangeDeg, 0), formatNumber(advice.usefulDeg, 0)];
      return advice.rangeDeg < HARDLY_TURNED_DEG ? said.hardlyTurned(turned, useful) : said.turnFurther(turned, useful);
    }
    case 'lean-more':
      return said.leanMore(percentBeyond(advice.ratio), percentBeyond(advice.usefulRatio));
    case 'more-frames':
      return said.moreFrames(advice.used, advice.useful);
    case 'card-slipped':
      return said.cardSlipped(frameNumber(advice.fromFrame));
    case 'come-nearer':
      return words.pictureAdvice.comeNearer(formatNumber(advice.pixelsPerMm, 1));
    case 'eyes-elsewhere':
      return said.eyesElsewhere;
    default:
      return unreachable(advice);
  }
}

function percentBeyond(ratio: number): string {
  return formatPercent(100 * (ratio - 1), 0);
}

/** What a sweep still lacks, in words that go on a list. */
export function gapWords(gap: SweepGap): string {
  return words.sweepGap[gap];
}
