import type { Advice } from '../core/camera/failure.js';
import { unreachable } from '../core/result.js';
import type { MeasuringFailure, MeasuringProgress } from '../session/ports.js';
import { words } from './language.js';
import { formatNumber } from './numbers.js';
import type { Saying } from './saying.js';

const OPENED_TYPES: readonly string[] = ['image/jpeg', 'image/png', 'image/webp'];
/** What kept a picture from being measured, and the way out. */
export function failureSaying(failure: MeasuringFailure): Saying {
  const said = words.measuringFailure;
  switch (failure.kind) {
    case 'several-faces':
      return said[failure.kind](failure.count);
    case 'card-not-flat':
      return said[failure.kind](formatNumber(failure.residualPx, 1));
    case 'card-tilted':
      return said[failure.kind](formatNumber(failure.tiltDeg, 0), formatNumber(failure.limitDeg, 0));
    case 'head-turned':
      return said[failure.kind](formatNumber(failure.turnDeg, 0), formatNumber(failure.limitDeg, 0));
    case 'eyes-closed':
      return said[failure.kind](failure.side);
    case 'iris-not-found':
      return said[failure.kind](failure.side);
    case 'blurred':
      return said[failure.kind](formatNumber(failure.edgeWidthPx, 1), formatNumber(failure.limitPx, 1));
    case 'implausible':
      return said[failure.kind](formatNumber(failure.irisMm, 1));
    case 'too-far':
      return said[failure.kind](formatNumber(failure.pixelsPerMm, 1), formatNumber(failure.limitPixelsPerMm, 1));
    case 'picture-unsupported':
      // What calls itself a JPEG and is none is not helped by the advice to make a JPEG of it.
      return OPENED_TYPES.includes(failure.type) ? said['picture-disguised'] : said[failure.kind](failure.type);
    case 'picture-too-large':
      return said[failure.kind](formatNumber(failure.megapixels, 0), formatNumber(failure.limitMegapixels, 0));
    case 'vision-not-loadable':
      return said[failure.kind](failure.part);
    case 'vision-stopped':
      return said[failure.kind](failure.part);
    case 'no-face':
    case 'no-card':
    case 'several-cards':
    case 'too-dark':
    case 'picture-broken':
    case 'video-unsupported':
    case 'video-broken':
    case 'camera-refused':
    case 'camera-missing':
    case 'camera-busy':
    case 'camera-unplugged':
    case 'camera-silent':
    case 'camera-unsupported':
    case 'model-not-loadable':
      return said[failure.kind];
    default:
      return unreachable(failure);
  }
}

/** What would make the next picture better. */
export function adviceSentence(advice: Advice): string {
  const said = words.pictureAdvice;
  switch (advice.kind) {
    case 'come-nearer':
      return said.comeNearer(formatNumber(advice.pixelsPerMm, 1));
    case 'card-covered':
      return said.cardCovered[advice.edge];
    case 'turn-to-camera':
      return said.turnToCamera(formatNumber(advice.turnDeg, 0));
    case 'level-card':
      return said.levelCard(formatNumber(advice.rollDeg, 0));
    case 'card-on-forehead':
      return said.cardOnForehead;
    case 'check-points':
      return said.checkPoints[advice.what];
    default:
      return unreachable(advice);
  }
}

/** What is being done. */
export function progressSentence(progress: MeasuringProgress | null): string {
  return progress === null ? words.progress.opening : words.progress[progress.stage];
}
