import { useState } from 'react';
import { passphraseProblem } from '../session/passphrase.js';
import type { PracticeKeys } from '../session/practice-key.js';
import {
  KEY_BACKUP_LIMIT_BYTES,
  keyBackupName,
  keyInUse,
  openKeyBackup,
  replaceKey,
  sealKeyBackup,
} from '../session/practice-key.js';
import { afterPainting } from './after-painting.js';
import { downloadFile } from './download-file.js';
import { useEquipment } from './equipment.js';
import { FailureNote } from './failure-note.js';
import { bytesOfFile } from './file-bytes.js';
import { invitationFailureSaying, keyBackupFailureSaying, momentDayText } from './invitations-sentences.js';
import { words } from './language.js';
import { NewPassphraseFields, NO_PASSPHRASE, PassphraseField } from './passphrase-fields.js';
import type { Saying } from './saying.js';
import { useFault } from './use-fault.js';

type Doing = 'backing-up' | 'bringing-back' | 'replacing' | null;

/** The practice's key: what it is, its backup, and its replacement. */
export function InvitationsKey(props: {
  /** or what is kept cannot be read as keys */
  readonly keys: PracticeKeys | 'damaged';
  readonly onChanged: (keys: PracticeKeys) => void;
}) {
  const { onChanged } = props;
  const isDamaged = props.keys === 'damaged';
  const keys = props.keys === 'damaged' ? [] : props.keys;
  const { database, sealing } = useEquipment();
  const [doing, setDoing] = useState<Doing>(null);
  const [isWorking, setIsWorking] = useState(false);
  const [typed, setTyped] = useState(NO_PASSPHRASE);
  const [problem, setProblem] = useState<ReturnType<typeof passphraseProblem>>(null);
  const [backup, setBackup] = useState<File | null>(null);
  const [failure, setFailure] = useState<Saying | null>(null);
  const [happened, setHappened] = useState('');
  const onFault = useFault();
  const said = words.invitations.key;
  const inUse = keyInUse(keys);
  const older = keys.length - (inUse === null ? 0 : 1);

  const begin = (next: Doing): void => {
    setDoing(next);
    setTyped(NO_PASSPHRASE);
    setProblem(null);
    setBackup(null);
    setFailure(null);
    setHappened('');
  };
  const done = (sentence: string): void => {
    begin(null);
    setHappened(sentence);
  };
  /** Says first that it works: sealing holds up the page. */
  const work = (what: () => Promise<void>): void => {
    if (isWorking) return;
    setIsWorking(true);
    setFailure(null);
    afterPainting()
      .then(what)
      .finally(() => {
        setIsWorking(false);
      })
      .catch(onFault);
  };

  const backUp = (): void => {
    const found = passphraseProblem(typed.once, typed.again);
    setProblem(found);
    if (found !== null) return;
    work(async () => {
      const sealed = await sealKeyBackup(sealing, keys, typed.once);
      if (!sealed.ok) {
        setFailure(invitationFailureSaying(sealed.failure));
        return;
      }
      const name = keyBackupName(new Date());
      downloadFile(sealed.value, name, 'application/octet-stream');
      done(said.backedUp(name));
    });
  };
  const bringBack = (): void => {
    if (backup === null) return;
    work(async () => {
      if (backup.size > KEY_BACKUP_LIMIT_BYTES) {
        setFailure(words.invitations.failure.noBackup);
        return;
      }
      const bytes = await bytesOfFile(backup);
      if (bytes === null) {
        setFailure(words.invitations.failure.fileGone);
        return;
      }
      const opened = await openKeyBackup(sealing, bytes, typed.once);
      if (!opened.ok) {
        setFailure(keyBackupFailureSaying(opened.failure));
        return;
      }
      const kept = await database.keys.bringBack(opened.value, new Date());
      if (!kept.ok) {
        setFailure(invitationFailureSaying(kept.failure));
        return;
      }
      onChanged(kept.value);
      done(said.broughtBack(kept.value.length));
    });
  };
  const replace = (): void => {
    work(async () => {
      const replaced = await replaceKey(sealing, database.keys, new Date());
      const kept = replaced.ok ? await database.keys.load() : replaced;
      if (!kept.ok) {
        setFailure(invitationFailureSaying(kept.failure));
        return;
      }
      onChanged(kept.value);
      done(said.replaced);
    });
  };
  const cancel = (
    <button
      type="button"
      onClick={() => {
        begin(null);
      }}
    >
      {said.cancel}
    </button>
  );

  return (
    <details className="invitations-part" open={isDamaged || undefined}>
      <summary>{said.heading}</summary>
      <p>{said.what}</p>
      {!isDamaged && (
        <p className="note">
          {inUse === null ? said.none : said.inUse(momentDayText(inUse.madeAt))} {older > 0 && said.older(older)}
        </p>
      )}
      {doing === null && (
        <div className="actions">
          {inUse !== null && (
            <button
              type="button"
              onClick={() => {
                begin('backing-up');
              }}
            >
              {said.backUp}
            </button>
          )}
          <button
            type="button"
            onClick={() => {
              begin('bringing-back');
            }}
          >
            {said.bringBack}
          </button>
          {inUse !== null && (
            <button
              type="button"
              onClick={() => {
                begin('replacing');
              }}
            >
              {said.replace}
            </button>
          )}
        </div>
      )}
      {doing === 'backing-up' && (
        <>
          <p>{said.backUpWhat}</p>
          <NewPassphraseFields typed={typed} onTyped={setTyped} problem={problem} onEnter={backUp} />
          <div className="actions">
            <button type="button" className="main-action" aria-disabled={isWorking} onClick={backUp}>
              {said.backUpNow}
            </button>
            {cancel}
          </div>
        </>
      )}
      {doing === 'bringing-back' && (
        <>
          <p>{said.bringBackWhat}</p>
          {backup !== null && <p>{said.chosen(backup.name)}</p>}
          <p>
            <label className="file-button">
              <input
                type="file"
                accept=".age"
                onChange={(event) => {
                  setBackup(event.currentTarget.files?.[0] ?? null);
                  event.currentTarget.value = '';
                }}
              />
              <span>{said.chooseBackup}</span>
            </label>
          </p>
          <PassphraseField
            typed={typed.once}
            onTyped={(once) => {
              setTyped({ once, again: '' });
            }}
            isInvalid={false}
            onEnter={bringBack}
          />
          <div className="actions">
            <button
              type="button"
              className="main-action"
              aria-disabled={isWorking || backup === null}
              onClick={bringBack}
            >
              {said.bringBackNow}
            </button>
            {cancel}
          </div>
        </>
      )}
      {doing === 'replacing' && (
        <>
          <p>{said.replaceWhat}</p>
          <div className="actions">
            <button type="button" className="main-action" aria-disabled={isWorking} onClick={replace}>
              {said.replaceNow}
            </button>
            {cancel}
          </div>
        </>
      )}
      <p role="status">{isWorking ? said.working : happened}</p>
      {failure !== null && <FailureNote saying={failure} />}
    </details>
  );
}
