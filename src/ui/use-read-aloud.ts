import { useCallback, useEffect, useState, useSyncExternalStore } from 'react';
import type { SpokenPrompts } from '../session/spoken-prompts.js';
import { spokenTag } from './language.js';

/** Reading the page aloud. */
export interface ReadAloud {
  readonly canSpeak: boolean;
  readonly isOn: boolean;
  readonly turn: () => void;
  /** Reads this now, where reading aloud is on. */
  readonly say: (text: string) => void;
}

/** Reading aloud is off until somebody turns it on, and stops when the page goes. */
export function useReadAloud(prompts: SpokenPrompts): ReadAloud {
  const canSpeak = useSyncExternalStore(prompts.onVoices, () => prompts.canSpeak(spokenTag));
  const [isOn, setIsOn] = useState(false);
  const say = useCallback(
    (text: string) => {
      if (isOn) prompts.say(text, spokenTag);
    },
    [isOn, prompts],
  );
  const turn = useCallback(() => {
    setIsOn((was) => !was);
  }, []);
  useEffect(() => {
    if (!isOn) return;
    return () => {
      prompts.stop();
    };
  }, [isOn, prompts]);
  return { canSpeak, isOn, turn, say };
}
