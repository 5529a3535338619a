import type { MeasurementDefinition } from './measurement.js';

/** The measurements in the order of the sheet. */
export const DEFINITIONS: readonly MeasurementDefinition[] = [
  {
    id: 'binocularPd',
    name: 'Pupil distance, binocular',
    shortName: 'PD, distance',
    group: 'eyes',
    definition:
      'Distance between the centres of both pupils while both eyes look straight ahead at something far away.',
    definedBy: { source: 'ISO 13666, interpupillary distance, own wording', status: 'verified-secondary' },
    fields: [{ name: 'pdFar', side: null }],
    unit: 'mm',
    resolution: 0.5,
    howTaken:
      'Rule on the bridge, at arm’s length and eye to eye: set zero on one pupil while that eye looks into your eye opposite, then read the other pupil while the other eye looks into yours.',
    caution:
      'With a squint both eyes never look at the same thing: cover one eye and read each by itself. Keep the end of the rule away from the eyes.',
  },
  {
    id: 'monocularPd',
    name: 'Pupil distance of each eye',
    shortName: 'PD of each eye',
    group: 'eyes',
    definition:
      'Horizontal distance from the midline of the bridge to the centre of one pupil, the eyes looking far away.',
    definedBy: { source: 'ISO 13666, monocular centration distance, own wording', status: 'verified-secondary' },
    fields: [
      { name: 'monoPdR', side: 'R' },
      { name: 'monoPdL', side: 'L' },
    ],
    unit: 'mm',
    resolution: 0.5,
    howTaken: 'From the middle of the bridge to each pupil, one eye covered while the other is read.',
    caution:
      'Read each eye; half of the binocular distance is not a measurement. Keep the end of the rule away from the eyes.',
  },
  {
    id: 'nearPd',
    name: 'Near centration distance',
    shortName: 'PD, near',
    group: 'eyes',
    definition:
      'Distance between the two points of the spectacle plane through which the eyes look at the near working distance.',
    definedBy: { source: 'textbooks of dispensing optics, own wording', status: 'verified-secondary' },
    fields: [{ name: 'pdNear', side: null }],
    unit: 'mm',
    resolution: 0.5,
    howTaken:
      'Rule in the spectacle plane, one of your eyes open at the working distance, both of the wearer’s eyes looking into it.',
    caution: null,
  },
  {
    id: 'lidAperture',
    name: 'Lid aperture',
    shortName: 'Lid aperture',
    group: 'eyes',
    definition:
      'Height from the lower to the upper lid margin on the vertical through the pupil’s centre, the eye looking straight ahead.',
    definedBy: { source: 'palpebral aperture in primary gaze, Read et al. 2006, own wording', status: 'verified' },
    fields: [
      { name: 'apertureR', side: 'R' },
      { name: 'apertureL', side: 'L' },
    ],
    unit: 'mm',
    resolution: 0.5,
    howTaken: 'Rule held upright beside the eye; the wearer looks straight ahead with the brow at rest.',
    caution:
      'A low lid, or one lower than the other, is a reason to look again or to refer, never a finding of this sheet.',
  },
  {
    id: 'headWidth',
    name: 'Head width',
    shortName: 'Head width',
    group: 'head',
    definition: 'Distance between the two ear points, where the sides rest on top of the roots of the ears.',
    definedBy: { source: 'BS 3521-2 / ISO 7998, own wording', status: 'verified-secondary' },
    fields: [{ name: 'headWidth', side: null }],
    unit: 'mm',
    resolution: 1,
    howTaken: 'Head calipers from above, touching the head just over the ears without pressing.',
    caution: 'Keep the points of the calipers away from the eyes.',
  },
  {
    id: 'templeWidth',
    name: 'Temple width',
    shortName: 'Temple width',
    group: 'head',
    definition: 'Width of the head at the temples, 25 mm behind the back plane of the front.',
    definedBy: { source: 'BS 3521-2 / ISO 7998, own wording', status: 'verified-secondary' },
    fields: [{ name: 'templeWidth', side: null }],
    unit: 'mm',
    resolution: 1,
    howTaken: 'Head calipers from the front, 25 mm behind where the front will sit, touching without pressing.',
    caution: 'Keep the points of the calipers away from the eyes.',
  },
  {
    id: 'irisDiameter',
    name: 'Iris diameter',
    shortName: 'Iris diameter',
    group: 'eyes',
    definition:
      'Horizontal diameter of the visible iris, from edge to edge; it differs so little between people that it checks the scale.',
    definedBy: { source: 'white-to-white diameter, Ruefer et al. 2005, own wording', status: 'verified' },
    fields: [],
    unit: 'mm',
    resolution: 0.1,
    howTaken: 'Measured by the camera alone.',
    caution: null,
  },
];
