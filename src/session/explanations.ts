import type { Explanation, Suspicion } from '../core/crosscheck/reconciliation.js';

/** As much of a misfit as tells what happened: `misfits.ts` itself asks for it. */
interface Explainable {
  readonly explanations?: readonly Explanation[];
  readonly suspicion?: Pick<Suspicion, 'explanations'>;
  readonly kind: string;
}

/** What probably happened, most probable first; empty for what no slip is sought in. */
export function explanationsOf({ explanations, suspicion }: Explainable): readonly Explanation[] {
  return explanations ?? suspicion?.explanations ?? [];
}
