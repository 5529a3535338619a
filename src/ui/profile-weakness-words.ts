import type { FrameCorner } from '../core/camera/profile-quality.js';
import { listInEnglish } from './list-in-english.js';

/** What is weak about views or a profile, and what would help. Shares carry their sign of per cent. */
export const profileWeaknessWords = {
  fewViews: (views: number, wanted: number): string => `Only ${views} views: ${wanted} or more are better.`,
  littleCoverage: (share: string, wanted: string): string =>
    `The sheet was seen in ${share} of the frame; ${wanted} are wanted: hold it all over the picture.`,
  corners: {
    'left-top': 'upper left',
    'right-top': 'upper right',
    'right-bottom': 'lower right',
    'left-bottom': 'lower left',
  } satisfies Record<FrameCorner, string>,
  cornersUncovered: (corners: readonly string[]): string =>
    `The lens is only guessed in the ${listInEnglish(corners)} ${corners.length === 1 ? 'corner' : 'corners'}: hold the sheet there.`,
  littleTilt: {
    across: (degrees: string, wanted: string): string =>
      `Tilted too little (${degrees}° of ${wanted}°): hold the sheet with its left or right side nearer, then the other one.`,
    down: (degrees: string, wanted: string): string =>
      `Tilted too little (${degrees}° of ${wanted}°): hold the sheet with its upper or lower side nearer, then the other one.`,
  },
  oneDistance: 'All views are from about one distance: take nearer and farther ones.',
  focalLengthDoubtful: (share: string, wanted: string): string =>
    `The focal length is known to ${share} only (one standard deviation), where ${wanted} are wanted: take more views, tilted more.`,
  poorFit: (rmsPx: string, wantedPx: string): string =>
    `The corners fit badly (${rmsPx} px, where less than ${wantedPx} px is wanted): the sheet is bent, or the pictures are of more than one camera or zoom.`,
};
