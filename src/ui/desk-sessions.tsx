import { useMemo, useState } from 'react';
import { dicomDistances } from '../core/record/dicom-distances.js';
import { writeSessionFile } from '../core/record/session-file.js';
import { binocularDistances } from '../session/binocular-distances.js';
import type { HandOnTools } from '../session/hand-on.js';
import type { ListQuery } from '../session/session-list.js';
import { writeSessionTable } from '../session/session-table.js';
import { useEquipment } from './equipment.js';
import { KeptSessions } from './kept-sessions.js';
import { LanguageChooser } from './language-chooser.js';
import type { DeskInHand } from './use-desk.js';
import { nowText } from './use-session-record.js';

/** The list of this desk's sessions, with the way back to the sheet. */
export function DeskSessions({
  desk,
  query,
  onQuery,
}: {
  readonly desk: DeskInHand;
  readonly query: ListQuery;
  readonly onQuery: (query: ListQuery) => void;
}) {
  const { database, keeper } = useEquipment();
  const tools = useHandOnTools();
  const [isGone, setIsGone] = useState(false);
  const openId = isGone ? null : (keeper.record()?.id ?? null);
  return (
    <KeptSessions
      tools={tools}
      lock={database.lock}
      openId={openId}
      query={query}
      onQuery={onQuery}
      onOpen={(id) => {
        if (id === openId) desk.back();
        else desk.openSession(id);
      }}
      onBegin={desk.begin}
      onRemoved={(ids) => {
        if (openId !== null && ids.includes(openId)) setIsGone(true);
      }}
      onLocked={desk.open}
      footer={<LanguageChooser />}
    />
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
