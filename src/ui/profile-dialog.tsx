import { useCallback, useEffect, useState } from 'react';
import type { BoardFailure, BoardView } from '../core/camera/board.js';
import type { CameraProfile } from '../core/camera/camera-profile.js';
import type { Result } from '../core/result.js';
import { isoDay } from '../session/iso-day.js';
import type { DeviceFailure } from '../session/ports.js';
import { PROFILE_NAME_LIMIT } from '../session/stored-profile.js';
import type { StoredProfile } from '../session/stored-profile.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import { useEquipment } from './equipment.js';
import { Modal } from './modal.js';
import { PrintDialog } from './print-dialog.js';
import { ProfileCamera } from './profile-camera.js';
import type { SheetPicture } from './profile-files.js';
import { ProfileFiles, SheetFilesButton } from './profile-files.js';
import { ProfileResult } from './profile-result.js';
import { boardFailureSaying } from './profile-sentences.js';
import { words } from './language.js';
import { useFault } from './use-fault.js';
import { useFocusOnCome } from './use-focus-on-come.js';
import { newProfileId } from './use-profiles.js';

type Origin = 'camera' | 'files';

type Step =
  | { readonly kind: 'beginning' }
  | { readonly kind: 'taking'; readonly from: Origin }
  /** the profile is worked out, or was; `made` is null until then */
  | {
      readonly kind: 'making';
      readonly from: Origin;
      readonly views: readonly BoardView[];
      readonly cameraLabel: string | null;
      readonly made: Result<CameraProfile, BoardFailure | DeviceFailure> | null;
    };

/**
 * Makes a camera profile from views of the printed sheet. The printed scale of the sheet does not matter for what is kept:
 * a sheet printed larger is taken for one held nearer, with the same focal length and distortion. That it is flat does matter.
 */
export function ProfileDialog(props: {
  readonly settings: SheetSettings;
  readonly onChange: (change: Partial<SheetSettings>) => void;
  readonly onCameraChosen: (id: string) => void;
  readonly onKeep: (profile: StoredProfile) => void;
  readonly onClose: () => void;
}) {
  const { vision } = useEquipment();
  const [step, setStep] = useState<Step>({ kind: 'beginning' });
  const [views, setViews] = useState<readonly BoardView[]>([]);
  const [files, setFiles] = useState<readonly File[]>([]);
  const [pictures, setPictures] = useState<readonly SheetPicture[]>([]);
  const [isPrinting, setIsPrinting] = useState(false);
  const onFault = useFault();

  const addPicture = useCallback((picture: SheetPicture) => {
    setPictures((before) => [...before, picture]);
  }, []);
  const addFiles = (more: readonly File[]): void => {
    setFiles([...files, ...more]);
    setStep({ kind: 'taking', from: 'files' });
  };
  /** Files that wait to be looked at stay, and what is not usable goes. */
  const clearLeftOut = (usable: readonly SheetPicture[]): void => {
    setFiles(
      files.filter((_, index) => {
        const picture = pictures[index];
        return picture === undefined || usable.includes(picture);
      }),
    );
    setPictures(usable);
  };
  const begin = (): void => {
    setViews([]);
    setFiles([]);
    setPictures([]);
    setStep({ kind: 'beginning' });
  };

  const toMake = step.kind === 'making' && step.made === null ? step : null;
  useEffect(() => {
    if (toMake === null) return;
    const abort = new AbortController();
    vision.makeProfile(toMake.views, abort.signal).then(
      (made) => {
        if (!abort.signal.aborted) setStep({ ...toMake, made });
      },
      (reason: unknown) => {
        // An abort rejects with the signal's reason and is expected; anything else is a bug, for the boundary at the top.
        if (!abort.signal.aborted) onFault(reason);
      },
    );
    return () => {
      abort.abort();
    };
  }, [onFault, toMake, vision]);

  return (
    <Modal heading={words.profile.heading} closeLabel={words.profile.close} onClose={props.onClose} wide>
      {step.kind === 'beginning' && (
        <div className="profile-beginning">
          <p>{words.profile.intro}</p>
          <ol>
            {words.profile.before.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
          <div className="actions">
            <button
              type="button"
              className="main-action"
              onClick={() => {
                setStep({ kind: 'taking', from: 'camera' });
              }}
            >
              {words.profile.useCamera}
            </button>
            <SheetFilesButton label={words.profile.usePictures} onChosen={addFiles} />
          </div>
          <p className="note">{words.profile.picturesNote}</p>
          <div className="actions">
            <button
              type="button"
              className="quiet"
              onClick={() => {
                setIsPrinting(true);
              }}
            >
              {words.profile.printSheet}
            </button>
          </div>
        </div>
      )}
      {step.kind === 'taking' && step.from === 'camera' && (
        <ProfileCamera
          cameraId={props.settings.cameraId}
          onCameraChosen={props.onCameraChosen}
          views={views}
          onViews={setViews}
          onDone={(taken, cameraLabel) => {
            setStep({ kind: 'making', from: 'camera', views: taken, cameraLabel, made: null });
          }}
          onBack={begin}
        />
      )}
      {step.kind === 'taking' && step.from === 'files' && (
        <ProfileFiles
          files={files}
          pictures={pictures}
          onPicture={addPicture}
          onMore={addFiles}
          onClearLeftOut={clearLeftOut}
          onDone={(found) => {
            setStep({ kind: 'making', from: 'files', views: found, cameraLabel: null, made: null });
          }}
          onBack={begin}
        />
      )}
      {step.kind === 'making' && step.made === null && (
        <p className="profile-making" role="status">
          {words.profile.making}
        </p>
      )}
      {step.kind === 'making' && step.made?.ok === false && (
        <>
          <MakingFailure failure={step.made.failure} />
          <div className="actions">
            <MoreViews from={step.from} onCamera={setStep} onFiles={addFiles} isMain />
            <button type="button" onClick={begin}>
              {words.profile.startAgain}
            </button>
          </div>
        </>
      )}
      {step.kind === 'making' && step.made?.ok === true && (
        <ProfileResult
          profile={step.made.value}
          views={step.views}
          suggestedName={suggestedName(step.made.value, step.from, step.cameraLabel)}
          isMirrored={step.from === 'camera'}
          onKeep={(name, coverage) => {
            if (step.made?.ok !== true) return;
            props.onKeep({
              id: newProfileId(),
              name,
              cameraLabel: step.cameraLabel,
              madeOn: isoDay(new Date()),
              profile: step.made.value,
              coverage,
            });
            props.onClose();
          }}
        >
          <MoreViews from={step.from} onCamera={setStep} onFiles={addFiles} />
          <button type="button" onClick={begin}>
            {words.profile.startAgain}
          </button>
        </ProfileResult>
      )}
      {isPrinting && (
        <PrintDialog
          settings={props.settings}
          onChange={props.onChange}
          onClose={() => {
            setIsPrinting(false);
          }}
        />
      )}
    </Modal>
  );
}

function MakingFailure({ failure }: { readonly failure: BoardFailure | DeviceFailure }) {
  const { what, next } = boardFailureSaying(failure);
  const place = useFocusOnCome<HTMLParagraphElement>();
  return (
    <p className="note note-failure" role="alert" tabIndex={-1} ref={place}>
      <strong>{what}</strong> {next}
    </p>
  );
}

function MoreViews(props: {
  readonly from: Origin;
  readonly onCamera: (step: Step) => void;
  readonly onFiles: (files: readonly File[]) => void;
  readonly isMain?: boolean;
}) {
  if (props.from === 'files') return <SheetFilesButton label={words.profile.morePictures} onChosen={props.onFiles} />;
  return (
    <button
      type="button"
      className={props.isMain === true ? 'main-action' : ''}
      onClick={() => {
        props.onCamera({ kind: 'taking', from: 'camera' });
      }}
    >
      {words.profile.moreViews}
    </button>
  );
}

function suggestedName(profile: CameraProfile, from: Origin, cameraLabel: string | null): string {
  return nameOfOrigin(profile, from, cameraLabel).slice(0, PROFILE_NAME_LIMIT);
}

function nameOfOrigin(profile: CameraProfile, from: Origin, cameraLabel: string | null): string {
  if (from === 'files') return words.profile.fileName(profile.widthPx, profile.heightPx);
  // Browsers put the numbers of the USB device behind the name.
  const label = (cameraLabel ?? '').replace(/\s*\([0-9a-f]{4}:[0-9a-f]{4}\)$/i, '').trim();
  return label === '' ? words.profile.unnamedCamera : label;
}
