import type { MeasurementId } from '../core/catalogue/measurement.js';

/** What the trade calls a measurement, and how it is taken. */
export interface MeasurementWords {
  /** the trade's name */
  readonly name: string;
  /** the trade's short name for a narrow column: 20 letters at most */
  readonly shortName: string;
  /** as it is called within a sentence, without a side */
  readonly inSentences: string;
  /** other names that the trade has for it, and for its place on an order; the search knows them */
  readonly alsoCalled: readonly string[];
  /** one sentence */
  readonly definition: string;
  /** how it is taken by hand, one or two sentences */
  readonly howTaken: string;
  /** what may hurt the wearer or spoil the reading; null where there is nothing beyond the rules of the house */
  readonly caution: string | null;
  /** how it is taken where the eyes never fixate together; null where a squint changes nothing */
  readonly withSquint: string | null;
}

export const measurementsWords: Readonly<Record<MeasurementId, MeasurementWords>> = {
  binocularPd: {
    name: 'Pupil distance, binocular',
    shortName: 'PD, distance',
    inSentences: 'PD, distance',
    alsoCalled: ['distance PD', 'far PD', 'IPD', 'interpupillary distance', 'binocular PD'],
    definition:
      'Distance between the centres of both pupils while both eyes look straight ahead at something far away.',
    howTaken:
      'Rule on the bridge, at arm’s length and eye to eye: set zero on one pupil while that eye looks into your eye opposite, then read the other pupil while the other eye looks into yours.',
    caution: 'Keep the end of the rule away from the eyes.',
    withSquint:
      'Measure each eye with the other covered, from the middle of the bridge, and write the sum: both eyes never look at the same thing.',
  },
  monocularPd: {
    name: 'Pupil distance of each eye',
    shortName: 'PD of each eye',
    inSentences: 'PD',
    alsoCalled: ['mono PD', 'monocular PD', 'monocular centration distance'],
    definition:
      'Horizontal distance from the midline of the bridge to the centre of one pupil, the eyes looking far away.',
    howTaken: 'From the middle of the bridge to each pupil, that eye looking into your eye opposite.',
    caution:
      'Read each eye; half of the binocular distance is not a measurement. Keep the end of the rule away from the eyes.',
    withSquint: 'Measure each eye with the other covered, so that the eye you read is the one that looks at you.',
  },
  nearPd: {
    name: 'Near centration distance',
    shortName: 'PD, near',
    inSentences: 'PD, near',
    alsoCalled: ['near PD', 'NCD', 'near IPD'],
    definition:
      'Distance between the two points of the spectacle plane through which the eyes look at the near working distance.',
    howTaken:
      'Rule in the spectacle plane, one of your eyes open at the working distance, both of the wearer’s eyes looking into it.',
    caution: 'Keep the end of the rule away from the eyes.',
    withSquint:
      'Measure each eye with the other covered, your open eye at the working distance before the bridge, and write the sum.',
  },
  monocularNearPd: {
    name: 'Near centration distance of each eye',
    shortName: 'PD of each eye, near',
    inSentences: 'near PD',
    alsoCalled: ['mono near PD', 'monocular near PD'],
    definition:
      'Horizontal distance from the midline of the bridge to the point of the spectacle plane through which one eye looks at the near working distance.',
    howTaken:
      'As the near distance, from the middle of the bridge to each pupil, your open eye straight before the bridge.',
    caution: 'Read each eye; half of the whole is not a measurement. Keep the end of the rule away from the eyes.',
    withSquint:
      'Measure each eye with the other covered, your open eye at the working distance straight before the bridge.',
  },
  lidAperture: {
    name: 'Lid aperture',
    shortName: 'Lid aperture',
    inSentences: 'lid aperture',
    alsoCalled: ['palpebral aperture', 'palpebral fissure'],
    definition:
      'Height from the lower to the upper lid margin on the vertical through the pupil’s centre, the eye looking straight ahead.',
    howTaken: 'Rule held upright beside the eye; the wearer looks straight ahead with the brow at rest.',
    caution:
      'A low lid, or one lower than the other, is a reason to look again or to refer, never a finding of this sheet. Keep the rule away from the eye.',
    withSquint: null,
  },
  pupilDiameter: {
    name: 'Pupil diameter',
    shortName: 'Pupil diameter',
    inSentences: 'pupil diameter',
    alsoCalled: ['pupil size'],
    definition: 'Horizontal diameter of the pupil in the light that is written down beside it.',
    howTaken:
      'Pupil gauge or rule beside the eye, the wearer looking far away in the light that the glasses are for; match or read the width.',
    caution:
      'Note the light: without it the number says little. Pupils of unequal size that nobody has noticed before are a reason to refer. Keep the gauge away from the eye.',
    withSquint: null,
  },
  irisDiameter: {
    name: 'Visible iris diameter',
    shortName: 'Iris diameter',
    inSentences: 'visible iris diameter',
    alsoCalled: ['HVID', 'white to white'],
    definition:
      'Horizontal diameter of the visible iris, from edge to edge; it differs so little between people that it checks the scale.',
    howTaken: 'Rule level before one eye, just below its pupil: from edge to edge of the coloured part.',
    caution: 'Keep the end of the rule away from the eyes.',
    withSquint: null,
  },
  headWidth: {
    name: 'Head width',
    shortName: 'Head width',
    inSentences: 'head width',
    alsoCalled: [],
    definition: 'Distance between the two ear points, where the sides rest on top of the roots of the ears.',
    howTaken: 'Head calipers from above, touching the head just over the ears without pressing.',
    caution: 'Keep the points of the calipers away from the eyes.',
    withSquint: null,
  },
  templeWidth: {
    name: 'Temple width',
    shortName: 'Temple width',
    inSentences: 'temple width',
    alsoCalled: [],
    definition: 'Width of the head at the temples, 25 mm behind the back plane of the front.',
    howTaken: 'Head calipers from the front, 25 mm behind where the front will sit, touching without pressing.',
    caution: 'Keep the points of the calipers away from the eyes.',
    withSquint: null,
  },
  apicalRadius: {
    name: 'Apical radius',
    shortName: 'Apical radius',
    inSentences: 'apical radius',
    alsoCalled: ['bridge radius'],
    definition:
      'Radius of the arc that fits the top of the nose best, seen from the front, where the bridge will bear.',
    howTaken:
      'Set radius gauges on the nose from the larger to the smaller and note each: loose, fits or tight; write down every size that you tried.',
    caution: 'Bring the gauge from below and keep its corners away from the eyes; do not press.',
    withSquint: null,
  },
  distanceBetweenRims10: {
    name: 'Distance between rims, 10 mm below the crest',
    shortName: 'Rims at 10 mm',
    inSentences: 'distance between rims at 10 mm',
    alsoCalled: ['DBR', 'bridge width'],
    definition: 'Width of the nose between where the rims will lie, 10 mm below the crest.',
    howTaken: 'Facial gauge or calipers across the nose, 10 mm below the crest, touching without pressing.',
    caution: 'The points are close to both eyes: bring the gauge from below and rest your hand on the cheek.',
    withSquint: null,
  },
  distanceBetweenRims15: {
    name: 'Distance between rims, 15 mm below the crest',
    shortName: 'Rims at 15 mm',
    inSentences: 'distance between rims at 15 mm',
    alsoCalled: ['DBR', 'bridge width'],
    definition: 'Width of the nose between where the rims will lie, 15 mm below the crest.',
    howTaken: 'As at 10 mm, 5 mm further down; it must come out wider.',
    caution: 'The points are close to both eyes: bring the gauge from below and rest your hand on the cheek.',
    withSquint: null,
  },
  frontalAngle: {
    name: 'Frontal angle',
    shortName: 'Frontal angle',
    inSentences: 'frontal angle',
    alsoCalled: [],
    definition: 'Angle between the vertical and the flank of the nose, seen from the front.',
    howTaken: 'Angle gauge flat before the nose, its arm along one flank; read each side with the head upright.',
    caution: 'Have the eyes closed while the gauge is set, and keep its arm below the inner corner of the eye.',
    withSquint: null,
  },
  splayAngle: {
    name: 'Splay angle',
    shortName: 'Splay angle',
    inSentences: 'splay angle',
    alsoCalled: [],
    definition: 'Angle between the line from front to back and the flank of the nose, seen from above.',
    howTaken: 'Angle gauge level before the nose, its arm along one flank, read from above.',
    caution: 'Have the eyes closed while the gauge is set, and keep its arm below the inner corner of the eye.',
    withSquint: null,
  },
  crestHeight: {
    name: 'Crest height',
    shortName: 'Crest height',
    inSentences: 'crest height',
    alsoCalled: ['bridge height'],
    definition:
      'Height of the crest of the nose above the margin of the lower lid of one eye; negative where the crest lies below it.',
    howTaken:
      'Head upright, the wearer looking straight ahead: from the level of each lower lid up to where the bridge will bear.',
    caution: 'Write the sign of a low crest. Keep the end of the rule away from the eyes.',
    withSquint: null,
  },
  bridgeProjection: {
    name: 'Bridge projection',
    shortName: 'Projection',
    inSentences: 'bridge projection',
    alsoCalled: [],
    definition:
      'Distance from the plane of the lashes forward to the crest; negative where the crest lies behind the lashes.',
    howTaken: 'From the side, the lashes at their most forward: how far the crest stands before or behind them.',
    caution: 'Write the sign. Nothing must touch the lashes; keep the end of the rule away from the eyes.',
    withSquint: null,
  },
  lengthToBend: {
    name: 'Length to bend',
    shortName: 'To bend',
    inSentences: 'length to bend',
    alsoCalled: ['LTB', 'front to bend', 'side length to bend', 'temple length to bend'],
    definition: 'Distance from the plane of the front back to the ear point, where the bend of the side begins.',
    howTaken: 'Rule along the side of the head, from the plane of the front to the top of the root of each ear.',
    caution: 'Keep the front end of the rule outside of the eye.',
    withSquint: null,
  },
  lengthToTangent: {
    name: 'Length to tangent',
    shortName: 'To tangent',
    inSentences: 'length to tangent',
    alsoCalled: ['LTT', 'front to tangent'],
    definition:
      'Distance from the plane of the front back to the point where a side first touches the curve of the ear.',
    howTaken:
      'As the length to bend, but to where the side touches the front of the ear’s root; needed for curl sides.',
    caution: 'Keep the front end of the rule outside of the eye.',
    withSquint: null,
  },
  lengthOfDrop: {
    name: 'Length of drop',
    shortName: 'Drop, length',
    inSentences: 'length of drop',
    alsoCalled: ['tip length'],
    definition: 'Length of the side behind its bend, from the ear point to the tip.',
    howTaken: 'Tape or bent rule behind the ear, from the ear point down to where the tip will end on the bone.',
    caution: 'Feel for a hearing aid, a scar or a sore place behind the ear first.',
    withSquint: null,
  },
  angleOfSide: {
    name: 'Angle of side',
    shortName: 'Angle of side',
    inSentences: 'angle of side',
    alsoCalled: ['side angle', 'temple angle'],
    definition:
      'Angle in the vertical plane between a side and the normal to the plane of the lenses; positive where the side makes the lower rims come nearer to the cheeks.',
    howTaken:
      'Angle gauge at each temple: one arm at right angles to the front as it will sit, the other towards the ear point.',
    caution: 'Keep the arm of the gauge outside of the eye.',
    withSquint: null,
  },
  downwardAngleOfDrop: {
    name: 'Downward angle of drop',
    shortName: 'Drop, downward',
    inSentences: 'downward angle of drop',
    alsoCalled: [],
    definition: 'Angle in side view by which the drop turns down from the line of the side.',
    howTaken: 'Angle gauge at the ear point, one arm along the side, the other along the groove behind the ear.',
    caution: 'Feel for a hearing aid, a scar or a sore place behind the ear first.',
    withSquint: null,
  },
  inwardAngleOfDrop: {
    name: 'Inward angle of drop',
    shortName: 'Drop, inward',
    inSentences: 'inward angle of drop',
    alsoCalled: [],
    definition:
      'Angle by which the drop turns in towards the skull, seen from behind; negative where it has to turn outward.',
    howTaken: 'From behind, head upright: angle gauge against the bone behind each ear.',
    caution: 'Feel for a hearing aid, a scar or a sore place behind the ear first.',
    withSquint: null,
  },
  earPointDifference: {
    name: 'Ear-point difference',
    shortName: 'Ear points',
    inSentences: 'ear-point difference',
    alsoCalled: [],
    definition:
      'How much higher the right ear point lies than the left while the head is level; negative where the left lies higher.',
    howTaken:
      'Head upright and pupils level: lay a straight front with sides on the face and read how far one side stands above its ear point while the other rests.',
    caution: 'Write the sign: positive where the right ear is the higher one.',
    withSquint: null,
  },
  boxLensWidth: {
    name: 'Box lens width',
    shortName: 'Box width',
    inSentences: 'box lens width',
    alsoCalled: ['A', 'A size', 'eye size', 'lens size', 'lens width'],
    definition: 'Width of the smallest upright rectangle around a lens of the chosen frame.',
    howTaken: 'Rule over the lens of the chosen frame, groove to groove; compare with the marking.',
    caution: null,
    withSquint: null,
  },
  boxLensHeight: {
    name: 'Box lens height',
    shortName: 'Box height',
    inSentences: 'box lens height',
    alsoCalled: ['B', 'B size', 'lens size', 'lens height', 'lens depth'],
    definition: 'Height of the smallest upright rectangle around a lens of the chosen frame.',
    howTaken: 'Rule upright over the lens of the chosen frame, from the lowest to the highest point of the groove.',
    caution: null,
    withSquint: null,
  },
  distanceBetweenLenses: {
    name: 'Distance between lenses',
    shortName: 'DBL',
    inSentences: 'distance between lenses',
    alsoCalled: ['bridge', 'bridge size', 'bridge width'],
    definition: 'Smallest horizontal gap between the boxes of both lenses.',
    howTaken:
      'Rule over the bridge of the chosen frame, between the nasal sides of both lenses where they are nearest.',
    caution: null,
    withSquint: null,
  },
  overallSideLength: {
    name: 'Overall length of side',
    shortName: 'Side, overall',
    inSentences: 'overall length of side',
    alsoCalled: ['side length', 'temple length'],
    definition: 'Length of a side from the middle of its joint to the tip, along the side with the drop straightened.',
    howTaken: 'Along the side of the chosen frame from the screw of the joint; stock comes in steps of 5 mm.',
    caution: null,
    withSquint: null,
  },
  fittingHeight: {
    name: 'Fitting height',
    shortName: 'Fitting height',
    inSentences: 'fitting height',
    alsoCalled: ['seg height', 'segment height', 'pupil height', 'OC height'],
    definition:
      'Height of the pupil’s centre above the lower side of the box of the lens, the wearer looking straight ahead.',
    howTaken:
      'Your eyes level with the wearer’s: mark the pupil’s centre on each lens, then read from the lowest point of the groove up to the mark.',
    caution:
      'Only with the chosen frame fitted and adjusted on the face. Mark the lens with a felt tip, never a point.',
    withSquint: 'Measure each eye with the other covered, so that the eye you mark is the one that looks at you.',
  },
  backVertexDistance: {
    name: 'Back vertex distance',
    shortName: 'Vertex distance',
    inSentences: 'back vertex distance',
    alsoCalled: ['BVD', 'CVD'],
    definition: 'Distance from the back of the lens to the front of the cornea along the line of sight.',
    howTaken:
      'From the side, with a rule held level beside the frame. A vertex gauge on the closed lid needs the lid’s thickness added.',
    caution:
      'Only with the chosen frame fitted and adjusted on the face. Nothing must touch the open eye; a gauge on the lid rests without pressing.',
    withSquint: null,
  },
  pantoscopicAngle: {
    name: 'Pantoscopic angle',
    shortName: 'Pantoscopic',
    inSentences: 'pantoscopic angle',
    alsoCalled: ['panto', 'pantoscopic tilt'],
    definition:
      'Angle in the vertical plane between the normal to the lens and the line of sight straight ahead; positive where the lower rims lie nearer to the cheeks.',
    howTaken: 'Angle gauge with a plumb line against the front, from the side, the wearer’s head as it is carried.',
    caution: 'Only with the chosen frame fitted and adjusted on the face.',
    withSquint: null,
  },
  faceFormAngle: {
    name: 'Face-form angle',
    shortName: 'Face form',
    inSentences: 'face-form angle',
    alsoCalled: ['wrap', 'wrap angle', 'dihedral angle'],
    definition:
      'Angle between the plane of the front and the plane of a lens, seen from above; positive where the lens turns back towards the temple.',
    howTaken:
      'Lay the chosen frame on a protractor from above and read how far a lens turns from the line of the front.',
    caution: null,
    withSquint: null,
  },
};
