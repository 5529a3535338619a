/** The rules that true values keep between one another. */
export type RelationId =
  /** both eyes' distances add up to the whole */
  | 'eyes-sum'
  /** the same, near */
  | 'near-eyes-sum'
  /** near follows from far and the working distance */
  | 'near-from-far'
  /** the widths of the nose follow from its apical radius and frontal angles */
  | 'nose-flanks'
  /** a side is as long as its way to the bend and its drop */
  | 'side-sum'
  /** the way to the tangent is a little shorter than the way to the bend */
  | 'tangent-before-bend'
  /** temples are narrower than the head */
  | 'temples-in-head'
  /** a frame is about as wide between its boxes' centres as the eyes are apart */
  | 'frame-around-pd'
  /** the higher eye has the lower crest above it, and the higher fitting point */
  | 'eye-heights'
  /** the higher ear point has the flatter side */
  | 'ear-heights'
  /** the front leans about as its sides are angled */
  | 'lean-of-front'
  /** right and left resemble one another */
  | 'sides-alike';
