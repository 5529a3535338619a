import { useEffect, useSyncExternalStore } from 'react';
import type { Reconcile, Reconciliation } from '../core/crosscheck/reconciliation.js';
import type { MeasureFace } from '../core/estimate/face-estimates.js';
import { useEquipment } from './equipment.js';
import { useFault } from './use-fault.js';

/** Finds nothing in any readings: what is known while the reasoning is on its way. */
const ON_ITS_WAY = {
  isHere: false,
  measureFace: null,
  reconcile: (): Reconciliation => ({ suspicions: [], values: {}, doubts: {} }),
};

/** The reasoning; while it is still on its way `measureFace` is null, and nothing is suspected. */
export function useReasoning(): {
  readonly isHere: boolean;
  readonly measureFace: MeasureFace | null;
  readonly reconcile: Reconcile;
} {
  const { reasoning } = useEquipment();
  const here = useSyncExternalStore(reasoning.subscribe, reasoning.now, reasoning.now);
  const hasFailed = useSyncExternalStore(reasoning.subscribe, reasoning.hasFailed, reasoning.hasFailed);
  const onFault = useFault();
  useEffect(() => {
    reasoning.load();
  }, [reasoning]);
  useEffect(() => {
    // Without it the sheet would look as if all fitted: rather the boundary at the top, with what was typed.
    // After it the effect above has begun to load it once more.
    if (hasFailed && reasoning.hasFailed()) onFault(new Error('The cross-check could not be loaded.'));
  }, [hasFailed, onFault, reasoning]);
  return here === null ? ON_ITS_WAY : { isHere: true, ...here };
}
