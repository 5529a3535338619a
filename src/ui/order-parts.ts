import type { MeasurementId } from '../core/catalogue/measurement.js';

/** The parts of the order in which a workshop looks for a number. */
export const ORDER_PARTS = ['centration', 'frame', 'bridge', 'sides', 'eyes'] as const;

export type OrderPart = (typeof ORDER_PARTS)[number];

/** Where a measurement stands in the order: by what is made from it, not by how it is taken. */
export const PART_OF: Readonly<Record<MeasurementId, OrderPart>> = {
  binocularPd: 'centration',
  monocularPd: 'centration',
  nearPd: 'centration',
  monocularNearPd: 'centration',
  fittingHeight: 'centration',
  backVertexDistance: 'centration',
  pantoscopicAngle: 'centration',
  faceFormAngle: 'centration',
  boxLensWidth: 'frame',
  boxLensHeight: 'frame',
  distanceBetweenLenses: 'frame',
  overallSideLength: 'frame',
  apicalRadius: 'bridge',
  distanceBetweenRims10: 'bridge',
  distanceBetweenRims15: 'bridge',
  frontalAngle: 'bridge',
  splayAngle: 'bridge',
  crestHeight: 'bridge',
  bridgeProjection: 'bridge',
  headWidth: 'sides',
  templeWidth: 'sides',
  lengthToBend: 'sides',
  lengthToTangent: 'sides',
  lengthOfDrop: 'sides',
  angleOfSide: 'sides',
  downwardAngleOfDrop: 'sides',
  inwardAngleOfDrop: 'sides',
  earPointDifference: 'sides',
  lidAperture: 'eyes',
  pupilDiameter: 'eyes',
  irisDiameter: 'eyes',
};
