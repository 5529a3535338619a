import type { Dispatch } from 'react';
import { useEffect, useMemo, useReducer } from 'react';
import type { PictureState } from '../session/picture-state.js';
import type { VisitEvent, WearerVisit } from '../session/wearer-visit.js';
import { bestFrame, NEW_VISIT, visitReducer, WEARER_SETTINGS } from '../session/wearer-visit.js';
import { useFault } from './use-fault.js';
import type { SweepInHand } from './use-sweep.js';
import { useSweep } from './use-sweep.js';
import type { WearerEquipment } from './wearer-equipment.js';

/** The visit of a distant wearer, with what moves it on. */
export interface VisitInHand {
  readonly visit: WearerVisit;
  readonly dispatch: Dispatch<VisitEvent>;
  readonly sweep: SweepInHand;
}

/** There is no sheet here on which a picture would stand. */
const NO_PICTURE: PictureState = { kind: 'none' };

export function useWearerVisit({ loadMeasureFace, measuring }: WearerEquipment): VisitInHand {
  const [visit, dispatch] = useReducer(visitReducer, NEW_VISIT);
  const onFault = useFault();
  const swept = useMemo(() => ({ sweep: visit.sweep, picture: NO_PICTURE }), [visit.sweep]);
  const sweep = useSweep(swept, dispatch, WEARER_SETTINGS, onFault);

  const failedFrames = visit.isTryingFrames ? visit.sweep?.frames : undefined;
  useEffect(() => {
    if (failedFrames === undefined) return;
    const life = { isOver: false };
    loadMeasureFace().then(
      (measureFace) => {
        if (!life.isOver) dispatch({ kind: 'frame-measured', best: bestFrame(failedFrames, measureFace) });
      },
      () => {
        // Then the sweep's own failure is told, and the way to try again.
        if (!life.isOver) dispatch({ kind: 'frame-measured', best: null });
      },
    );
    return () => {
      life.isOver = true;
    };
  }, [failedFrames, loadMeasureFace]);

  // While the wearer reads how to sit, what looks at the pictures is loaded.
  const { vision } = measuring;
  const isBegun = visit.step !== 'welcome';
  useEffect(() => {
    // What goes wrong here goes wrong again with the first picture, and is said there.
    if (isBegun) vision.warmUp(() => undefined).catch(() => undefined);
  }, [isBegun, vision]);

  return { visit, dispatch, sweep };
}
