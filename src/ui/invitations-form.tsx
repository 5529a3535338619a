import { useId, useState } from 'react';
import type { InvitationList } from '../session/invitation-list.js';
import type { LinkFailure } from '../session/invitation.js';
import { DEFAULT_DAYS, linkOf, makeInvitation } from '../session/invitation.js';
import type { NewKeyFailure } from '../session/practice-key.js';
import { keyForInvitations } from '../session/practice-key.js';
import type { StoreFailure } from '../session/session-store.js';
import { AVAILABLE_LANGUAGES } from './available-languages.js';
import { useEquipment } from './equipment.js';
import { FailureNote } from './failure-note.js';
import { invitationFailureSaying } from './invitations-sentences.js';
import { spokenTag, words } from './language.js';
import { useFault } from './use-fault.js';

const DAYS = [3, 7, DEFAULT_DAYS, 30] as const;

/** What a new invitation says, and to whom. */
export function InvitationForm(props: {
  /** the practice's name in the invitation before */
  readonly practiceBefore: string;
  /** of the app, as a phone reaches it: of the invitation before, or the one of this page */
  readonly addressBefore: string;
  readonly onMade: (invitationId: string, address: string, list: InvitationList) => void;
}) {
  const { database, sealing } = useEquipment();
  const id = useId();
  const [wearer, setWearer] = useState('');
  const [practice, setPractice] = useState(props.practiceBefore);
  const [language, setLanguage] = useState(spokenTag);
  const [days, setDays] = useState<number>(DEFAULT_DAYS);
  const [asksForPictures, setAsksForPictures] = useState(false);
  const [address, setAddress] = useState(props.addressBefore);
  const [isMaking, setIsMaking] = useState(false);
  const [failure, setFailure] = useState<NewKeyFailure | LinkFailure | StoreFailure | null>(null);
  const onFault = useFault();
  const said = words.invitations.make;
  const doubt = addressDoubt(address);

  const make = async (): Promise<void> => {
    if (isMaking || doubt === 'wrong') return;
    setIsMaking(true);
    setFailure(null);
    const now = new Date();
    const key = await keyForInvitations(sealing, database.keys, now);
    if (!key.ok) {
      setFailure(key.failure);
      return;
    }
    const invitation = makeInvitation(
      { recipient: key.value.recipient, practice, language, cards: ['bought'], asksForPictures, days },
      sealing.randomId(),
      now,
    );
    const link = linkOf(invitation, address);
    if (!link.ok) {
      setFailure(link.failure);
      return;
    }
    const kept = await database.invitations.update({ kind: 'invited', invitation, wearer: wearer.trim() });
    if (!kept.ok) {
      setFailure(kept.failure);
      return;
    }
    props.onMade(invitation.id, address, kept.value);
  };
  const start = (): void => {
    make()
      .finally(() => {
        setIsMaking(false);
      })
      .catch(onFault);
  };

  return (
    <form
      className="invitations-part"
      aria-labelledby={`${id}-heading`}
      onSubmit={(event) => {
        event.preventDefault();
        start();
      }}
    >
      <h3 id={`${id}-heading`}>{said.heading}</h3>
      <div className="invitations-fields">
        <p>
          <label htmlFor={`${id}-wearer`}>{said.wearer}</label>
          <input
            id={`${id}-wearer`}
            value={wearer}
            maxLength={200}
            autoComplete="off"
            aria-describedby={`${id}-wearer-note`}
            onChange={(event) => {
              setWearer(event.currentTarget.value);
            }}
          />
          <small id={`${id}-wearer-note`} className="note">
            {said.wearerNote}
          </small>
        </p>
        <p>
          <label htmlFor={`${id}-practice`}>{said.practice}</label>
          <input
            id={`${id}-practice`}
            value={practice}
            maxLength={80}
            autoComplete="organization"
            onChange={(event) => {
              setPractice(event.currentTarget.value);
            }}
          />
        </p>
        <p>
          <label htmlFor={`${id}-language`}>{said.language}</label>
          <select
            id={`${id}-language`}
            value={language}
            onChange={(event) => {
              setLanguage(event.currentTarget.value);
            }}
          >
            {AVAILABLE_LANGUAGES.map(({ tag, name }) => (
              <option key={tag} value={tag} lang={tag}>
                {name}
              </option>
            ))}
          </select>
        </p>
        <p>
          <label htmlFor={`${id}-days`}>{said.days}</label>
          <select
            id={`${id}-days`}
            value={days}
            onChange={(event) => {
              setDays(Number(event.currentTarget.value));
            }}
          >
            {DAYS.map((count) => (
              <option key={count} value={count}>
                {said.daysOf(count)}
              </option>
            ))}
          </select>
        </p>
        <p className="invitations-wide">
          <label htmlFor={`${id}-address`}>{said.address}</label>
          <input
            id={`${id}-address`}
            type="url"
            value={address}
            autoComplete="off"
            spellCheck={false}
            aria-invalid={doubt === 'wrong'}
            aria-describedby={`${id}-address-note`}
            onChange={(event) => {
              setAddress(event.currentTarget.value);
            }}
          />
          <small id={`${id}-address-note`} className={doubt === null ? 'note' : 'caution'} hidden={doubt === null}>
            {doubt === 'wrong' && said.addressWrong}
            {doubt === 'local' && said.addressLocal}
            {doubt === 'insecure' && said.addressInsecure}
          </small>
        </p>
      </div>
      <label className="check">
        <input
          type="checkbox"
          checked={asksForPictures}
          aria-describedby={`${id}-pictures-note`}
          onChange={(event) => {
            setAsksForPictures(event.currentTarget.checked);
          }}
        />
        {said.pictures}
      </label>
      <p id={`${id}-pictures-note`} className="note">
        {said.picturesNote}
      </p>
      <div className="actions">
        <button type="submit" className="main-action" aria-disabled={isMaking}>
          {said.now}
        </button>
        <span role="status">{isMaking && said.making}</span>
      </div>
      {failure !== null && <FailureNote saying={invitationFailureSaying(failure)} />}
    </form>
  );
}

/** What is to be said about an address; null where a phone can use it. */
function addressDoubt(address: string): 'wrong' | 'local' | 'insecure' | null {
  let url: URL;
  try {
    url = new URL(address);
  } catch {
    return 'wrong';
  }
  if (url.protocol !== 'https:' && url.protocol !== 'http:') return 'wrong';
  if (/^(localhost|127(\.\d+){3}|\[::1\])$/.test(url.hostname)) return 'local';
  return url.protocol === 'http:' ? 'insecure' : null;
}
