import type { BoardFailure } from '../core/camera/board.js';
import type { FrameCorner, ProfileWeakness } from '../core/camera/profile-quality.js';
import { unreachable } from '../core/result.js';
import type { DeviceFailure } from '../session/ports.js';
import type { ProfileFileFailure } from '../session/profile-file.js';
import type { FrameVerdict } from '../session/profile-views.js';
import { isOfDevice } from '../session/profile-views.js';
import { words } from './language.js';
import { formatNumber, formatPercent } from './numbers.js';
import type { Saying } from './saying.js';
import { failureSaying } from './picture-sentences.js';

/** Why pictures of the sheet gave no view or no profile, and the way out. */
export function boardFailureSaying(failure: BoardFailure | DeviceFailure): Saying {
  if (isOfDevice(failure)) return failureSaying(failure);
  const said = words.boardFailure;
  switch (failure.kind) {
    case 'no-board':
      return failure.cornersFound === 0
        ? said.noBoard
        : said.littleOfBoard(failure.cornersFound, failure.cornersNeeded);
    case 'too-few-views':
      return said.tooFewViews(failure.views, failure.viewsNeeded);
    case 'views-of-different-size':
      return said.differentSizes;
    case 'views-too-alike':
      return said.tooAlike;
    case 'profile-misfit':
      return said.misfit(formatNumber(failure.rmsPx, 2), formatNumber(failure.limitPx, 2));
    default:
      return unreachable(failure);
  }
}

/** Why a picture file gave no view, in a few words. */
export function boardFailureWords(failure: BoardFailure | DeviceFailure): string {
  return failure.kind === 'no-board' ? words.boardFailure.leftOut : boardFailureSaying(failure).what;
}

const MIRRORED: Readonly<Record<FrameCorner, FrameCorner>> = {
  'left-top': 'right-top',
  'right-top': 'left-top',
  'right-bottom': 'left-bottom',
  'left-bottom': 'right-bottom',
};

/**
 * What is weak about views or a profile, and what would help.
 *
 * @param isMirrored whether the picture beside it is shown as in a looking glass
 */
export function weaknessSentence(weakness: ProfileWeakness, isMirrored: boolean): string {
  const said = words.profileWeakness;
  switch (weakness.kind) {
    case 'few-views':
      return said.fewViews(weakness.views, weakness.wanted);
    case 'little-coverage':
      return said.littleCoverage(percent(weakness.coverage, 0), percent(weakness.wanted, 0));
    case 'corners-uncovered': {
      const corners = weakness.corners.map((corner) => said.corners[isMirrored ? MIRRORED[corner] : corner]);
      return said.cornersUncovered(corners);
    }
    case 'little-tilt':
      return said.littleTilt[weakness.direction](
        formatNumber(weakness.spreadDeg, 0),
        formatNumber(weakness.wantedDeg, 0),
      );
    case 'one-distance':
      return said.oneDistance;
    case 'focal-length-doubtful':
      return said.focalLengthDoubtful(percent(weakness.relativeUncertainty, 1), percent(weakness.wanted, 1));
    case 'poor-fit':
      return said.poorFit(formatNumber(weakness.rmsPx, 2), formatNumber(weakness.wantedPx, 2));
    default:
      return unreachable(weakness);
  }
}

/** What the camera sees at this moment. */
export function verdictSentence(verdict: FrameVerdict | 'blurred' | 'taken'): string {
  return words.boardVerdict[verdict];
}

/** Why a file gave no profile. */
export function profileFileSentence(failure: ProfileFileFailure): string {
  const said = words.profileFile;
  switch (failure.kind) {
    case 'no-profile':
      return said.noProfile;
    case 'newer-version':
      return said.newerVersion(failure.version, failure.knownVersion);
    case 'damaged':
      return failure.place === null ? said.damaged : said.numberDamaged;
    default:
      return unreachable(failure);
  }
}

/** A share in per cent, with a gap before the sign at which no line is broken. */
export function percent(share: number, decimals: number): string {
  return formatPercent(100 * share, decimals).replace(' ', '\u00a0');
}
