import { useCallback, useEffect, useState } from 'react';
import type { Result } from '../core/result.js';
import type { PassphraseProblem } from '../session/passphrase.js';
import { passphraseProblem } from '../session/passphrase.js';
import type { LockFailure, StoreLock } from '../session/session-store.js';
import { afterPainting } from './after-painting.js';
import { FailureNote } from './failure-note.js';
import { lockFailureSaying } from './hand-on-sentences.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import { NewPassphraseFields, NO_PASSPHRASE } from './passphrase-fields.js';
import { storeFailureSaying } from './store-sentences.js';
import { useFault } from './use-fault.js';

type LockState = Awaited<ReturnType<StoreLock['state']>>;

/** What is being done to the lock. */
type Doing = 'nothing' | 'typing' | 'sealing' | 'asking' | 'unsealing';

type Happened = 'wasSet' | 'wasChanged' | 'wasRemoved';

/** Sets, changes and removes the passphrase of the store. */
export function LockDialog(props: {
  readonly lock: StoreLock;
  /** the lock was closed: nothing can be read any more */
  readonly onLocked: () => void;
  /** opens the dialog that hands on a backup */
  readonly onHandOn: () => void;
  readonly onClose: () => void;
}) {
  const { lock } = props;
  const [state, setState] = useState<LockState | null>(null);
  const [doing, setDoing] = useState<Doing>('nothing');
  const [typed, setTyped] = useState(NO_PASSPHRASE);
  const [problem, setProblem] = useState<PassphraseProblem | null>(null);
  const [failure, setFailure] = useState<LockFailure | null>(null);
  const [happened, setHappened] = useState<Happened | null>(null);
  const onFault = useFault();

  const look = useCallback(() => {
    lock.state().then(setState, onFault);
  }, [lock, onFault]);
  useEffect(look, [look]);
  const hasLock = state?.ok === true && state.value !== 'none';

  const set = async (): Promise<void> => {
    const found = passphraseProblem(typed.once, typed.again);
    setProblem(found);
    if (found !== null || doing === 'sealing') return;
    const answer = await done('sealing', 'typing', () => lock.set(typed.once));
    if (!answer.ok) return;
    setTyped(NO_PASSPHRASE);
    setHappened(hasLock ? 'wasChanged' : 'wasSet');
  };
  const remove = async (): Promise<void> => {
    if (doing === 'unsealing') return;
    const answer = await done('unsealing', 'asking', () => lock.remove());
    if (!answer.ok) return;
    setHappened('wasRemoved');
  };
  const done = async (
    during: Doing,
    afterFailure: Doing,
    act: () => Promise<Result<null, LockFailure>>,
  ): Promise<Result<null, LockFailure>> => {
    setFailure(null);
    setHappened(null);
    setDoing(during);
    await afterPainting();
    const answer = await act();
    setDoing(answer.ok ? 'nothing' : afterFailure);
    if (!answer.ok) setFailure(answer.failure);
    look();
    return answer;
  };
  const startSetting = (): void => {
    set().catch(onFault);
  };
  const cancel = (): void => {
    setDoing('nothing');
    setTyped(NO_PASSPHRASE);
    setProblem(null);
    setFailure(null);
  };

  return (
    <Modal heading={words.lock.heading} closeLabel={words.lock.close} onClose={props.onClose}>
      <div className="hand-on">
        <p>{words.lock.what}</p>
        <p className="note">{words.lock.whatNot}</p>
        <div role="status">
          <p>{state === null ? words.lock.reading : state.ok && (hasLock ? words.lock.isOpen : words.lock.none)}</p>
          {happened !== null && <p className="hand-on-made">{words.lock[happened]}</p>}
          {doing === 'sealing' && <p>{words.lock.sealing}</p>}
          {doing === 'unsealing' && <p>{words.lock.unsealing}</p>}
        </div>
        {state?.ok === false && <FailureNote saying={storeFailureSaying(state.failure)} />}
        {state?.ok === true && doing === 'nothing' && (
          <div className="actions">
            <button
              type="button"
              className={hasLock ? '' : 'main-action'}
              onClick={() => {
                setHappened(null);
                setDoing('typing');
              }}
            >
              {hasLock ? words.lock.change : words.lock.set}
            </button>
            {hasLock && (
              <>
                <button
                  type="button"
                  onClick={() => {
                    setHappened(null);
                    setDoing('asking');
                  }}
                >
                  {words.lock.remove}
                </button>
                <button
                  type="button"
                  className="quiet"
                  onClick={() => {
                    lock.lock();
                    props.onLocked();
                  }}
                >
                  {words.lock.lockNow}
                </button>
              </>
            )}
          </div>
        )}
        {(doing === 'typing' || doing === 'sealing') && (
          <>
            <p className="note">
              {words.lock.handOnFirst}{' '}
              <button type="button" className="quiet" onClick={props.onHandOn}>
                {words.sessions.removal.exportFirst}
              </button>
            </p>
            <NewPassphraseFields typed={typed} onTyped={setTyped} problem={problem} onEnter={startSetting} />
            <div className="actions">
              <button type="button" className="main-action" aria-disabled={doing === 'sealing'} onClick={startSetting}>
                {hasLock ? words.lock.changeNow : words.lock.setNow}
              </button>
              {doing === 'typing' && (
                <button type="button" onClick={cancel}>
                  {words.lock.cancel}
                </button>
              )}
            </div>
          </>
        )}
        {(doing === 'asking' || doing === 'unsealing') && (
          <>
            <p>{words.lock.removeWhat}</p>
            <div className="actions">
              <button
                type="button"
                className="main-action"
                aria-disabled={doing === 'unsealing'}
                onClick={() => {
                  remove().catch(onFault);
                }}
              >
                {words.lock.removeNow}
              </button>
              {doing === 'asking' && (
                <button type="button" onClick={cancel}>
                  {words.lock.cancel}
                </button>
              )}
            </div>
          </>
        )}
        {failure !== null && <FailureNote saying={lockFailureSaying(failure)} />}
      </div>
    </Modal>
  );
}
