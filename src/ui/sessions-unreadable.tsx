import { useState } from 'react';
import { isoDay } from '../session/iso-day.js';
import type { SessionStore, StoreFailure, UnreadableSession } from '../session/session-store.js';
import { downloadFile } from './download-file.js';
import { FailureNote } from './failure-note.js';
import { words } from './language.js';
import { storeFailureSaying } from './store-sentences.js';
import { useFault } from './use-fault.js';

/** What stands in the store and is no session any more: said, saved as a file, and deleted only after that. */
export function UnreadableSessions(props: {
  readonly store: SessionStore;
  readonly count: number;
  readonly onRemove: (ids: readonly string[]) => void;
}) {
  const [saved, setSaved] = useState<readonly string[] | null>(null);
  const [failure, setFailure] = useState<StoreFailure | null>(null);
  const onFault = useFault();
  const save = async (): Promise<void> => {
    const all = await props.store.all();
    if (!all.ok) {
      setFailure(all.failure);
      return;
    }
    setFailure(null);
    const fileName = `${words.sessions.unreadableStem}-${isoDay(new Date())}.json`;
    downloadFile(writeUnreadable(all.value.unreadable), fileName, 'application/json');
    setSaved(all.value.unreadable.map(({ id }) => id));
  };
  return (
    <div className="note note-failure sessions-unreadable">
      <p>{words.sessions.unreadable(props.count)}</p>
      <div className="actions">
        <button
          type="button"
          onClick={() => {
            save().catch(onFault);
          }}
        >
          {words.sessions.saveUnreadable}
        </button>
        {saved !== null && (
          <button
            type="button"
            className="quiet"
            onClick={() => {
              props.onRemove(saved);
            }}
          >
            {words.sessions.removeUnreadable}
          </button>
        )}
      </div>
      <p role="status">{saved !== null && words.sessions.unreadableSaved}</p>
      {failure !== null && <FailureNote saying={storeFailureSaying(failure)} />}
    </div>
  );
}

/** What can be saved of records that are none any more, as text: nothing of it is interpreted. */
function writeUnreadable(unreadable: readonly UnreadableSession[]): string {
  return `${JSON.stringify({ kind: 'glabella-unreadable-sessions', unreadable }, null, 2)}\n`;
}
