import { useState } from 'react';
import type { SessionSummary } from '../core/record/session-record.js';
import type { SessionStore, StoreFailure } from '../session/session-store.js';
import { FailureNote } from './failure-note.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import { nameShown, visitShown } from './sessions-table.js';
import { storeFailureSaying } from './store-sentences.js';
import { useFault } from './use-fault.js';

/** More names than these make nothing clearer. */
const NAMED = 8;

/** Asks whether sessions are to go for good, and says what goes with them. */
export function SessionsRemoval(props: {
  readonly store: Pick<SessionStore, 'remove'>;
  readonly sessions: readonly SessionSummary[];
  readonly now: Date;
  readonly onHandOn: () => void;
  readonly onRemoved: (ids: readonly string[]) => void;
  readonly onClose: () => void;
}) {
  const { sessions } = props;
  const ids = sessions.map(({ id }) => id);
  const more = sessions.length - NAMED;
  return (
    <RemovalDialog
      heading={words.sessions.removal.heading(sessions.length)}
      removeLabel={words.sessions.removal.now(sessions.length)}
      store={props.store}
      ids={ids}
      onRemoved={() => {
        props.onRemoved(ids);
      }}
      onHandOn={props.onHandOn}
      onClose={props.onClose}
    >
      <ul className="sessions-named">
        {sessions.slice(0, more === 1 ? NAMED + 1 : NAMED).map((summary) => (
          <li key={summary.id}>
            <strong>{nameShown(summary)}</strong> <span className="note">{visitShown(summary, props.now)}</span>
          </li>
        ))}
        {more > 1 && <li>{words.sessions.removal.andMore(more)}</li>}
      </ul>
      <p>{words.sessions.removal.what}</p>
      <ul className="sessions-goes">
        {words.sessions.removal.goes.map((part) => (
          <li key={part}>{part}</li>
        ))}
      </ul>
      <p className="note">{words.sessions.removal.stays}</p>
    </RemovalDialog>
  );
}

/** Asks whether what stands in the store and is no session any more is to go. */
export function UnreadableRemoval(props: {
  readonly store: Pick<SessionStore, 'remove'>;
  readonly ids: readonly string[];
  readonly onRemoved: () => void;
  readonly onClose: () => void;
}) {
  return (
    <RemovalDialog
      heading={words.sessions.removal.unreadableHeading}
      removeLabel={words.sessions.removal.now(props.ids.length)}
      store={props.store}
      ids={props.ids}
      onRemoved={props.onRemoved}
      onClose={props.onClose}
    >
      <p className="note">{words.sessions.removal.stays}</p>
    </RemovalDialog>
  );
}

function RemovalDialog(props: {
  readonly heading: string;
  readonly removeLabel: string;
  readonly store: Pick<SessionStore, 'remove'>;
  readonly ids: readonly string[];
  readonly onRemoved: () => void;
  readonly onHandOn?: () => void;
  readonly onClose: () => void;
  readonly children: React.ReactNode;
}) {
  const [failure, setFailure] = useState<StoreFailure | null>(null);
  const [isRemoving, setIsRemoving] = useState(false);
  const onFault = useFault();
  const remove = async (): Promise<void> => {
    setIsRemoving(true);
    const removed = await props.store.remove(props.ids);
    setIsRemoving(false);
    if (removed.ok) props.onRemoved();
    else setFailure(removed.failure);
  };
  return (
    <Modal heading={props.heading} closeLabel={words.sessions.removal.cancel} onClose={props.onClose}>
      {props.children}
      {failure !== null && <FailureNote saying={storeFailureSaying(failure)} />}
      <div className="actions">
        {props.onHandOn !== undefined && (
          <button type="button" onClick={props.onHandOn}>
            {words.sessions.removal.exportFirst}
          </button>
        )}
        <button
          type="button"
          className="main-action"
          aria-disabled={isRemoving}
          onClick={() => {
            if (!isRemoving) remove().catch(onFault);
          }}
        >
          {props.removeLabel}
        </button>
      </div>
    </Modal>
  );
}
