import type { ReactNode } from 'react';
import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react';
import { invariant } from '../core/result.js';
import type { LanguageStore } from '../session/ports.js';
import { loadWords } from './available-languages.js';
import { speak, spokenTag } from './language.js';

interface LanguageInHand {
  /** BCP-47 tag of the language that is spoken */
  readonly tag: string;
  /** Speaks another language as soon as it is loaded, and keeps the choice. */
  readonly choose: (tag: string) => void;
  /** the tag that was chosen last and could not be loaded */
  readonly failed: string | null;
}

const LanguageContext = createContext<LanguageInHand | null>(null);

/**
 * Draws the screen in the language of the moment. With every new language all of it is drawn anew and nothing of it is built
 * anew, so that what is typed, shown or open stays.
 */
export function Speaking({ store, screen }: { readonly store: LanguageStore; readonly screen: () => ReactNode }) {
  const [tag, setTag] = useState(spokenTag);
  const [failed, setFailed] = useState<string | null>(null);
  const latest = useRef(tag);

  const choose = useCallback(
    (wanted: string) => {
      latest.current = wanted;
      void loadWords(wanted).then((words) => {
        if (latest.current !== wanted) return;
        setFailed(words === null ? wanted : null);
        if (words === null) return;
        speak(words, wanted);
        store.save(wanted);
        setTag(wanted);
      });
    },
    [store],
  );
  useEffect(() => {
    document.documentElement.lang = tag;
  }, [tag]);

  const inHand = useMemo(() => ({ tag, choose, failed }), [tag, choose, failed]);
  return <LanguageContext value={inHand}>{screen()}</LanguageContext>;
}

export function useLanguage(): LanguageInHand {
  const inHand = useContext(LanguageContext);
  invariant(inHand !== null, 'the screen stands inside Speaking');
  return inHand;
}
