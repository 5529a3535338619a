import type { ReactNode } from 'react';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Picture } from '../session/ports.js';
import type { LiveCamera } from '../session/profile-choice.js';
import type { SheetRow } from '../session/rows.js';
import type { SheetState } from '../session/sheet.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import { useEquipment } from './equipment.js';
import { laterPart } from './later-part.js';
import { LanguageChooser } from './language-chooser.js';
import { NotesPanel } from './notes-panel.js';
import { PicturePanel } from './picture-panel.js';
import { goToFirstReading } from './hand-place.js';
import { ReadingsSheet } from './readings-sheet.js';
import { useAnnouncements } from './use-announcements.js';
import type { DeskInHand } from './use-desk.js';
import type { OpenedSession } from './use-sheet.js';
import { useSheet } from './use-sheet.js';
import { whenIdle } from './when-idle.js';
import { words } from './language.js';

// What nobody needs before something was typed or pressed is no part of what is loaded first.
const CameraDialog = laterPart(async () => (await import('./camera-dialog.js')).CameraDialog);
const CostPanel = laterPart(async () => (await import('./cost-panel.js')).CostPanel);
const DifferencesDialog = laterPart(async () => (await import('./differences-dialog.js')).DifferencesDialog);
const OrderDialog = laterPart(async () => (await import('./order-dialog.js')).OrderDialog);
const PracticeDialog = laterPart(async () => (await import('./practice-dialog.js')).PracticeDialog);
const PrintDialog = laterPart(async () => (await import('./print-dialog.js')).PrintDialog);
const SettingsDialog = laterPart(async () => (await import('./settings-dialog.js')).SettingsDialog);
const SweepDialog = laterPart(async () => (await import('./sweep-dialog.js')).SweepDialog);
const HistoryDialog = laterPart(async () => (await import('./history-dialog.js')).HistoryDialog);
const HelpDialog = laterPart(async () => (await import('./help-dialog.js')).HelpDialog);
const PrescriptionPanel = laterPart(async () => (await import('./prescription-panel.js')).PrescriptionPanel);
const MisfitList = laterPart(async () => (await import('./misfit-list.js')).MisfitList);
const PaperFacts = laterPart(async () => (await import('./paper-facts.js')).PaperFacts);

type OpenDialog =
  'differences' | 'history' | 'help' | 'camera' | 'sweep' | 'settings' | 'practice' | 'order' | 'print' | null;

/** The sheet of one session, with its picture. */
export function SheetScreen({
  record,
  isInvented,
  desk,
  onAnswer,
  onShortcuts,
  notice,
}: OpenedSession & {
  readonly desk: DeskInHand;
  /** the answer of a distant wearer was dropped */
  readonly onAnswer: (file: File) => void;
  /** the list of all keys is wanted */
  readonly onShortcuts: () => void;
  /** what is to be said above the sheet */
  readonly notice: ReactNode;
}) {
  const { demo } = useEquipment();
  const sheet = useSheet({ record, isInvented }, isInvented ? keepNothing : desk.take);
  const { state, dispatch, measurePicture } = sheet;
  const [open, setOpen] = useState<OpenDialog>(null);
  const announcements = useAnnouncements(sheet);

  const close = useCallback(() => {
    setOpen(null);
  }, []);
  const opens = (dialog: OpenDialog) => (): void => {
    setOpen(dialog);
  };
  const changeSettings = useCallback(
    (change: Partial<SheetSettings>) => {
      dispatch({ kind: 'settings-changed', change });
    },
    [dispatch],
  );
  const onTaken = useCallback(
    (picture: Picture, camera: LiveCamera | null) => {
      measurePicture({ kind: 'taken', picture, camera });
    },
    [measurePicture],
  );
  const onSweepTaken = useCallback(
    (camera: LiveCamera | null) => {
      dispatch({ kind: 'sweep-camera-told', camera });
    },
    [dispatch],
  );
  const misfits = useRef<HTMLDivElement>(null);
  const showMisfits = (): void => {
    misfits.current?.scrollIntoView({ block: 'start' });
    misfits.current?.focus({ preventScroll: true });
  };
  useEffect(() => {
    if (isInvented) measurePicture({ kind: 'fetched', fetch: demo.picture, name: words.demo.pictureName });
  }, [isInvented, measurePicture, demo]);

  return (
    <>
      <a
        className="skip"
        href="#readings"
        onClick={(event) => {
          event.preventDefault();
          goToFirstReading();
        }}
      >
        {words.header.skipToReadings}
      </a>
      <header className="top">
        <div className="top-name">
          <h1>{words.header.name}</h1>
          <p>{words.header.whatItIs}</p>
        </div>
        <nav className="top-actions" aria-label={words.header.actions}>
          {!isInvented && <QuietButton onClick={desk.showDemo}>{words.demo.load}</QuietButton>}
          <QuietButton onClick={opens('print')}>{words.header.printCard}</QuietButton>
          <QuietButton onClick={opens('practice')}>{words.header.practice}</QuietButton>
          <QuietButton onClick={opens('settings')}>{words.header.settings}</QuietButton>
          <QuietButton
            onClick={() => {
              window.print();
            }}
          >
            {words.header.printSheet}
          </QuietButton>
          <QuietButton onClick={opens('help')}>{words.desk.help}</QuietButton>
          <QuietButton onClick={onShortcuts}>{words.header.keys}</QuietButton>
          {!isInvented && (
            <>
              <QuietButton onClick={desk.showList}>{words.desk.sessions}</QuietButton>
              <QuietButton onClick={desk.begin}>{words.desk.nextWearer}</QuietButton>
            </>
          )}
          <button type="button" onClick={opens('order')}>
            {words.header.order}
          </button>
        </nav>
      </header>
      {notice}
      {desk.beforeId !== null && !isInvented && <BeforeBar desk={desk} beforeId={desk.beforeId} />}
      {isInvented && (
        <aside className="bar" aria-label={words.demo.load}>
          <p>
            <strong>{words.demo.onSheet}</strong> {words.demo.rendered} {words.demo.kept}
          </p>
          <button type="button" onClick={desk.back}>
            {words.demo.leave}
          </button>
        </aside>
      )}
      <main className="desk">
        <PicturePanel sheet={sheet} onAnswer={onAnswer} onTake={opens('camera')} onSweep={opens('sweep')} />
        <div className="paper" id="readings">
          <PaperFacts state={state} measurement={sheet.measurement} />
          <NotesPanel sheet={sheet} />
          <ReadingsSheet sheet={sheet} onShowMisfits={showMisfits} onDraw={opens('differences')} />
          <PrescriptionPanel sheet={sheet} />
          <CostPanel sheet={sheet} />
          <p className="paper-history">
            <QuietButton onClick={opens('history')}>{words.desk.history}</QuietButton>
          </p>
        </div>
        <div className="margin">
          <div ref={misfits} tabIndex={-1} className="misfits-place">
            {sheet.isReasoned && <MisfitList sheet={sheet} />}
          </div>
        </div>
      </main>
      <footer className="bottom">
        <h2>{words.footer.heading}</h2>
        <ul>
          {words.footer.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        <p className="promise">
          <strong>{words.footer.privacy}</strong> {words.footer.privacyMore}
        </p>
        <LanguageChooser />
      </footer>
      <p className="visually-hidden" role="status">
        {announcements.picture}
      </p>
      <p className="visually-hidden" role="status">
        {announcements.findings}
      </p>
      {open === 'camera' && (
        <CameraDialog
          settings={state.settings}
          isPdTold={isPdTold(state, sheet.rows)}
          onCameraChosen={(cameraId) => {
            changeSettings({ cameraId });
          }}
          onTaken={onTaken}
          onClose={close}
        />
      )}
      {open === 'sweep' && (
        <SweepDialog
          run={state.sweep}
          sweep={sheet.sweep}
          gaze={state.settings.gaze}
          cameraId={state.settings.cameraId}
          onCameraChosen={(cameraId) => {
            changeSettings({ cameraId });
          }}
          onTaken={onSweepTaken}
          onClose={close}
        />
      )}
      {open === 'practice' && (
        <PracticeDialog
          practice={state.settings.practice}
          onChange={(change) => {
            dispatch({ kind: 'practice-changed', change });
          }}
          onClose={close}
        />
      )}
      {open === 'differences' && <DifferencesDialog sheet={sheet} onClose={close} />}
      {open === 'order' && <OrderDialog sheet={sheet} onClose={close} />}
      {open === 'settings' && <SettingsDialog settings={state.settings} onChange={changeSettings} onClose={close} />}
      {open === 'print' && <PrintDialog settings={state.settings} onChange={changeSettings} onClose={close} />}
      {open === 'history' && (
        <HistoryDialog readers={state.readers} open={state.reader} wearer={state.notes.wearer} onClose={close} />
      )}
      {open === 'help' && <HelpDialog measurement={null} onClose={close} />}
      <WarmUp />
    </>
  );
}

/** Whether the sheet would tell the PD of a picture that is taken now. That an earlier one was shown alone counts no more then. */
function isPdTold({ settings }: SheetState, rows: readonly SheetRow[]): boolean {
  const row = rows.flatMap(({ fields }) => fields).find(({ field }) => field === 'pdFar');
  return row !== undefined && row.notComparable === null && (!settings.covered || row.reading.ok);
}

/** What is not the main thing to do. */
function QuietButton(props: { readonly onClick: () => void; readonly children: ReactNode }) {
  return (
    <button type="button" className="quiet" onClick={props.onClick}>
      {props.children}
    </button>
  );
}

/** The invented wearer is nobody's session. */
function keepNothing(): void {
  // nothing is kept
}

/** Right after the next wearer was begun: the way back to the one before. */
function BeforeBar({ desk, beforeId }: { readonly desk: DeskInHand; readonly beforeId: string }) {
  return (
    <div className="bar screen-bar">
      <p role="status">{words.desk.before}</p>
      <button
        type="button"
        onClick={() => {
          desk.openSession(beforeId);
        }}
      >
        {words.desk.backToBefore}
      </button>
      <QuietButton
        onClick={() => {
          desk.forgetBefore();
          // the bar goes, and the focus with it
          goToFirstReading();
        }}
      >
        {words.desk.dismiss}
      </QuietButton>
    </div>
  );
}

/** Who opens the camera at once should not wait for what only the picture needs: it is loaded so much later. Chosen. */
const PICTURE_PARTS_LATER_MS = 4000;

/** Starts loading the vision parts once the page is idle, so that the first picture does not wait for them. */
function WarmUp() {
  const { vision } = useEquipment();
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const callOff = whenIdle(() => {
      timer = setTimeout(() => {
        // What goes wrong here goes wrong again with the first picture, and is said there.
        vision.warmUp(() => undefined).catch(() => undefined);
      }, PICTURE_PARTS_LATER_MS);
    });
    return () => {
      callOff();
      clearTimeout(timer);
    };
  }, [vision]);
  return null;
}
