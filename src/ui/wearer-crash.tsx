import type { ReactNode } from 'react';
import { CrashCatcher } from './crash-catcher.js';
import { words } from './language.js';

/** Catches what should not have happened on the page of a distant wearer. There is nothing to be saved: the visit begins anew. */
export function WearerCrash({ children }: { readonly children: ReactNode }) {
  return <CrashCatcher screen={(again) => <WearerCrashScreen onAgain={again} />}>{children}</CrashCatcher>;
}

function WearerCrashScreen({ onAgain }: { readonly onAgain: () => void }) {
  return (
    <div className="wearer">
      <main className="wearer-main">
        <h1>{words.wearer.crash.heading}</h1>
        <p role="alert">{words.wearer.crash.what}</p>
      </main>
      <footer className="wearer-bottom">
        <button type="button" className="main-action" onClick={onAgain}>
          {words.wearer.crash.again}
        </button>
      </footer>
    </div>
  );
}
