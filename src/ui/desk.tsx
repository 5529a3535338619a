import { useState } from 'react';
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

const SessionsScreen = laterPart(async () => (await import('./sessions-screen.js')).SessionsScreen);

/** The whole screen: the sheet of one session, or the list of all. */
export function Desk() {
  const desk = useDesk();
  const { place, failure } = desk;
  const notice = failure === null ? null : <FailureNote saying={storeFailureSaying(failure)} />;
  switch (place.kind) {
    case 'opening':
      return (
        <p className="desk-opening" role="status">
          {words.desk.opening}
        </p>
      );
    case 'locked':
      return <LockedDesk desk={desk} />;
    case 'list':
      return <ListOfSessions desk={desk} />;
    case 'sheet':
    case 'demo':
      return (
        <SheetScreen
          key={place.opening}
          record={place.record}
          isInvented={place.kind === 'demo'}
          desk={desk}
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

/** The list, with the way back to the sheet. What it is narrowed to stays while the page is open. */
function ListOfSessions({ desk }: { readonly desk: DeskInHand }) {
  const { database, keeper } = useEquipment();
  const [query, setQuery] = useState(WHOLE_LIST);
  const openId = keeper.record()?.id ?? null;
  return (
    <SessionsScreen
      sessions={database.sessions}
      openId={openId}
      query={query}
      onQuery={setQuery}
      onOpen={(id) => {
        if (id === openId) desk.back();
        else desk.openSession(id);
      }}
      onBegin={desk.begin}
      onRemoved={() => undefined}
      onHandOn={() => undefined}
      onBringIn={() => undefined}
      footer={<LanguageChooser />}
    />
  );
}

function LockedDesk({ desk }: { readonly desk: DeskInHand }) {
  return (
    <button type="button" onClick={desk.open}>
      {words.desk.opening}
    </button>
  );
}
