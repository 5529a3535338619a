import { useEffect, useRef } from 'react';
import type { BoardView } from '../core/camera/board.js';
import { BOARD_CORNER_COUNT } from '../core/camera/board.js';
import { LEAST_VIEWS, MOST_VIEWS } from '../core/camera/profile-quality.js';
import { viewsOfOneSize } from '../session/profile-views.js';
import { useEquipment } from './equipment.js';
import { boardFailureWords } from './profile-sentences.js';
import { words } from './language.js';
import { failureSaying } from './picture-sentences.js';
import { useFault } from './use-fault.js';
import { useFocusOnCome } from './use-focus-on-come.js';

/** A picture file of the sheet that was looked at. */
export type SheetPicture =
  | { readonly kind: 'found'; readonly id: number; readonly name: string; readonly view: BoardView }
  | { readonly kind: 'failed'; readonly id: number; readonly name: string; readonly reason: string };

/** How far the looking has come; null where nothing is being looked at. */
type Progress = { readonly done: number; readonly all: number } | null;

/** Finds the sheet in pictures from disk, one after the other. */
export function ProfileFiles(props: {
  readonly files: readonly File[];
  readonly pictures: readonly SheetPicture[];
  readonly onPicture: (picture: SheetPicture) => void;
  readonly onMore: (files: readonly File[]) => void;
  /** What cannot be used is to be let go; the pictures that stay. */
  readonly onClearLeftOut: (usable: readonly SheetPicture[]) => void;
  readonly onDone: (views: readonly BoardView[]) => void;
  readonly onBack: () => void;
}) {
  const { files, pictures, onPicture } = props;
  const part = useFocusOnCome<HTMLDivElement>();
  const progress = useSheetPictures(files, pictures.length, onPicture);
  const found = pictures.filter((one) => one.kind === 'found');
  const usable = viewsOfOneSize(found);
  return (
    <div className="profile-files" role="group" aria-label={words.profile.files} tabIndex={-1} ref={part}>
      <p role="status">
        {progress !== null
          ? words.profile.lookingAt(Math.min(progress.done + 1, progress.all), progress.all)
          : words.profile.usable(usable.length, pictures.length)}
        {files.length > MOST_VIEWS && ` ${words.profile.tooMany(MOST_VIEWS)}`}
      </p>
      <ul className="profile-pictures">
        {pictures.map((one) => (
          <li key={one.id}>
            <span className="file-name">{one.name}</span>{' '}
            <small>
              {one.kind === 'failed'
                ? one.reason
                : usable.includes(one)
                  ? words.profile.cornersFound(one.view.corners.length, BOARD_CORNER_COUNT)
                  : words.profile.otherSize}
            </small>
          </li>
        ))}
      </ul>
      {progress === null && usable.length < LEAST_VIEWS && (
        <p className="note">{words.profile.needed(LEAST_VIEWS - usable.length)}</p>
      )}
      <div className="actions">
        {progress === null && usable.length >= LEAST_VIEWS && (
          <button
            type="button"
            className="main-action"
            onClick={() => {
              props.onDone(usable.map(({ view }) => view));
            }}
          >
            {words.profile.makeNow(usable.length)}
          </button>
        )}
        {progress === null && usable.length < pictures.length && (
          <button
            type="button"
            onClick={() => {
              props.onClearLeftOut(usable);
              part.current?.focus();
            }}
          >
            {words.profile.clearLeftOut}
          </button>
        )}
        {progress === null && <SheetFilesButton label={words.profile.morePictures} onChosen={props.onMore} />}
        <button type="button" onClick={props.onBack}>
          {words.profile.back}
        </button>
      </div>
    </div>
  );
}

/** A button that lets several pictures be chosen. */
export function SheetFilesButton(props: {
  readonly label: string;
  readonly onChosen: (files: readonly File[]) => void;
}) {
  return (
    <label className="file-button">
      <input
        type="file"
        accept="image/jpeg,image/png,image/webp"
        multiple
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = '';
          if (files.length > 0) props.onChosen(files);
        }}
      />
      <span>{props.label}</span>
    </label>
  );
}

function useSheetPictures(files: readonly File[], done: number, onPicture: (picture: SheetPicture) => void): Progress {
  const { pictures, vision } = useEquipment();
  const onFault = useFault();
  const all = Math.min(files.length, MOST_VIEWS);
  const file = done < all ? files[done] : undefined;
  // Not the place in the list: what is left out may be cleared, and others come then.
  const nextId = useRef(0);

  useEffect(() => {
    if (file === undefined) return;
    const abort = new AbortController();
    const look = async (): Promise<SheetPicture> => {
      const named = { id: nextId.current++, name: file.name };
      const opened = await pictures.open(file, file.name);
      if (!opened.ok) return { kind: 'failed', ...named, reason: failureSaying(opened.failure).what };
      try {
        const view = await vision.findBoard(opened.value, abort.signal);
        return view.ok
          ? { kind: 'found', ...named, view: view.value }
          : { kind: 'failed', ...named, reason: boardFailureWords(view.failure) };
      } finally {
        opened.value.bitmap.close();
      }
    };
    look().then(
      (picture) => {
        if (!abort.signal.aborted) onPicture(picture);
      },
      (reason: unknown) => {
        // An abort rejects with the signal's reason and is expected; anything else is a bug, for the boundary at the top.
        if (!abort.signal.aborted) onFault(reason);
      },
    );
    return () => {
      abort.abort();
    };
  }, [file, done, onFault, onPicture, pictures, vision]);
  return file === undefined ? null : { done, all };
}
