import type { ReactNode } from 'react';
import { Component, useState } from 'react';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { TypedSheetStore } from '../session/ports.js';
import { READING_FIELDS } from '../session/typed-sheet.js';
import { readingWords } from './sentences.js';
import { crashWords as words } from './words.js';

/** Catches what should not have happened, and keeps the readings at hand. Nothing about the wearer is written elsewhere. */
export class CrashBoundary extends Component<
  { readonly store: TypedSheetStore; readonly catalogue: Catalogue; readonly children: ReactNode },
  { readonly hasCrashed: boolean }
> {
  override state = { hasCrashed: false };

  static getDerivedStateFromError(): { readonly hasCrashed: boolean } {
    return { hasCrashed: true };
  }

  override render(): ReactNode {
    if (!this.state.hasCrashed) return this.props.children;
    return (
      <CrashScreen
        readings={keptReadings(this.props.store, this.props.catalogue)}
        onAgain={() => {
          this.setState({ hasCrashed: false });
        }}
      />
    );
  }
}

function keptReadings(store: TypedSheetStore, catalogue: Catalogue): string {
  const readings = store.load()?.readings;
  if (readings === undefined) return '';
  return READING_FIELDS.map((field) => `${readingWords(field, catalogue)}\t${readings[field]}`).join('\n');
}

function CrashScreen(props: { readonly readings: string; readonly onAgain: () => void }) {
  const [copied, setCopied] = useState<boolean | null>(null);
  return (
    <main className="crash">
      <h1>{words.heading}</h1>
      <p role="alert">{words.what}</p>
      <label className="crash-readings">
        {words.readings}
        <textarea readOnly rows={READING_FIELDS.length} value={props.readings} />
      </label>
      <div className="actions">
        <button
          type="button"
          onClick={() => {
            navigator.clipboard.writeText(props.readings).then(
              () => {
                setCopied(true);
              },
              () => {
                setCopied(false);
              },
            );
          }}
        >
          {words.copy}
        </button>
        <button type="button" className="main-action" onClick={props.onAgain}>
          {words.again}
        </button>
      </div>
      <p role="status">{copied === null ? '' : copied ? words.copied : words.copyFailed}</p>
    </main>
  );
}
