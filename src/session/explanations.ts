import type { Explanation } from '../core/crosscheck/reconciliation.js';
import type { Misfit } from './misfits.js';

/** What probably happened, most probable first; empty for what no slip is sought in. */
export function explanationsOf(misfit: Misfit): readonly Explanation[] {
  if (misfit.kind === 'refused') return misfit.explanations;
  return misfit.kind === 'suspected' ? misfit.suspicion.explanations : [];
}
