import { useEffect, useId, useState } from 'react';
import type { SentInvitation } from '../session/invitation-list.js';
import { linkOf } from '../session/invitation.js';
import { loadWords } from './available-languages.js';
import { dayText } from './day-text.js';
import { FailureNote } from './failure-note.js';
import { invitationFailureSaying } from './invitations-sentences.js';
import type { Words } from './language.js';
import { words } from './language.js';
import { QrCode } from './qr-code.js';
import { useCopying } from './use-copying.js';
import { useFocusOnCome } from './use-focus-on-come.js';

/** An invitation that was made: as a link, as a QR code, and as a text to send. */
export function MadeInvitation(props: {
  readonly sent: SentInvitation;
  /** of the app, as a phone reaches it */
  readonly address: string;
  readonly onAnother: () => void;
}) {
  const { sent, address } = props;
  const { invitation, wearer } = sent;
  const heading = useFocusOnCome<HTMLHeadingElement>();
  const id = useId();
  const { copied, copy } = useCopying();
  const spoken = useWordsOf(invitation.language);
  const said = words.invitations.made;
  const link = linkOf(invitation, address);
  if (!link.ok) return <FailureNote saying={invitationFailureSaying(link.failure)} />;
  const message =
    spoken === 'loading'
      ? ''
      : (spoken ?? words).invitations.message(
          invitation.practice,
          link.value,
          dayText(invitation.expiresOn, spoken === null ? undefined : invitation.language),
        );
  return (
    <section className="invitations-part invitations-made" aria-labelledby={`${id}-heading`}>
      <h3 id={`${id}-heading`} tabIndex={-1} ref={heading}>
        {said.heading(wearer.trim())}
      </h3>
      <p className="caution">{said.secret}</p>
      <div className="invitations-ways">
        <figure>
          <QrCode text={link.value} label={said.qr} />
          <figcaption className="note">{said.scan}</figcaption>
        </figure>
        <div className="invitations-texts">
          <p>
            <label htmlFor={`${id}-link`}>{said.link}</label>
            <input id={`${id}-link`} readOnly value={link.value} />
          </p>
          <p>
            <label htmlFor={`${id}-message`}>{said.message}</label>
            <textarea
              id={`${id}-message`}
              readOnly
              rows={9}
              value={message}
              lang={spoken === null ? undefined : invitation.language}
            />
          </p>
          {spoken === null && <p className="note">{said.languageMissing}</p>}
          <div className="actions">
            <button
              type="button"
              onClick={() => {
                copy(link.value);
              }}
            >
              {said.copyLink}
            </button>
            <button
              type="button"
              onClick={() => {
                copy(message);
              }}
            >
              {said.copyMessage}
            </button>
            <button type="button" className="quiet" onClick={props.onAnother}>
              {said.another}
            </button>
          </div>
          <p role="status">{copied === null ? '' : copied ? said.copied : said.copyFailed}</p>
        </div>
      </div>
    </section>
  );
}

/** The words of another language; null where they cannot be loaded. */
function useWordsOf(tag: string): Words | null | 'loading' {
  const [loaded, setLoaded] = useState<{ readonly tag: string; readonly words: Words | null } | null>(null);
  useEffect(() => {
    const life = { isOver: false };
    void loadWords(tag).then((spoken) => {
      if (!life.isOver) setLoaded({ tag, words: spoken });
    });
    return () => {
      life.isOver = true;
    };
  }, [tag]);
  return loaded?.tag === tag ? loaded.words : 'loading';
}
