import type { Reconcile } from '../core/crosscheck/reconciliation.js';
import type { MeasureFace } from '../core/estimate/face-estimates.js';

/** What makes estimates of features, and findings of readings. Nobody needs it before there are any. */
export interface Reasoning {
  readonly measureFace: MeasureFace;
  readonly reconcile: Reconcile;
}
