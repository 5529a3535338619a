/**
 * Why a picture gave no estimate. Facts only: the screen writes the sentence and the way out.
 * An estimate is refused where its number would not carry; everything milder is an `Advice`.
 */
export type PictureFailure =
  /** no face in the picture: come into the frame, more light from the front */
  | { readonly kind: 'no-face' }
  /** two or more faces: one wearer alone */
  | { readonly kind: 'several-faces'; readonly count: number }
  /** no card of the right shape near the face: hold it flat, free of fingers, against another background */
  | { readonly kind: 'no-card' }
  /** two cards: put one away */
  | { readonly kind: 'several-cards' }
  /** the card's outline does not fit a flat card: it is bent, or fingers hide a corner; residual of the flat fit */
  | { readonly kind: 'card-not-flat'; readonly residualPx: number }
  /** the card leans too far from the picture plane */
  | { readonly kind: 'card-tilted'; readonly tiltDeg: number; readonly limitDeg: number }
  /** the face is turned, nods or leans too far */
  | { readonly kind: 'head-turned'; readonly turnDeg: number; readonly limitDeg: number }
  /** a lid covers the iris */
  | { readonly kind: 'eyes-closed'; readonly side: 'R' | 'L' | 'both' }
  /** the iris edge could not be fitted for another reason: highlights, lashes, spectacles */
  | { readonly kind: 'iris-not-found'; readonly side: 'R' | 'L' | 'both' }
  /** edges are too soft: hold still, focus, wipe the lens */
  | { readonly kind: 'blurred'; readonly edgeWidthPx: number; readonly limitPx: number }
  /** too little light on the face */
  | { readonly kind: 'too-dark'; readonly meanLevel: number; readonly limitLevel: number }
  /** card and irises do not fit together: one of them lies wrong, or the card has not the size of ID-1 */
  | { readonly kind: 'implausible'; readonly irisMm: number }
  /** too few pixels per millimetre at the face */
  | { readonly kind: 'too-far'; readonly pixelsPerMm: number; readonly limitPixelsPerMm: number };

export type PictureFailureKind = PictureFailure['kind'];

/** What would make the next picture better; the estimates stand all the same, with their wider intervals. */
export type Advice =
  | { readonly kind: 'come-nearer'; readonly pixelsPerMm: number }
  | { readonly kind: 'card-covered'; readonly edge: 'top' | 'right' | 'bottom' | 'left' }
  | { readonly kind: 'turn-to-camera'; readonly turnDeg: number }
  | { readonly kind: 'level-card'; readonly rollDeg: number }
  | { readonly kind: 'card-on-forehead' }
  | { readonly kind: 'check-points'; readonly what: 'card' | 'irisR' | 'irisL' };
