import { startTransition, useEffect, useState, useSyncExternalStore } from 'react';
import type { Reasoning } from '../session/reasoning.js';
import { useEquipment } from './equipment.js';
import { useFault } from './use-fault.js';

/** The reasoning; null while it is still on its way. */
export function useReasoning(): Reasoning | null {
  const { reasoning } = useEquipment();
  const [here, setHere] = useState(reasoning.now);
  const hasFailed = useSyncExternalStore(reasoning.subscribe, reasoning.hasFailed, reasoning.hasFailed);
  const onFault = useFault();
  useEffect(() => {
    const take = (): void => {
      // What it says of a whole sheet is drawn in slices.
      startTransition(() => {
        setHere(reasoning.now());
      });
    };
    const leave = reasoning.subscribe(take);
    reasoning.load();
    take();
    return leave;
  }, [reasoning]);
  useEffect(() => {
    // Without it the sheet would look as if all fitted: rather the boundary at the top, with what was typed.
    // After it the effect above has begun to load it once more.
    if (hasFailed && reasoning.hasFailed()) onFault(new Error('The cross-check could not be loaded.'));
  }, [hasFailed, onFault, reasoning]);
  return here;
}
