import type { MeasuringFailure } from '../../src/session/ports.js';

/** One of every kind. A record over the union's kinds does not compile where one is missing. */
export const EVERY_MEASURING_FAILURE: {
  readonly [Kind in MeasuringFailure['kind']]: Extract<MeasuringFailure, { kind: Kind }>;
} = {
  'no-face': { kind: 'no-face' },
  'several-faces': { kind: 'several-faces', count: 2 },
  'no-card': { kind: 'no-card' },
  'several-cards': { kind: 'several-cards' },
  'card-not-flat': { kind: 'card-not-flat', residualPx: 3.25 },
  'card-tilted': { kind: 'card-tilted', tiltDeg: 22, limitDeg: 15 },
  'head-turned': { kind: 'head-turned', turnDeg: 21, limitDeg: 15 },
  'eyes-closed': { kind: 'eyes-closed', side: 'both' },
  'iris-not-found': { kind: 'iris-not-found', side: 'R' },
  blurred: { kind: 'blurred', edgeWidthPx: 6.5, limitPx: 4 },
  'too-dark': { kind: 'too-dark', meanLevel: 20, limitLevel: 40 },
  implausible: { kind: 'implausible', irisMm: 14.2 },
  'too-far': { kind: 'too-far', pixelsPerMm: 0.9, limitPixelsPerMm: 1.2 },
  'picture-unsupported': { kind: 'picture-unsupported', type: 'image/heic' },
  'picture-broken': { kind: 'picture-broken' },
  'video-unsupported': { kind: 'video-unsupported', type: 'video/x-msvideo' },
  'video-broken': { kind: 'video-broken' },
  'picture-too-large': { kind: 'picture-too-large', megapixels: 61, limitMegapixels: 50 },
  'camera-refused': { kind: 'camera-refused' },
  'camera-missing': { kind: 'camera-missing' },
  'camera-busy': { kind: 'camera-busy' },
  'camera-unplugged': { kind: 'camera-unplugged' },
  'camera-silent': { kind: 'camera-silent' },
  'camera-unsupported': { kind: 'camera-unsupported' },
  'model-not-loadable': { kind: 'model-not-loadable' },
  'vision-not-loadable': { kind: 'vision-not-loadable', part: 'card' },
  'vision-stopped': { kind: 'vision-stopped', part: 'landmarks' },
};
