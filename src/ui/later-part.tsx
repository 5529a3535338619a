import type { ComponentType } from 'react';
import { createElement, startTransition, useEffect, useState } from 'react';
import { createLater } from './later.js';
import { completeWords, words } from './language.js';

/**
 * A part of the screen that is loaded when it is first shown, or before by `loadAllLater`; drawn at once where it is there.
 * Where it cannot be loaded, that is said, and can be tried again. Several parts that come at once are drawn in slices.
 */
export function laterPart<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const part = createLater(async () => (await Promise.all([load(), completeWords(), import('./later-styles.js')]))[0]);
  return function LaterPart(props: Props) {
    const [component, setComponent] = useState(part.now);
    const [hasFailed, setHasFailed] = useState(part.hasFailed);
    useEffect(() => {
      const take = (): void => {
        startTransition(() => {
          // a component is a function, which would be called here
          setComponent(() => part.now());
          setHasFailed(part.hasFailed());
        });
      };
      const leave = part.subscribe(take);
      part.load();
      // it may have come since it was drawn
      take();
      return leave;
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
