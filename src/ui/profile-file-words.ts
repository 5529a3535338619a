/** Why a file gave no camera profile. */
export const profileFileWords = {
  noProfile: 'This file is no camera profile. Choose a file that was exported here.',
  newerVersion: (version: number, known: number): string =>
    `This profile was written by a later Glabella (version ${version} of the format; this one knows ${known}). Use that one, or make the profile again.`,
  damaged: 'This profile file is damaged: it ends too early or was changed. Export it again where it came from.',
  numberDamaged: 'This profile file is damaged: a number in it cannot be right. Export it again where it came from.',
};
