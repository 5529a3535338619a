import { useEffect, useState } from 'react';
import type { InvitationList } from '../session/invitation-list.js';
import { statusOf } from '../session/invitation-list.js';
import type { KeyStoreFailure, PracticeKeys } from '../session/practice-key.js';
import type { StoreFailure } from '../session/session-store.js';
import { useEquipment } from './equipment.js';
import { FailureNote } from './failure-note.js';
import { InvitationForm } from './invitations-form.js';
import { InvitationsKey } from './invitations-key.js';
import { MadeInvitation } from './invitations-made.js';
import { invitationFailureSaying, momentDayText, statusSentence } from './invitations-sentences.js';
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
  const [keys, setKeys] = useState<PracticeKeys | 'damaged' | null>(null);
  const [shownId, setShownId] = useState<string | null>(null);
  const [address, setAddress] = useState(ownAddress);
  // Days pass while a page is open, but seldom.
  const [now] = useState(() => new Date());
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
      if (!known.ok && known.failure.kind === 'keys-damaged') setKeys('damaged');
    };
    read().catch(onFault);
    return () => {
      life.isOver = true;
    };
  }, [database, reading, onFault]);

  // One that was withdrawn meanwhile is not to be sent any more.
  const shown = list?.find((sent) => sent.invitation.id === shownId && statusOf(sent, now) === 'out');
  return (
    <Modal heading={words.invitations.heading} closeLabel={words.invitations.close} onClose={onClose} wide>
      <div className="invitations">
        <p className="note">{words.invitations.what}</p>
        {failure !== null && <FailureNote saying={invitationFailureSaying(failure)} />}
        {list !== null && (
          // What is typed stays while an invitation is shown.
          <div hidden={shown !== undefined}>
            <InvitationForm
              key={reading}
              practiceBefore={list[0]?.invitation.practice ?? ''}
              addressBefore={address}
              onMade={(madeId, given, after) => {
                setList(after);
                setShownId(madeId);
                setAddress(given);
                // The first invitation made the key.
                setReading(reading + 1);
              }}
            />
          </div>
        )}
        {shown !== undefined && (
          <MadeInvitation
            key={shown.invitation.id}
            sent={shown}
            address={address}
            onAnother={() => {
              setShownId(null);
            }}
          />
        )}
        {list !== null && (
          <Invitations
            list={list}
            now={now}
            onChanged={(after) => {
              setList(after);
              setFailure(null);
            }}
            onFailure={setFailure}
            onAnswer={() => {
              onClose();
              onAnswer();
            }}
            onShow={setShownId}
          />
        )}
        {keys !== null && (
          <InvitationsKey
            keys={keys}
            onChanged={(after) => {
              setKeys(after);
              setFailure(null);
            }}
          />
        )}
      </div>
    </Modal>
  );
}

/** All invitations and how they stand. */
function Invitations(props: {
  readonly list: InvitationList;
  readonly now: Date;
  readonly onChanged: (list: InvitationList) => void;
  readonly onFailure: (failure: StoreFailure) => void;
  readonly onAnswer: () => void;
  readonly onShow: (invitationId: string) => void;
}) {
  const { list, now, onChanged, onFailure, onAnswer, onShow } = props;
  const { database } = useEquipment();
  const [happened, setHappened] = useState('');
  const onFault = useFault();
  const said = words.invitations.list;
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
                          onShow(invitationId);
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
