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
import { useDesk } from './use-desk.js';

const DeskSessions = laterPart(async () => (await import('./desk-sessions.js')).DeskSessions);
const LockScreen = laterPart(async () => (await import('./lock-screen.js')).LockScreen);

/** The whole screen: the sheet of one session, or the list of all. */
export function Desk() {
  const { database } = useEquipment();
  const desk = useDesk();
  // What the list is narrowed to stays while the page is open.
  const [query, setQuery] = useState(WHOLE_LIST);
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
      return <LockScreen lock={database.lock} onUnlocked={desk.open} footer={<LanguageChooser />} />;
    case 'list':
      return <DeskSessions desk={desk} query={query} onQuery={setQuery} />;
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
