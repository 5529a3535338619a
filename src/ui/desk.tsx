import { useCallback, useState } from 'react';
import type { AuditAtDesk } from '../session/audit-run.js';
import { WHOLE_LIST } from '../session/session-list.js';
import { useEquipment } from './equipment.js';
import { FailureNote } from './failure-note.js';
import { KeepingBar } from './keeping-bar.js';
import { laterPart } from './later-part.js';
import { LanguageChooser } from './language-chooser.js';
import { words } from './language.js';
import { SheetScreen } from './sheet-screen.js';
import { storeFailureSaying } from './store-sentences.js';
import type { DeskInHand } from './use-desk.js';
import { useDesk } from './use-desk.js';
import { useShortcut } from './use-shortcut.js';

const AnswerDialog = laterPart(async () => (await import('./answer-dialog.js')).AnswerDialog);
const DeskSessions = laterPart(async () => (await import('./desk-sessions.js')).DeskSessions);
const ShortcutsDialog = laterPart(async () => (await import('./shortcuts-dialog.js')).ShortcutsDialog);
const LockScreen = laterPart(async () => (await import('./lock-screen.js')).LockScreen);

/** The whole screen: the sheet of one session, or the list of all; and above either, the answer of a distant wearer. */
export function Desk() {
  const desk = useDesk();
  const [answer, setAnswer] = useState<{ readonly file: File | null; readonly number: number } | null>(null);
  const onAnswer = useCallback((file: File | null) => {
    setAnswer((before) => ({ file, number: (before?.number ?? 0) + 1 }));
  }, []);
  const closeAnswer = useCallback(() => {
    setAnswer(null);
  }, []);
  const [areShortcutsListed, setAreShortcutsListed] = useState(false);
  const listShortcuts = useCallback(() => {
    setAreShortcutsListed(true);
  }, []);
  useShortcut('list', listShortcuts);
  return (
    <>
      <DeskPlace desk={desk} onAnswer={onAnswer} onShortcuts={listShortcuts} />
      {areShortcutsListed && (
        <ShortcutsDialog
          onClose={() => {
            setAreShortcutsListed(false);
          }}
        />
      )}
      {answer !== null && (
        <AnswerDialog key={answer.number} file={answer.file} onOpen={desk.openSession} onClose={closeAnswer} />
      )}
    </>
  );
}

function DeskPlace({
  desk,
  onAnswer,
  onShortcuts,
}: {
  readonly desk: DeskInHand;
  readonly onAnswer: (file: File | null) => void;
  readonly onShortcuts: () => void;
}) {
  const { database, outage } = useEquipment();
  // What the list is narrowed to stays while the page is open.
  const [query, setQuery] = useState(WHOLE_LIST);
  // So does what was found in many records, but not beyond a lock: it names wearers.
  const [audit, setAudit] = useState<AuditAtDesk | null>(null);
  const { place, failure } = desk;
  if (place.kind === 'locked' && audit !== null) setAudit(null);
  const told = failure ?? outage;
  const notice = told === null ? null : <FailureNote saying={storeFailureSaying(told)} />;
  switch (place.kind) {
    case 'opening':
      return (
        <p className="desk-opening" role="status">
          {words.desk.opening}
        </p>
      );
    case 'locked':
      return <LockScreen lock={database.lock} onUnlocked={desk.open} footer={<LanguageChooser />} />;
    case 'list':
      return (
        <DeskSessions
          desk={desk}
          query={query}
          onQuery={setQuery}
          audit={audit}
          onAudit={setAudit}
          onAnswer={onAnswer}
        />
      );
    case 'sheet':
    case 'demo':
      return (
        <SheetScreen
          key={place.opening}
          record={place.record}
          isInvented={place.kind === 'demo'}
          desk={desk}
          onAnswer={onAnswer}
          onShortcuts={onShortcuts}
          notice={
            <>
              {notice}
              {place.kind === 'sheet' && <KeepingBar desk={desk} />}
            </>
          }
        />
      );
  }
}
