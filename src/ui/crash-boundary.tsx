import type { ReactNode } from 'react';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { SessionKeeper } from '../session/session-keeper.js';
import type { ReaderSheet } from '../core/record/reader-sheet.js';
import { CrashCatcher } from './crash-catcher.js';
import { readingWords } from './sentences.js';
import { words } from './language.js';
import { useCopying } from './use-copying.js';

/** Catches what should not have happened, and keeps the readings at hand. Nothing about the wearer is written elsewhere. */
export function CrashBoundary(props: {
  readonly keeper: Pick<SessionKeeper, 'record'>;
  readonly catalogue: Catalogue;
  readonly children: ReactNode;
}) {
  return (
    <CrashCatcher
      screen={(again) => <CrashScreen readings={keptReadings(props.keeper, props.catalogue)} onAgain={again} />}
    >
      {props.children}
    </CrashCatcher>
  );
}

function keptReadings(keeper: Pick<SessionKeeper, 'record'>, catalogue: Catalogue): string {
  const readers = keeper.record()?.sheet.readers;
  if (readers === undefined) return '';
  return [readers.first, readers.second].flatMap((sheet) => writtenLines(sheet, catalogue)).join('\n');
}

/** Both readers' lines can be told apart by the name in front, where it was typed. */
function writtenLines({ reader, readings }: ReaderSheet, catalogue: Catalogue): readonly string[] {
  const written = READING_NAMES.filter((name) => readings[name].trim() !== '');
  return written.map((name) =>
    [...(reader === '' ? [] : [reader]), readingWords(name, catalogue), readings[name]].join('\t'),
  );
}

/** Lines of the readings that are seen at once. */
const SHOWN_LINES = 12;

function CrashScreen(props: { readonly readings: string; readonly onAgain: () => void }) {
  const { copied, copy } = useCopying();
  return (
    <main className="crash">
      <h1>{words.crash.heading}</h1>
      <p role="alert">{words.crash.what}</p>
      <label className="crash-readings">
        {words.crash.readings}
        <textarea readOnly rows={SHOWN_LINES} value={props.readings} />
      </label>
      <div className="actions">
        <button
          type="button"
          onClick={() => {
            copy(props.readings);
          }}
        >
          {words.crash.copy}
        </button>
        <button type="button" className="main-action" onClick={props.onAgain}>
          {words.crash.again}
        </button>
      </div>
      <p role="status">{copied === null ? '' : copied ? words.crash.copied : words.crash.copyFailed}</p>
    </main>
  );
}
