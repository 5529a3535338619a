import { useMemo, useState } from 'react';
import { dicomDistances } from '../core/record/dicom-distances.js';
import { writeSessionFile } from '../core/record/session-file.js';
import { binocularDistances } from '../session/binocular-distances.js';
import type { HandOnTools } from '../session/hand-on.js';
import type { ListQuery } from '../session/session-list.js';
import { writeSessionTable } from '../session/session-table.js';
import { useEquipment } from './equipment.js';
import { InvitationsDialog } from './invitations-dialog.js';
import { KeptSessions } from './kept-sessions.js';
import { LanguageChooser } from './language-chooser.js';
import { words } from './language.js';
import { laterPart } from './later-part.js';
import type { DeskInHand } from './use-desk.js';
import { nowText } from './now-text.js';

const OverSessionsScreen = laterPart(async () => (await import('./over-sessions-screen.js')).OverSessionsScreen);

/** The list of this desk's sessions, with the way back to the sheet. */
export function DeskSessions({
  desk,
  query,
  onQuery,
  onAnswer,
}: {
  readonly desk: DeskInHand;
  readonly query: ListQuery;
  readonly onQuery: (query: ListQuery) => void;
  /** the answer of a distant wearer is to be taken in; null where it is still to be chosen */
  readonly onAnswer: (file: File | null) => void;
}) {
  const { database, keeper } = useEquipment();
  const tools = useHandOnTools();
  const [isGone, setIsGone] = useState(false);
  const [isInviting, setIsInviting] = useState(false);
  const [isComparing, setIsComparing] = useState(false);
  const openId = isGone ? null : (keeper.record()?.id ?? null);
  const openSession = (id: string): void => {
    if (id === openId) desk.back();
    else desk.openSession(id);
  };
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
