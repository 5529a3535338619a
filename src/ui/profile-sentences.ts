import type { BoardFailure } from '../core/camera/board.js';
import type { FrameCorner, ProfileWeakness } from '../core/camera/profile-quality.js';
import { unreachable } from '../core/result.js';
import type { DeviceFailure } from '../session/ports.js';
import type { ProfileFileFailure } from '../session/profile-file.js';
import type { FrameVerdict } from '../session/profile-views.js';
import { isOfDevice } from '../session/profile-views.js';
import { formatNumber } from './numbers.js';
import type { Saying } from './picture-sentences.js';
import { failureSaying } from './picture-sentences.js';

/** Why pictures of the sheet gave no view or no profile, and the way out. */
export function boardFailureSaying(failure: BoardFailure | DeviceFailure): Saying {
  if (isOfDevice(failure)) return failureSaying(failure);
  switch (failure.kind) {
    case 'no-board':
      return {
        what:
          failure.cornersFound === 0
            ? 'The camera sheet was not found.'
            : `Too little of the camera sheet was found: ${failure.cornersFound} corners, and ${failure.cornersNeeded} are needed.`,
        next: 'Hold the printed sheet nearer, flat, in more light, with no fingers on the pattern.',
      };
    case 'too-few-views':
      return {
        what: `${failure.views} usable views are too few: a profile needs ${failure.viewsNeeded}.`,
        next: 'Take or add more, with the sheet in other places and tilts.',
      };
    case 'views-of-different-size':
      return {
        what: 'The pictures have different sizes, so they are not of one camera at one resolution.',
        next: 'Choose only pictures of one size, uncropped.',
      };
    case 'views-too-alike':
      return {
        what: 'All views are too much alike to tell the lens from them.',
        next: 'Tilt the sheet to all sides, and hold it nearer and farther away.',
      };
    case 'profile-misfit':
      return {
        what: `The corners fit badly: off by ${formatNumber(failure.rmsPx, 2)} pixels, where ${formatNumber(failure.limitPx, 2)} are the limit. The sheet is bent, or the pictures are of more than one camera or zoom.`,
        next: 'Use pictures of one camera at one zoom, with the sheet fixed to something stiff and flat. Then start again.',
      };
    default:
      return unreachable(failure);
  }
}

/** Why a picture file gave no view, in a few words. */
export function boardFailureWords(failure: BoardFailure | DeviceFailure): string {
  return failure.kind === 'no-board' ? 'left out: the sheet was not found' : boardFailureSaying(failure).what;
}

const CORNERS: Readonly<Record<FrameCorner, string>> = {
  'left-top': 'upper left',
  'right-top': 'upper right',
  'right-bottom': 'lower right',
  'left-bottom': 'lower left',
};

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
  switch (weakness.kind) {
    case 'few-views':
      return `Only ${weakness.views} views: ${weakness.wanted} or more are better.`;
    case 'little-coverage':
      return `The sheet was seen in ${percent(weakness.coverage, 0)} of the frame; ${percent(weakness.wanted, 0)} are wanted: hold it all over the picture.`;
    case 'corners-uncovered': {
      const corners = weakness.corners.map((corner) => CORNERS[isMirrored ? MIRRORED[corner] : corner]);
      return `The lens is only guessed in the ${list(corners)} ${corners.length === 1 ? 'corner' : 'corners'}: hold the sheet there.`;
    }
    case 'little-tilt': {
      const sides = weakness.direction === 'across' ? 'left or right side' : 'upper or lower side';
      return `Tilted too little (${formatNumber(weakness.spreadDeg, 0)}° of ${formatNumber(weakness.wantedDeg, 0)}°): hold the sheet with its ${sides} nearer, then the other one.`;
    }
    case 'one-distance':
      return 'All views are from about one distance: take nearer and farther ones.';
    case 'focal-length-doubtful':
      return `The focal length is known to ${percent(weakness.relativeUncertainty, 1)} only (one standard deviation), where ${percent(weakness.wanted, 1)} are wanted: take more views, tilted more.`;
    case 'poor-fit':
      return `The corners fit badly (${formatNumber(weakness.rmsPx, 2)} px, where less than ${formatNumber(weakness.wantedPx, 2)} px is wanted): the sheet is bent, or the pictures are of more than one camera or zoom.`;
    default:
      return unreachable(weakness);
  }
}

/** What the camera sees at this moment. */
export function verdictSentence(verdict: FrameVerdict | 'blurred' | 'taken'): string {
  switch (verdict) {
    case 'no-sheet':
      return 'The sheet is not seen: show all of it, without glare.';
    case 'moving':
      return 'Hold still.';
    case 'nothing-new':
      return 'This view is there already: go where the outline is.';
    case 'worth-taking':
    case 'taken':
      return 'Taken.';
    case 'blurred':
      return 'Not sharp: hold still, wait for the focus, more light.';
    default:
      return unreachable(verdict);
  }
}

/** Why a file gave no profile. */
export function profileFileSentence(failure: ProfileFileFailure): string {
  switch (failure.kind) {
    case 'no-profile':
      return 'This file is no camera profile. Choose a file that was exported here.';
    case 'newer-version':
      return `This profile was written by a later Glabella (version ${failure.version} of the format; this one knows ${failure.knownVersion}). Use that one, or make the profile again.`;
    case 'damaged':
      return failure.place === null
        ? 'This profile file is damaged: it ends too early or was changed. Export it again where it came from.'
        : 'This profile file is damaged: a number in it cannot be right. Export it again where it came from.';
    default:
      return unreachable(failure);
  }
}

/** A share in per cent, with a gap before the sign at which no line is broken. */
export function percent(share: number, decimals: number): string {
  return `${formatNumber(100 * share, decimals)}\u00a0%`;
}

function list(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
}
