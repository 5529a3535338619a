import { useEffect, useState } from 'react';
import type { InvitationList, SentInvitation } from '../session/invitation-list.js';
import { statusOf } from '../session/invitation-list.js';
import type { KeyStoreFailure, PracticeKeys } from '../session/practice-key.js';
import type { StoreFailure } from '../session/session-store.js';
import { useEquipment } from './equipment.js';
import { FailureNote } from './failure-note.js';
import { InvitationForm } from './invitations-form.js';
import { InvitationsKey } from './invitations-key.js';
import { MadeInvitation } from './invitations-made.js';
import { invitingFailureSaying, momentDayText, statusSentence } from './invitations-sentences.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import { ownAddress } from './own-address.js';
import { useFault } from './use-fault.js';

/** Invites distant wearers, shows what became of the invitations, and looks after the key. */
export function InvitationsDialog(props: {
  /** an answer is to be chosen and taken in; this dialog has closed by then */
  readonly onAnswer: () => void;
  readonly onClose: () => void;
}) {
  const { onAnswer, onClose } = props;
  const { database } = useEquipment();
  const [list, setList] = useState<InvitationList | null>(null);
  const [keys, setKeys] = useState<PracticeKeys | null>(null);
  const [shown, setShown] = useState<{ readonly sent: SentInvitation; readonly address: string } | null>(null);
  const [failure, setFailure] = useState<KeyStoreFailure | StoreFailure | null>(null);
  const onFault = useFault();

  const [reading, setReading] = useState(0);
  useEffect(() => {
    const life = { isOver: false };
    const read = async (): Promise<void> => {
      const [invitations, known] = [await database.invitations.load(), await database.keys.load()];
      if (life.isOver) return;
      if (invitations.ok) setList(invitations.value);
      else setFailure(invitations.failure);
      if (known.ok) setKeys(known.value);
      else setFailure(known.failure);
    };
    read().catch(onFault);
    return () => {
      life.isOver = true;
    };
  }, [database, reading, onFault]);

  return (
    <Modal heading={words.invitations.heading} closeLabel={words.invitations.close} onClose={onClose} wide>
      <div className="invitations">
        <p className="note">{words.invitations.what}</p>
        {failure !== null && <FailureNote saying={invitingFailureSaying(failure)} />}
        {list !== null &&
          (shown === null ? (
            <InvitationForm
              practiceBefore={list[0]?.invitation.practice ?? ''}
              onMade={(sent, address, after) => {
                setList(after);
                setShown({ sent, address });
                // The first invitation made the key.
                setReading(reading + 1);
              }}
            />
          ) : (
            <MadeInvitation
              sent={shown.sent}
              address={shown.address}
              onAnother={() => {
                setShown(null);
              }}
            />
          ))}
        {list !== null && (
          <Invitations
            list={list}
            onChanged={setList}
            onFailure={setFailure}
            onAnswer={() => {
              onClose();
              onAnswer();
            }}
            onShow={(sent) => {
              setShown({ sent, address: ownAddress() });
            }}
          />
        )}
        {keys !== null && <InvitationsKey keys={keys} onChanged={setKeys} />}
      </div>
    </Modal>
  );
}

/** All invitations and how they stand. */
function Invitations(props: {
  readonly list: InvitationList;
  readonly onChanged: (list: InvitationList) => void;
  readonly onFailure: (failure: StoreFailure) => void;
  readonly onAnswer: () => void;
  readonly onShow: (sent: SentInvitation) => void;
}) {
  const { list, onChanged, onFailure, onAnswer, onShow } = props;
  const { database } = useEquipment();
  const [happened, setHappened] = useState('');
  const onFault = useFault();
  const said = words.invitations.list;
  // Days pass while a page is open, but seldom.
  const [now] = useState(() => new Date());
  const update = async (event: Parameters<typeof database.invitations.update>[0], done: string): Promise<void> => {
    const updated = await database.invitations.update(event);
    if (!updated.ok) {
      onFailure(updated.failure);
      return;
    }
    onChanged(updated.value);
    setHappened(done);
  };
  return (
    <section className="invitations-part">
      <div className="invitations-head">
        <h3>{said.heading}</h3>
        <button type="button" onClick={onAnswer}>
          {said.bringIn}
        </button>
      </div>
      <p role="status">{list.length === 0 ? said.none : happened}</p>
      {list.length > 0 && (
        <ul className="invitations-list">
          {list.map((sent) => {
            const { invitation } = sent;
            const { id: invitationId } = invitation;
            const name = sent.wearer.trim() === '' ? said.noName : sent.wearer;
            const isOut = statusOf(sent, now) === 'out';
            return (
              <li key={invitationId}>
                <span className="invitations-whom">
                  <strong>{name}</strong> {statusSentence(sent, now)}
                  <span className="note">{said.made(momentDayText(invitation.madeAt))}</span>
                </span>
                <span className="actions">
                  {isOut && (
                    <>
                      <button
                        type="button"
                        className="quiet"
                        aria-label={said.show(name)}
                        onClick={() => {
                          onShow(sent);
                        }}
                      >
                        {said.showShort}
                      </button>
                      <button
                        type="button"
                        className="quiet"
                        aria-label={said.withdraw(name)}
                        onClick={() => {
                          const at = new Date().toISOString();
                          update({ kind: 'withdrawn', invitationId, at }, said.withdrawn).catch(onFault);
                        }}
                      >
                        {said.withdrawShort}
                      </button>
                    </>
                  )}
                  {!isOut && (
                    <button
                      type="button"
                      className="quiet"
                      aria-label={said.remove(name)}
                      onClick={() => {
                        update({ kind: 'removed', invitationId }, said.removed).catch(onFault);
                      }}
                    >
                      {said.removeShort}
                    </button>
                  )}
                </span>
              </li>
            );
          })}
        </ul>
      )}
    </section>
  );
}
