import type { ReactNode } from 'react';
import { Component } from 'react';
import { words } from './language.js';

/** Catches what should not have happened on the page of a distant wearer. There is nothing to be saved: the visit begins anew. */
export class WearerCrash extends Component<{ readonly children: ReactNode }, { readonly hasCrashed: boolean }> {
  override state = { hasCrashed: false };

  static getDerivedStateFromError(): { readonly hasCrashed: boolean } {
    return { hasCrashed: true };
  }

  override render(): ReactNode {
    if (!this.state.hasCrashed) return this.props.children;
    return (
      <div className="wearer">
        <main className="wearer-main">
          <h1>{words.wearer.crash.heading}</h1>
          <p role="alert">{words.wearer.crash.what}</p>
        </main>
        <footer className="wearer-bottom">
          <button
            type="button"
            className="main-action"
            onClick={() => {
              this.setState({ hasCrashed: false });
            }}
          >
            {words.wearer.crash.again}
          </button>
        </footer>
      </div>
    );
  }
}
