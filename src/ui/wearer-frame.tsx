import type { ReactNode } from 'react';
import { useEffect, useRef } from 'react';
import { LanguageChooser } from './language-chooser.js';
import { spokenTag, words } from './language.js';
import type { ReadAloud } from './use-read-aloud.js';

/**
 * One step of the wearer's page: what is to be done on top, and what is pressed at the bottom, where a thumb reaches it. Each step
 * begins at its heading, also for who hears it.
 */
export function WearerFrame(props: {
  readonly heading: string;
  /** null where it is no step of the way */
  readonly place: { readonly number: number; readonly all: number } | null;
  readonly readAloud: ReadAloud;
  /** what is read aloud; again whenever it changes */
  readonly spoken: string;
  readonly onBack: (() => void) | null;
  readonly actions: ReactNode;
  readonly children: ReactNode;
}) {
  const { heading, place, readAloud, spoken } = props;
  const headingElement = useRef<HTMLHeadingElement>(null);
  const tag = spokenTag;
  const { say } = readAloud;
  useEffect(() => {
    headingElement.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, []);
  useEffect(() => {
    document.title = words.wearer.title;
  }, [tag]);
  useEffect(() => {
    say(spoken);
  }, [say, spoken]);
  return (
    <div className="wearer">
      <header className="wearer-top">
        {place === null ? (
          <p>{words.wearer.title}</p>
        ) : (
          <p className="wearer-place">
            {words.wearer.step(place.number, place.all)}
            <progress aria-hidden="true" max={place.all} value={place.number} />
          </p>
        )}
        {readAloud.canSpeak && (
          <button type="button" className="quiet" aria-pressed={readAloud.isOn} onClick={readAloud.turn}>
            {words.wearer.readAloud}
          </button>
        )}
      </header>
      <main className="wearer-main">
        <h1 tabIndex={-1} ref={headingElement}>
          {heading}
        </h1>
        {props.children}
      </main>
      <footer className="wearer-bottom">
        {props.actions}
        {props.onBack !== null && (
          <button type="button" className="quiet" onClick={props.onBack}>
            {words.wearer.back}
          </button>
        )}
      </footer>
      {place === null && (
        <aside className="wearer-language" aria-label={words.wearer.more}>
          <LanguageChooser />
        </aside>
      )}
    </div>
  );
}
