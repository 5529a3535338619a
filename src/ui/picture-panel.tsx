import type { ReactNode } from 'react';
import { useEffect, useId, useRef, useState } from 'react';
import type { ImagePoint } from '../core/geometry/vector.js';
import { SIDES } from '../core/units/side.js';
import type { Handle } from '../session/handles.js';
import { CARD_HANDLES, eyeHandles, MIDLINE_HANDLE } from '../session/handles.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { Marking } from '../session/marking.js';
import type { PictureState } from '../session/picture-state.js';
import { pictureOf } from '../session/picture-state.js';
import { isHiddenByFailure } from '../session/sheet.js';
import type { SheetAct } from '../session/undo.js';
import { useEquipment } from './equipment.js';
import { Holding } from './holding.js';
import type { PictureRegion } from './picture-region.js';
import { eyeRegion, faceRegion, wholeRegion } from './picture-region.js';
import { failureSaying, progressSentence } from './picture-sentences.js';
import { noticeSentence } from './sheet-notice.js';
import { useKeptFocus } from './use-kept-focus.js';
import type { SheetInHand } from './use-sheet.js';
import { gazeId, PICTURE_HEADING_ID } from './place-ids.js';
import { WorkProgress } from './work-progress.js';
import { laterPart } from './later-part.js';
import { words } from './language.js';

// Nothing of this is needed before there is a picture.
const Loupe = laterPart(async () => (await import('./loupe.js')).Loupe);
const PictureFacts = laterPart(async () => (await import('./picture-facts.js')).PictureFacts);
const PictureStage = laterPart(async () => (await import('./picture-stage.js')).PictureStage);
const RecordedNote = laterPart(async () => (await import('./recorded-note.js')).RecordedNote);
const KeptPicturePanel = laterPart(async () => (await import('./kept-picture-panel.js')).KeptPicturePanel);
const SweepFacts = laterPart(async () => (await import('./sweep-facts.js')).SweepFacts);
const SweepNote = laterPart(async () => (await import('./sweep-note.js')).SweepNote);
const SweptNote = laterPart(async () => (await import('./sweep-note.js')).SweptNote);
const SweptPicture = laterPart(async () => (await import('./sweep-view.js')).SweptPicture);

const MAIN_HANDLES: readonly Handle[] = [...CARD_HANDLES, MIDLINE_HANDLE];

/** The picture: how it comes in, what was found in it, and what is put right by hand. */
export function PicturePanel(props: {
  readonly sheet: SheetInHand;
  /** the answer of a distant wearer was dropped */
  readonly onAnswer: (file: File) => void;
  readonly onTake: () => void;
  readonly onSweep: () => void;
}) {
  const { sheet } = props;
  const { notice, picture, sweep } = sheet.state;
  const letGo = useIncomingFiles(sheet.bringFiles, props.onAnswer);
  const heading = useRef<HTMLHeadingElement>(null);
  useKeptFocus(heading);
  const kind = isHiddenByFailure(sheet.state) ? null : picture.kind;
  const said = noticeSentence(notice);
  return (
    <section className={letGo ? 'picture-panel is-drop' : 'picture-panel'} aria-labelledby={PICTURE_HEADING_ID}>
      <h2
        id={PICTURE_HEADING_ID}
        ref={heading}
        tabIndex={-1}
        className={picture.kind === 'none' ? undefined : 'visually-hidden'}
      >
        {words.picture.heading}
      </h2>
      {letGo && <p className="drop-note">{words.picture.letGo}</p>}
      {sweep !== null && <SweepNote sheet={sheet} run={sweep} />}
      {said !== null && sweep === null && <p className="note">{said}</p>}
      {kind !== null && <PictureBody sheet={sheet} />}
      <PictureActions sheet={sheet} onTake={props.onTake} onSweep={props.onSweep} />
      {(kind === 'none' || kind === 'recorded') && <Holding />}
      {(kind === 'measured' || kind === 'swept' || kind === 'none') && <GazeChoice sheet={sheet} />}
      {kind === 'measured' && <PictureFacts sheet={sheet} />}
      {kind === 'swept' && <SweepFacts sheet={sheet} />}
      {!sheet.isInvented && <KeptPictures sheet={sheet} />}
    </section>
  );
}

/** What is kept of pictures, where there is one to keep or one is kept already. */
function KeptPictures({ sheet }: { readonly sheet: SheetInHand }) {
  const { database } = useEquipment();
  const { picture, takenAt } = sheet.state;
  const onScreen =
    picture.kind === 'measured' && takenAt !== null
      ? { bitmap: picture.picture.bitmap, features: picture.marking.features, takenAt }
      : null;
  return (
    <KeptPicturePanel
      store={database.pictures}
      sessionId={sheet.sessionId}
      picture={onScreen}
      newId={() => crypto.randomUUID()}
    />
  );
}

function PictureBody({ sheet }: { readonly sheet: SheetInHand }) {
  const { state, measurement, dispatch } = sheet;
  const { picture } = state;
  switch (picture.kind) {
    case 'none':
      return null;
    case 'recorded':
      return <RecordedNote camera={picture.camera} />;
    case 'working':
      return (
        <>
          <PlainPicture state={picture} />
          <WorkProgress what={progressSentence(picture.progress)} share={picture.progress?.share ?? null} />
        </>
      );
    case 'failed':
      return (
        <>
          <PlainPicture state={picture} />
          <FailureNote failure={picture.failure} />
          {picture.partial !== null && (
            <button
              type="button"
              onClick={() => {
                dispatch({ kind: 'placing-started' });
              }}
            >
              {words.picture.placeByHand}
            </button>
          )}
        </>
      );
    case 'placing':
      return (
        <>
          <MarkedPicture sheet={sheet} marking={picture.marking} state={picture}>
            <p className="note">
              <strong>{words.picture.placing}</strong>
            </p>
          </MarkedPicture>
          <p>
            <button
              type="button"
              className="main-action"
              onClick={() => {
                dispatch({ kind: 'corners-vouched' });
              }}
            >
              {words.picture.cornersPlaced}
            </button>
          </p>
        </>
      );
    case 'measured':
      return (
        <>
          <MarkedPicture sheet={sheet} marking={picture.marking} state={picture}>
            <MeasuredNote marking={picture.marking} measurement={measurement} />
          </MarkedPicture>
        </>
      );
    case 'swept':
      return (
        <>
          <SweptNote sheet={sheet} picture={picture} />
          <SweptPicture sheet={sheet} state={picture} />
        </>
      );
  }
}

function MeasuredNote(props: { readonly marking: Marking; readonly measurement: SheetInHand['measurement'] }) {
  if (props.measurement?.ok === false && props.measurement.failure.kind === 'picture') {
    return <FailureNote failure={props.measurement.failure.failure} />;
  }
  return (
    <p className="note">
      <strong>{props.marking.features === props.marking.found ? words.picture.found : words.picture.corrected}</strong>
    </p>
  );
}

function FailureNote({ failure }: { readonly failure: MeasuringFailure }) {
  const { what, next } = failureSaying(failure);
  return (
    <p className="note note-failure">
      <strong>{what}</strong> {next}
    </p>
  );
}

function PlainPicture({ state }: { readonly state: PictureState }) {
  const picture = pictureOf(state);
  if (picture === null) return null;
  return (
    <PictureStage
      label={words.picture.wholePictureOf(picture.name)}
      picture={picture}
      features={null}
      region={wholeRegion(picture)}
      handles={[]}
      hintId=""
      onMove={() => undefined}
      onHold={() => undefined}
    />
  );
}

function MarkedPicture(props: {
  readonly sheet: SheetInHand;
  readonly marking: Marking;
  readonly state: Extract<PictureState, { kind: 'measured' | 'placing' }>;
  /** what is to be said about it */
  readonly children: ReactNode;
}) {
  const { marking, state } = props;
  const { dispatch } = props.sheet;
  const { picture } = state;
  const { features, found } = marking;
  const [isWhole, setIsWhole] = useState(false);
  const [held, setHeld] = useState<Handle | null>(null);
  const hintId = useId();
  // The views follow what was found, not what is being moved: they must stand still under a drag.
  const region: PictureRegion = isWhole ? wholeRegion(picture) : faceRegion(found);
  const onMove = (handle: Handle, to: ImagePoint, gesture: number): void => {
    dispatch({ kind: 'handle-moved', handle, to, gesture });
  };
  const { undoes, redoes, step } = props.sheet;
  return (
    <div>
      <PictureStage
        label={isWhole ? words.picture.wholePicture : words.picture.face}
        picture={picture}
        features={features}
        region={region}
        handles={MAIN_HANDLES}
        hintId={hintId}
        onMove={onMove}
        onHold={setHeld}
      >
        {held !== null && <Loupe picture={picture} features={features} handle={held} view={region} />}
      </PictureStage>
      {state.kind === 'measured' && (
        <div className="eyes">
          {SIDES.map((side) => (
            <figure key={side} className="eye">
              <PictureStage
                label={words.picture.eye[side]}
                picture={picture}
                features={features}
                region={eyeRegion(found, side)}
                handles={eyeHandles(side)}
                hintId={hintId}
                onMove={onMove}
                onHold={setHeld}
              />
              <figcaption>{words.picture.eye[side]}</figcaption>
            </figure>
          ))}
        </div>
      )}
      {props.children}
      <div className="picture-tools" role="group" aria-label={words.picture.viewOf}>
        <button
          type="button"
          className="quiet"
          aria-pressed={isWhole}
          onClick={() => {
            setIsWhole(!isWhole);
          }}
        >
          {words.picture.wholePicture}
        </button>
        <button
          type="button"
          className="quiet"
          disabled={!isOnPicture(undoes)}
          onClick={() => {
            step('undone');
          }}
        >
          {words.picture.undo}
        </button>
        <button
          type="button"
          className="quiet"
          disabled={!isOnPicture(redoes)}
          onClick={() => {
            step('redone');
          }}
        >
          {words.picture.redo}
        </button>
        <button
          type="button"
          className="quiet"
          disabled={features === found}
          onClick={() => {
            dispatch({ kind: 'reset-to-found' });
          }}
        >
          {words.picture.reset}
        </button>
      </div>
      <p id={hintId} className="note">
        {words.picture.handleHint}
      </p>
      <details className="key">
        <summary>{words.picture.keyHeading}</summary>
        <p className="note">{words.picture.key}</p>
      </details>
    </div>
  );
}

/** Whether it was done with the points: only that is undone beside them. */
function isOnPicture(act: SheetAct | null): boolean {
  return act !== null && (act.kind === 'handle' || act.kind === 'reset-to-found');
}

function PictureActions(props: {
  readonly sheet: SheetInHand;
  readonly onTake: () => void;
  readonly onSweep: () => void;
}) {
  const { bringFiles, dispatch, state, stopMeasuring, sweep } = props.sheet;
  const { kind } = state.picture;
  if (state.sweep !== null && state.sweep.stage.kind !== 'failed') {
    return (
      <div className="actions">
        <button type="button" onClick={sweep.drop}>
          {words.picture.cancel}
        </button>
      </div>
    );
  }
  if (kind === 'working') {
    return (
      <div className="actions">
        <button
          type="button"
          onClick={() => {
            stopMeasuring();
            dispatch({ kind: 'picture-put-away' });
          }}
        >
          {words.picture.cancel}
        </button>
      </div>
    );
  }
  const isFirst = kind === 'none';
  const isHidden = isHiddenByFailure(state);
  return (
    <div className="actions">
      <button type="button" className={isFirst || kind === 'failed' ? 'main-action' : undefined} onClick={props.onTake}>
        {isFirst ? words.picture.take : words.picture.takeAnother}
      </button>
      <button type="button" onClick={props.onSweep}>
        {kind === 'swept' ? words.sweep.takeAnother : words.sweep.take}
      </button>
      <label className="file-button">
        <input
          type="file"
          accept="image/*,video/*"
          multiple
          onChange={(event) => {
            const files = [...(event.currentTarget.files ?? [])];
            // The same file may be chosen again after it was put away.
            event.currentTarget.value = '';
            bringFiles(files);
          }}
        />
        <span>{isFirst ? words.picture.choose : words.picture.chooseAnother}</span>
      </label>
      {isFirst ? (
        <span className="note">{words.picture.dropHere}</span>
      ) : isHidden ? null : (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            dispatch({ kind: 'picture-put-away' });
          }}
        >
          {kind === 'swept' ? words.sweep.putAway : words.picture.putAway}
        </button>
      )}
    </div>
  );
}

function GazeChoice({ sheet }: { readonly sheet: SheetInHand }) {
  const { gaze } = sheet.state.settings;
  const name = useId();
  const noteId = useId();
  const choices = [
    { value: 'camera', label: words.picture.gazeCamera },
    { value: 'far', label: words.picture.gazeFar },
  ] as const;
  return (
    <fieldset className="choice" aria-describedby={noteId}>
      <legend>{words.picture.gaze}</legend>
      {choices.map(({ value, label }) => (
        <label key={value}>
          <input
            id={gazeId(value)}
            type="radio"
            name={name}
            checked={gaze === value}
            onChange={() => {
              sheet.dispatch({ kind: 'settings-changed', change: { gaze: value } });
            }}
          />
          {label}
        </label>
      ))}
      <p id={noteId} className="note">
        {words.picture.gazeNote}
      </p>
    </fieldset>
  );
}

/** By its name, as no system has a type for it: an answer as it was saved, or as text. */
function isSealed({ name }: File): boolean {
  return /\.age(\.txt)?$/i.test(name);
}

/** Takes files that are dropped or pasted anywhere on the page; true while some hover over it. */
function useIncomingFiles(bringFiles: SheetInHand['bringFiles'], onAnswer: (file: File) => void): boolean {
  const [hovers, setHovers] = useState(false);
  useEffect(() => {
    const take = (list: FileList | undefined): boolean => {
      const files = [...(list ?? [])];
      if (files.length === 0) return false;
      const answer = files.find(isSealed);
      if (answer === undefined) bringFiles(files);
      else onAnswer(answer);
      return true;
    };
    const carriesFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true;
    const onDragOver = (event: DragEvent): void => {
      if (!carriesFile(event)) return;
      // Without this the browser would leave the page and show the file.
      event.preventDefault();
      setHovers(true);
    };
    const onDragLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setHovers(false);
    };
    const onDrop = (event: DragEvent): void => {
      if (!carriesFile(event)) return;
      setHovers(false);
      // A dialog above took it.
      if (event.defaultPrevented) return;
      event.preventDefault();
      take(event.dataTransfer?.files);
    };
    const onPaste = (event: ClipboardEvent): void => {
      if (take(event.clipboardData?.files)) event.preventDefault();
    };
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('dragleave', onDragLeave);
    window.addEventListener('drop', onDrop);
    window.addEventListener('paste', onPaste);
    return () => {
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('dragleave', onDragLeave);
      window.removeEventListener('drop', onDrop);
      window.removeEventListener('paste', onPaste);
    };
  }, [bringFiles, onAnswer]);
  return hovers;
}
