/** What would make the next picture better. */
export const pictureAdviceWords = {
  comeNearer: (pixelsPerMm: string): string => `Come nearer: the face has only ${pixelsPerMm} pixels per millimetre.`,
  cardCovered: {
    top: 'The card’s top edge (as seen in the picture) is hard to see: keep fingers and hair off it, and let it stand out from what is behind it.',
    right:
      'The card’s right edge (as seen in the picture) is hard to see: keep fingers and hair off it, and let it stand out from what is behind it.',
    bottom:
      'The card’s bottom edge (as seen in the picture) is hard to see: keep fingers and hair off it, and let it stand out from what is behind it.',
    left: 'The card’s left edge (as seen in the picture) is hard to see: keep fingers and hair off it, and let it stand out from what is behind it.',
  },
  turnToCamera: (degrees: string): string => `Turn the nose to the camera: it points ${degrees}° aside.`,
  levelCard: (degrees: string): string => `Hold the card’s long edge level: it leans by ${degrees}°.`,
  cardOnForehead: 'Hold the card on the forehead if you can: there it is best known how far it lies before the eyes.',
  checkPoints: {
    card: 'Look at the card’s corners under the loupe: the edge was hard to see.',
    irisR: 'Look at the right iris under the loupe: the edge was hard to see.',
    irisL: 'Look at the left iris under the loupe: the edge was hard to see.',
  },
};
