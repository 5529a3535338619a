import { degreesToRadians } from '../units/angle.js';

/**
 * Width of a nose `belowCrestMm` below its crest, mm: a circle of the apical radius with straight flanks that touch it, each
 * at the frontal angle to the vertical (own geometry; an idealised nose).
 *
 * DBR(h) = 2 (r + (h - r) sin phi) / cos phi
 */
export function noseWidthMm(apicalRadiusMm: number, frontalAngleDeg: number, belowCrestMm: number): number {
  const angleRad = degreesToRadians(frontalAngleDeg);
  return (2 * (apicalRadiusMm + (belowCrestMm - apicalRadiusMm) * Math.sin(angleRad))) / Math.cos(angleRad);
}
