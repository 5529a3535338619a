import type { ReactNode } from 'react';
import { useState } from 'react';
import type { LockFailure, StoreLock } from '../session/session-store.js';
import { afterPainting } from './after-painting.js';
import { FailureNote } from './failure-note.js';
import { lockFailureSaying } from './hand-on-sentences.js';
import { words } from './language.js';
import { PassphraseField } from './passphrase-fields.js';
import { useFault } from './use-fault.js';
import { useFocusOnCome } from './use-focus-on-come.js';

/** What is shown in place of everything else while the store is locked. */
export function LockScreen(props: {
  readonly lock: Pick<StoreLock, 'unlock'>;
  readonly onUnlocked: () => void;
  readonly footer?: ReactNode;
}) {
  const [typed, setTyped] = useState('');
  const [isUnlocking, setIsUnlocking] = useState(false);
  const [failure, setFailure] = useState<LockFailure | null>(null);
  const onFault = useFault();
  const heading = useFocusOnCome<HTMLHeadingElement>();

  const unlock = async (): Promise<void> => {
    if (isUnlocking || typed === '') return;
    setFailure(null);
    setIsUnlocking(true);
    await afterPainting();
    const unlocked = await props.lock.unlock(typed);
    setIsUnlocking(false);
    if (!unlocked.ok) {
      setFailure(unlocked.failure);
      return;
    }
    setTyped('');
    props.onUnlocked();
  };
  const start = (): void => {
    unlock().catch(onFault);
  };
  return (
    <>
      <header className="top">
        <div className="top-name">
          <h1>{words.header.name}</h1>
          <p>{words.header.whatItIs}</p>
        </div>
      </header>
      <main className="lock-screen">
        <h2 tabIndex={-1} ref={heading}>
          {words.lock.lockedHeading}
        </h2>
        <p>{words.lock.lockedWhat}</p>
        <PassphraseField
          typed={typed}
          onTyped={setTyped}
          isInvalid={failure?.kind === 'passphrase-wrong'}
          onEnter={start}
        />
        <div className="actions">
          <button type="button" className="main-action" aria-disabled={isUnlocking} onClick={start}>
            {words.lock.unlock}
          </button>
        </div>
        <p role="status">{isUnlocking && words.lock.unlocking}</p>
        {failure !== null && <FailureNote saying={lockFailureSaying(failure)} />}
        <p className="note">{words.lock.forgotten}</p>
      </main>
      {props.footer !== undefined && <footer className="bottom">{props.footer}</footer>}
    </>
  );
}
