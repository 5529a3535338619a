import type { ComponentType } from 'react';
import { createElement, useEffect, useSyncExternalStore } from 'react';
import { createLater } from './later.js';
import { completeWords, words } from './language.js';

/**
 * A part of the screen that is loaded when it is first shown, or before by `loadAllLater`; drawn at once where it is there.
 * Where it cannot be loaded, that is said, and can be tried again.
 */
export function laterPart<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const part = createLater(async () => (await Promise.all([load(), completeWords(), import('./later-styles.js')]))[0]);
  return function LaterPart(props: Props) {
    const component = useSyncExternalStore(part.subscribe, part.now, part.now);
    const hasFailed = useSyncExternalStore(part.subscribe, part.hasFailed, part.hasFailed);
    useEffect(() => {
      part.load();
    }, []);
    if (component !== null) return createElement(component, props);
    return hasFailed ? <PartMissing onAgain={part.load} /> : null;
  };
}

function PartMissing({ onAgain }: { readonly onAgain: () => void }) {
  return (
    <div className="bar screen-bar part-missing" role="alert">
      <p>{words.offline.partMissing}</p>
      <button type="button" onClick={onAgain}>
        {words.offline.loadAgain}
      </button>
    </div>
  );
}
