import type {
  IrisObservation,
  LidObservation,
  MeasuredPoint,
  PictureFeatures,
} from '../../src/core/camera/features.js';

function measured(xPx: number, yPx: number, standardUncertaintyPx = 0.1): MeasuredPoint {
  const variance = standardUncertaintyPx ** 2;
  return { xPx, yPx, covariance: { xx: variance, xy: 0, yy: variance } };
}

function iris(xPx: number, yPx: number): IrisObservation {
  return {
    centre: measured(xPx, yPx),
    radiusPx: 12,
    radiusUncertaintyPx: 0.1,
    support: 0.7,
    source: 'edges',
  };
}

function lids(xPx: number, yPx: number): LidObservation {
  return { upper: { xPx, yPx: yPx - 10 }, lower: { xPx, yPx: yPx + 10 }, uncertaintyPx: 1, source: 'edges' };
}

/** Features of an invented picture: level eyes, a level card above them. For what is edited, not for what is measured. */
export function exampleFeatures(): PictureFeatures {
  return {
    widthPx: 1280,
    heightPx: 720,
    landmarks: [],
    card: {
      source: 'edges',
      corners: [measured(554, 160), measured(726, 160), measured(726, 268), measured(554, 268)],
      edgeSupport: [0.9, 0.9, 0.9, 0.4],
      position: 'forehead',
    },
    iris: { R: iris(575, 350), L: iris(705, 350) },
    lids: { R: lids(575, 350), L: lids(705, 350) },
    midline: {
      point: { xPx: 640, yPx: 350 },
      betweenPupils: { xPx: 640, yPx: 350 },
      uncertaintyPx: 1.2,
      source: 'landmarks',
    },
    pupil: { R: null, L: null },
    bridge: [],
    outline: {
      head: { R: { xPx: 490, yPx: 360 }, L: { xPx: 790, yPx: 360 } },
      temple: { R: { xPx: 520, yPx: 340 }, L: { xPx: 760, yPx: 340 } },
      uncertaintyPx: 2,
      skinEdge: null,
    },
  };
}
