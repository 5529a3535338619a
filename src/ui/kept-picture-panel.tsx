import { useCallback, useEffect, useId, useRef, useState } from 'react';
import type { PictureFeatures } from '../core/camera/features.js';
import type { KeepingDays } from '../session/kept-picture.js';
import { daysLeft, KEEPING_DAYS, lastDay } from '../session/kept-picture.js';
import type { KeptPicture, PictureStore, StoreFailure } from '../session/session-store.js';
import { afterPainting } from './after-painting.js';
import { FailureNote } from './failure-note.js';
import { keptPixels } from './kept-picture-pixels.js';
import { dateText, spokenTag, words } from './language.js';
import type { Saying } from './saying.js';
import { RadioChoice } from './radio-choice.js';
import { plainDateShown } from './sessions-when.js';
import { storeFailureSaying } from './store-sentences.js';
import { useFault } from './use-fault.js';
import { useFocusOnCome } from './use-focus-on-come.js';

// The month as a word: 3/4 is April here and March there.
const MOMENT = { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' } as const;

/** A measured picture as it is on the screen. */
export interface PictureOnScreen {
  readonly bitmap: ImageBitmap;
  /** with what was put right by hand */
  readonly features: PictureFeatures;
  /** ISO 8601 */
  readonly takenAt: string;
}

/** What stands under the picture about keeping it, and the pictures of this session that are kept. */
export function KeptPicturePanel(props: {
  readonly store: PictureStore;
  readonly sessionId: string;
  /** null where no picture was measured */
  readonly picture: PictureOnScreen | null;
  readonly newId: () => string;
}) {
  const { store, sessionId, picture } = props;
  const [kept, setKept] = useState<readonly KeptPicture[]>([]);
  const [failure, setFailure] = useState<Saying | null>(null);
  const [isAsking, setIsAsking] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const headingId = useId();
  const onFault = useFault();
  const fail = useCallback((reason: StoreFailure) => {
    setFailure(storeFailureSaying(reason));
  }, []);

  const [asked, setAsked] = useState(0);
  const reload = (): void => {
    setAsked((before) => before + 1);
  };
  useEffect(() => {
    let isWanted = true;
    store.ofSession(sessionId).then((answer) => {
      if (!isWanted) return;
      if (answer.ok) setKept(answer.value);
      else fail(answer.failure);
    }, onFault);
    return () => {
      isWanted = false;
    };
  }, [asked, fail, onFault, sessionId, store]);

  const remove = async (id: string): Promise<void> => {
    setFailure(null);
    const removed = await store.remove(id);
    if (!removed.ok) {
      fail(removed.failure);
      return;
    }
    setSaid(words.keptPicture.removed);
    heading.current?.focus();
    reload();
  };
  const isThisKept = picture !== null && kept.some(({ takenAt }) => takenAt === picture.takenAt);
  if (picture === null && kept.length === 0 && failure === null && said === null) return null;
  return (
    <section className="kept-pictures" aria-labelledby={headingId}>
      <h3 id={headingId} tabIndex={-1} ref={heading}>
        {words.keptPicture.heading}
      </h3>
      {picture !== null && !isThisKept && !isAsking && (
        <>
          <p className="note">{words.keptPicture.notByDefault}</p>
          <div className="actions">
            <button
              type="button"
              onClick={() => {
                setSaid(null);
                setFailure(null);
                setIsAsking(true);
              }}
            >
              {words.keptPicture.keep}
            </button>
          </div>
        </>
      )}
      {picture !== null && !isThisKept && isAsking && (
        <KeepingForm
          picture={picture}
          sessionId={sessionId}
          newId={props.newId}
          store={store}
          onKept={(keptUntil) => {
            setIsAsking(false);
            setSaid(words.keptPicture.done(plainDateShown(keptUntil)));
            heading.current?.focus();
            reload();
          }}
          onCancel={() => {
            setIsAsking(false);
            heading.current?.focus();
          }}
        />
      )}
      <p role="status" className="kept-said">
        {said}
      </p>
      {failure !== null && <FailureNote saying={failure} />}
      {kept.length > 0 && (
        <ul className="kept-list">
          {kept.map((one) => (
            <KeptEntry
              key={one.id}
              kept={one}
              onRemove={() => {
                remove(one.id).catch(onFault);
              }}
            />
          ))}
        </ul>
      )}
    </section>
  );
}

/** Asks the wearer, through the reader: what, why, for how long. Nothing is ticked beforehand. */
function KeepingForm(props: {
  readonly picture: PictureOnScreen;
  readonly sessionId: string;
  readonly newId: () => string;
  readonly store: PictureStore;
  readonly onKept: (keptUntil: string) => void;
  readonly onCancel: () => void;
}) {
  const { picture, store } = props;
  const id = useId();
  const [days, setDays] = useState<KeepingDays>(KEEPING_DAYS[0]);
  const [agrees, setAgrees] = useState(false);
  const [isMissed, setIsMissed] = useState(false);
  const [isMaking, setIsMaking] = useState(false);
  const [failure, setFailure] = useState<Saying | null>(null);
  const form = useFocusOnCome<HTMLHeadingElement>();
  const onFault = useFault();

  const keep = async (): Promise<void> => {
    setIsMissed(!agrees);
    if (!agrees || isMaking) return;
    setFailure(null);
    setIsMaking(true);
    await afterPainting();
    const failed = (saying: Saying): void => {
      setIsMaking(false);
      setFailure(saying);
    };
    const pixels = await keptPixels(picture.bitmap, picture.features);
    if (!pixels.ok) {
      failed(words.keptPicture.noCard);
      return;
    }
    const now = new Date();
    const keptUntil = lastDay(now, days);
    const answer = await store.keep({
      id: props.newId(),
      sessionId: props.sessionId,
      takenAt: picture.takenAt,
      consent: { at: now.toISOString(), wording: words.keptPicture.consent(days), language: spokenTag },
      keptUntil,
      ...pixels.value,
    });
    if (answer.ok) props.onKept(keptUntil);
    else failed(storeFailureSaying(answer.failure));
  };
  return (
    <div className="keeping-form" role="group" aria-labelledby={`${id}-heading`}>
      <h4 id={`${id}-heading`} tabIndex={-1} ref={form}>
        {words.keptPicture.formHeading}
      </h4>
      <RadioChoice
        legend={words.keptPicture.howLong}
        values={KEEPING_DAYS}
        chosen={days}
        wordsOf={(one) => words.keptPicture.days(one)}
        onChoose={(one) => {
          setDays(one);
          // It was another sentence that the wearer agreed to.
          setAgrees(false);
        }}
      />
      <p className="note">{words.keptPicture.readOut}</p>
      <blockquote id={`${id}-consent`}>{words.keptPicture.consent(days)}</blockquote>
      <label className="check">
        <input
          type="checkbox"
          checked={agrees}
          aria-describedby={`${id}-consent`}
          aria-invalid={isMissed && !agrees}
          onChange={(event) => {
            setAgrees(event.currentTarget.checked);
          }}
        />
        {words.keptPicture.agrees}
      </label>
      {isMissed && !agrees && (
        <p className="note note-failure" role="alert">
          {words.keptPicture.agreeFirst}
        </p>
      )}
      <div className="actions">
        <button
          type="button"
          className="main-action"
          aria-disabled={isMaking}
          onClick={() => {
            keep().catch(onFault);
          }}
        >
          {words.keptPicture.keepNow}
        </button>
        <button type="button" onClick={props.onCancel}>
          {words.keptPicture.cancel}
        </button>
      </div>
      <p role="status">{isMaking && words.keptPicture.making}</p>
      {failure !== null && <FailureNote saying={failure} />}
    </div>
  );
}

function KeptEntry({ kept, onRemove }: { readonly kept: KeptPicture; readonly onRemove: () => void }) {
  const when = dateText(new Date(kept.takenAt), MOMENT);
  const address = useAddress(kept.bytes);
  return (
    <li>
      {address !== null && (
        <img
          src={address}
          alt={words.keptPicture.takenOn(when)}
          width={kept.widthPx}
          height={kept.heightPx}
          decoding="async"
        />
      )}
      <p>
        <strong>{words.keptPicture.takenOn(when)}</strong>,{' '}
        {words.keptPicture.keptUntil(plainDateShown(kept.keptUntil), daysLeft(kept.keptUntil, new Date()))}
      </p>
      <details>
        <summary>{words.keptPicture.wording}</summary>
        <p className="note">{words.keptPicture.agreed(dateText(new Date(kept.consent.at), MOMENT))}</p>
        <blockquote lang={kept.consent.language}>{kept.consent.wording}</blockquote>
      </details>
      <div className="actions">
        <button type="button" aria-label={words.keptPicture.removeOf(when)} onClick={onRemove}>
          {words.keptPicture.remove}
        </button>
      </div>
    </li>
  );
}

/** An address of the page's own under which the bytes can be shown; null until there is one. */
function useAddress(bytes: Uint8Array<ArrayBuffer>): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' }));
    // eslint-disable-next-line react-hooks/set-state-in-effect -- the address lives outside of React and has to be given back
    setAddress(made);
    return () => {
      URL.revokeObjectURL(made);
    };
  }, [bytes]);
  return address;
}
