import { useCallback, useEffect, useId, useRef, useState } from 'react';
import type { ProfileFileFailure } from '../session/profile-file.js';
import { parseProfileFile, PROFILE_FILE_LIMIT_BYTES, writeProfileFile } from '../session/profile-file.js';
import { chosenProfile } from '../session/profile-choice.js';
import type { StoredProfile } from '../session/stored-profile.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import { downloadFile } from './download-file.js';
import { formatNumber } from './numbers.js';
import { ProfileDialog } from './profile-dialog.js';
import { ProfileNameField } from './profile-name-field.js';
import { percent, profileFileSentence } from './profile-sentences.js';
import { dateText, words } from './language.js';
import { useFocusOnCome } from './use-focus-on-come.js';
import { newProfileId, useProfiles } from './use-profiles.js';

/** What happened last to the shelf, for the status line. */
type Happened =
  | {
      readonly kind: 'kept-for-files' | 'kept-for-camera' | 'imported' | 'renamed' | 'removed' | 'brought-back';
      readonly name: string;
    }
  | { readonly kind: 'not-imported'; readonly failure: ProfileFileFailure }
  | null;

// The month as a word: 3/4 is April here and March there.
const DAY = { dateStyle: 'long', timeZone: 'UTC' } as const;

/** The part of the settings about camera profiles: which one counts, and the shelf of all. */
export function ProfileList(props: {
  readonly settings: SheetSettings;
  readonly onChange: (change: Partial<SheetSettings>) => void;
}) {
  const { settings, onChange } = props;
  const { shelf, changeProfiles } = useProfiles();
  const [isMaking, setIsMaking] = useState(false);
  const [happened, setHappened] = useState<Happened>(null);
  const choiceId = useId();
  const bringBack = useRef<HTMLButtonElement>(null);
  /** the entry that the focus goes to once it stands there */
  const [focusedId, setFocusedId] = useState<string | null>(null);
  const onFocused = useCallback(() => {
    setFocusedId(null);
  }, []);
  const removedId = shelf.removed?.profile.id ?? null;
  useEffect(() => {
    // What was deleted had the focus: it goes on to the way back.
    if (removedId !== null) bringBack.current?.focus();
  }, [removedId]);
  const chosen = chosenProfile(shelf.profiles, settings.profileId);

  const importFile = async (file: File): Promise<void> => {
    const text = file.size > PROFILE_FILE_LIMIT_BYTES ? '' : await file.text();
    const parsed = parseProfileFile(text);
    if (!parsed.ok) {
      setHappened({ kind: 'not-imported', failure: parsed.failure });
      return;
    }
    changeProfiles({ kind: 'profile-added', profile: { ...parsed.value, id: newProfileId() } });
    setHappened({ kind: 'imported', name: parsed.value.name });
  };

  return (
    <section>
      <h3>{words.profile.section}</h3>
      <p className="labelled">
        <label htmlFor={choiceId}>{words.profile.counts}</label>
        <select
          id={choiceId}
          value={chosen?.id ?? ''}
          aria-describedby={`${choiceId}-note`}
          onChange={(event) => {
            const { value } = event.currentTarget;
            onChange({ profileId: value === '' ? null : value });
          }}
        >
          <option value="">{words.profile.none}</option>
          {shelf.profiles.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </p>
      <p id={`${choiceId}-note`} className="note">
        {words.profile.countsNote}
      </p>
      {shelf.profiles.length === 0 ? (
        <p className="note">{words.profile.noProfiles}</p>
      ) : (
        <ul className="profile-shelf" aria-label={words.profile.shelf}>
          {shelf.profiles.map((profile) => (
            <ProfileEntry
              key={profile.id}
              stored={profile}
              isFocused={focusedId === profile.id}
              onFocused={onFocused}
              onRename={(name) => {
                changeProfiles({ kind: 'profile-renamed', id: profile.id, name });
                setHappened({ kind: 'renamed', name: name.trim() });
              }}
              onRemove={() => {
                changeProfiles({ kind: 'profile-removed', id: profile.id });
                setHappened({ kind: 'removed', name: profile.name });
              }}
            />
          ))}
        </ul>
      )}
      <div className="profile-happened" role="status">
        {happened?.kind === 'kept-for-files' && <p className="note">{words.profile.keptForFiles(happened.name)}</p>}
        {happened?.kind === 'kept-for-camera' && <p className="note">{words.profile.keptForCamera(happened.name)}</p>}
        {happened?.kind === 'imported' && <p className="note">{words.profile.imported(happened.name)}</p>}
        {happened?.kind === 'renamed' && <p className="note">{words.profile.renamed(happened.name)}</p>}
        {happened?.kind === 'brought-back' && <p className="note">{words.profile.broughtBack(happened.name)}</p>}
        {happened?.kind === 'removed' && shelf.removed !== null && (
          <p className="note">
            {words.profile.removed(happened.name)}{' '}
            <button
              type="button"
              className="quiet"
              ref={bringBack}
              onClick={() => {
                changeProfiles({ kind: 'removal-undone' });
                setHappened({ kind: 'brought-back', name: happened.name });
                setFocusedId(removedId);
              }}
            >
              {words.profile.bringBack}
            </button>
          </p>
        )}
        {happened?.kind === 'not-imported' && (
          <p className="note note-failure">{profileFileSentence(happened.failure)}</p>
        )}
        {!shelf.isKept && <p className="note note-failure">{words.profile.notKept}</p>}
      </div>
      <div className="actions">
        <button
          type="button"
          onClick={() => {
            setIsMaking(true);
          }}
        >
          {words.profile.makeOne}
        </button>
        <label className="file-button">
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              event.currentTarget.value = '';
              if (file !== undefined) void importFile(file);
            }}
          />
          <span>{words.profile.importOne}</span>
        </label>
      </div>
      {isMaking && (
        <ProfileDialog
          settings={settings}
          onChange={onChange}
          onCameraChosen={(cameraId) => {
            onChange({ cameraId });
          }}
          onKeep={(profile) => {
            changeProfiles({ kind: 'profile-added', profile });
            // One of a camera is found by the camera's name.
            if (profile.cameraLabel === null) onChange({ profileId: profile.id });
            setHappened({
              kind: profile.cameraLabel === null ? 'kept-for-files' : 'kept-for-camera',
              name: profile.name.trim(),
            });
          }}
          onClose={() => {
            setIsMaking(false);
          }}
        />
      )}
    </section>
  );
}

function ProfileEntry(props: {
  readonly stored: StoredProfile;
  /** it gets the focus, and says so */
  readonly isFocused: boolean;
  readonly onFocused: () => void;
  readonly onRename: (name: string) => void;
  readonly onRemove: () => void;
}) {
  const { name, cameraLabel, madeOn, profile, coverage } = props.stored;
  const { isFocused, onFocused } = props;
  const [isRenaming, setIsRenaming] = useState(false);
  const renameButton = useRef<HTMLButtonElement>(null);
  const wasRenaming = useRef(false);
  useEffect(() => {
    if (wasRenaming.current && !isRenaming) renameButton.current?.focus();
    wasRenaming.current = isRenaming;
  }, [isRenaming]);
  useEffect(() => {
    if (!isFocused) return;
    renameButton.current?.focus();
    onFocused();
  }, [isFocused, onFocused]);
  const focal = Math.max(profile.uncertainty.fx / profile.fx, profile.uncertainty.fy / profile.fy);
  return (
    <li>
      {!isRenaming ? (
        <strong className="profile-entry-name">{name}</strong>
      ) : (
        <RenameForm
          name={name}
          onRename={(newName) => {
            props.onRename(newName);
            setIsRenaming(false);
          }}
          onCancel={() => {
            setIsRenaming(false);
          }}
        />
      )}
      <p className="note">
        {words.profile.facts(
          `${profile.widthPx} × ${profile.heightPx}`,
          dateText(new Date(`${madeOn}T00:00:00Z`), DAY),
        )}
        ; {words.profile.quality(percent(focal, 2), formatNumber(profile.rmsPx, 2), percent(coverage, 0))}
        {'. '}
        {cameraLabel === null ? words.profile.ofFiles : words.profile.ofCamera(cameraLabel)}
      </p>
      <div className="actions">
        {!isRenaming && (
          <button
            type="button"
            className="quiet"
            ref={renameButton}
            aria-label={words.profile.renameOf(name)}
            onClick={() => {
              setIsRenaming(true);
            }}
          >
            {words.profile.rename}
          </button>
        )}
        <button
          type="button"
          className="quiet"
          aria-label={words.profile.exportOf(name)}
          onClick={() => {
            downloadFile(writeProfileFile(props.stored), fileNameOf(name), 'application/json');
          }}
        >
          {words.profile.exportOne}
        </button>
        <button type="button" className="quiet" aria-label={words.profile.removeOf(name)} onClick={props.onRemove}>
          {words.profile.remove}
        </button>
      </div>
    </li>
  );
}

function RenameForm(props: {
  readonly name: string;
  readonly onRename: (name: string) => void;
  readonly onCancel: () => void;
}) {
  const [name, setName] = useState(props.name);
  const field = useFocusOnCome<HTMLInputElement>();
  return (
    <form
      className="profile-name"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() === '') field.current?.focus();
        else props.onRename(name);
      }}
    >
      <ProfileNameField
        label={words.profile.newName}
        name={name}
        emptyProblem={words.profile.emptyRename}
        field={field}
        onType={setName}
        onKeyDown={(event) => {
          if (event.key !== 'Escape') return;
          // The dialog around it must stay open.
          event.preventDefault();
          props.onCancel();
        }}
      />
      <div className="actions">
        <button type="submit">{words.profile.saveName}</button>
        <button type="button" onClick={props.onCancel}>
          {words.profile.cancel}
        </button>
      </div>
    </form>
  );
}

function fileNameOf(name: string): string {
  const part = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `${[words.profile.fileStem, part].filter((one) => one !== '').join('-')}.json`;
}
