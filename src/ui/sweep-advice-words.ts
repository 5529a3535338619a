/** What would make the next sweep better. */
export const sweepAdviceWords = {
  hardlyTurned: (turned: string, useful: string): string =>
    `The head hardly turned: by ${turned}° from one end to the other, and ${useful}° are useful. Without it the sweep says little more than one picture.`,
  turnFurther: (turned: string, useful: string): string =>
    `Turn the head further: from one end to the other it turned by ${turned}°, and ${useful}° are useful.`,
  leanMore: (farther: string, useful: string): string =>
    `Lean more: the farthest frame is only ${farther} farther away than the nearest, and ${useful} are useful.`,
  moreFrames: (used: number, useful: number): string =>
    `More frames: ${used === 1 ? '1 frame' : `${used} frames`} could be used, and ${useful} are useful. Go slowly, in good light.`,
  cardSlipped: (frame: number): string =>
    `The card slipped at frame ${frame}, or these frames are of another wearer: hold the card firmly, with a finger on the head, and let no other face in.`,
  eyesElsewhere:
    'Both eyes on the lens: card and eyes moved as if they had looked elsewhere, which makes every PD here less sure.',
};
