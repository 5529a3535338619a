import { useMemo, useState } from 'react';
import type { SessionSummary } from '../core/record/session-record.js';
import { dicomDistances } from '../core/record/dicom-distances.js';
import { writeSessionFile } from '../core/record/session-file.js';
import type { AuditAtDesk } from '../session/audit-run.js';
import { createAuditRun } from '../session/audit-run.js';
import { binocularDistances } from '../session/binocular-distances.js';
import type { HandOnTools } from '../session/hand-on.js';
import type { ListQuery } from '../session/session-list.js';
import { writeSessionTable } from '../session/session-table.js';
import { recordNaming } from './audit-sentences.js';
import { useEquipment } from './equipment.js';
import { InvitationsDialog } from './invitations-dialog.js';
import { KeptSessions } from './kept-sessions.js';
import { LanguageChooser } from './language-chooser.js';
import { words } from './language.js';
import { laterPart } from './later-part.js';
import type { DeskInHand } from './use-desk.js';
import { nowText } from './now-text.js';
import { useFault } from './use-fault.js';

const AuditScreen = laterPart(async () => (await import('./audit-screen.js')).AuditScreen);
const OverSessionsScreen = laterPart(async () => (await import('./over-sessions-screen.js')).OverSessionsScreen);

/** The list of this desk's sessions, with the way back to the sheet. */
export function DeskSessions({
  desk,
  query,
  onQuery,
  audit,
  onAudit,
  onAnswer,
}: {
  readonly desk: DeskInHand;
  readonly query: ListQuery;
  readonly onQuery: (query: ListQuery) => void;
  /** what is looked through, or was; null where nothing was yet */
  readonly audit: AuditAtDesk | null;
  readonly onAudit: (audit: AuditAtDesk) => void;
  /** the answer of a distant wearer is to be taken in; null where it is still to be chosen */
  readonly onAnswer: (file: File | null) => void;
}) {
  const { audit: port, catalogue, database, keeper } = useEquipment();
  const tools = useHandOnTools();
  const onFault = useFault();
  const [isGone, setIsGone] = useState(false);
  const [isInviting, setIsInviting] = useState(false);
  const [isComparing, setIsComparing] = useState(false);
  const openId = isGone ? null : (keeper.record()?.id ?? null);
  const openSession = (id: string): void => {
    if (id === openId) desk.back();
    else desk.openSession(id);
  };
  const lookThrough = (summaries: readonly SessionSummary[] | null): void => {
    const run =
      audit?.run ??
      createAuditRun({
        port,
        sessions: database.sessions,
        catalogue,
        nameOf: (record, summary) => {
          const { name, where } = recordNaming(record, summary, new Date());
          return summary === null ? name : `${name} ${where}`;
        },
        clock: () => new Date(),
      });
    if (summaries !== null) run.start({ kind: 'sessions', summaries, isPart: true }).catch(onFault);
    onAudit({ run, isShown: true });
  };
  if (audit?.isShown === true) {
    return (
      <AuditScreen
        run={audit.run}
        store={database.sessions}
        openId={openId}
        onOpen={openSession}
        onBack={() => {
          onAudit({ ...audit, isShown: false });
        }}
        footer={<LanguageChooser />}
      />
    );
  }
  if (isComparing) {
    return (
      <OverSessionsScreen
        store={database.sessions}
        openId={openId}
        onOpen={openSession}
        onBack={() => {
          setIsComparing(false);
        }}
        footer={<LanguageChooser />}
      />
    );
  }
  return (
    <>
      <KeptSessions
        tools={tools}
        lock={database.lock}
        openId={openId}
        query={query}
        onQuery={onQuery}
        onOpen={openSession}
        onBegin={desk.begin}
        onLookThrough={lookThrough}
        onRemoved={(ids) => {
          if (openId !== null && ids.includes(openId)) setIsGone(true);
        }}
        onLocked={desk.open}
        onOther={onAnswer}
        actions={
          <>
            <button
              type="button"
              className="quiet"
              onClick={() => {
                setIsComparing(true);
              }}
            >
              {words.overSessions.open}
            </button>
            <button
              type="button"
              className="quiet"
              onClick={() => {
                setIsInviting(true);
              }}
            >
              {words.invitations.open}
            </button>
          </>
        }
        footer={<LanguageChooser />}
      />
      {isInviting && (
        <InvitationsDialog
          onAnswer={() => {
            onAnswer(null);
          }}
          onClose={() => {
            setIsInviting(false);
          }}
        />
      )}
    </>
  );
}

function useHandOnTools(): HandOnTools {
  const { catalogue, database, sealing } = useEquipment();
  return useMemo(
    () => ({
      sessions: database.sessions,
      sealing,
      writers: {
        sessionFile: (records) =>
          writeSessionFile(records, {
            writtenAt: nowText(),
            dicomOf: (record) => dicomDistances(binocularDistances(record, catalogue)),
          }),
        table: (records, decimalSign) => writeSessionTable(records, catalogue, decimalSign),
      },
      fresh: () => ({ id: crypto.randomUUID(), at: nowText() }),
    }),
    [catalogue, database, sealing],
  );
}
