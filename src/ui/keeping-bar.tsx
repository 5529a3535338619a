import { useSyncExternalStore } from 'react';
import { downloadFile } from './download-file.js';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import { storeFailureSaying } from './store-sentences.js';
import type { DeskInHand } from './use-desk.js';
import { nowText } from './now-text.js';
import { useFault } from './use-fault.js';

/** What is to be said, and done, where the session on the sheet is not kept as it stands. Nothing where it is. */
export function KeepingBar({ desk }: { readonly desk: DeskInHand }) {
  const { keeper } = useEquipment();
  const keeping = useSyncExternalStore(keeper.subscribe, keeper.keeping);
  const onFault = useFault();
  const record = keeper.record();
  const isContested = keeping.kind === 'not-kept' && keeping.failure.kind === 'changed-elsewhere';
  const save = async (): Promise<void> => {
    if (record === null) return;
    // It came with the database.
    const { writeSessionFile } = await import('../core/record/session-file.js');
    const file = writeSessionFile([record], { writtenAt: nowText() });
    downloadFile(file, `glabella-session-${record.begunAt.slice(0, 10)}.json`, 'application/json');
  };
  if (isContested || desk.elsewhere !== null) {
    return (
      <div className="bar bar-warning" role="alert">
        <p>
          <strong>{desk.elsewhere === 'removed' ? words.desk.removedElsewhere : words.desk.contested}</strong>{' '}
          {isContested && words.desk.contestedMore}
        </p>
        {desk.elsewhere === 'removed' ? (
          <button type="button" onClick={desk.begin}>
            {words.desk.nextWearer}
          </button>
        ) : (
          <button type="button" onClick={desk.showStored}>
            {words.desk.showOther}
          </button>
        )}
        {record !== null && (
          <button
            type="button"
            className="quiet"
            onClick={() => {
              desk.openAsNew({ ...record, id: crypto.randomUUID(), changedAt: nowText() });
            }}
          >
            {words.desk.keepMine}
          </button>
        )}
      </div>
    );
  }
  if (keeping.kind !== 'not-kept') return null;
  const { what, next } = storeFailureSaying(keeping.failure);
  const { leavingFor } = desk;
  return (
    <div className="bar bar-warning" role="alert">
      <p>
        <strong>{words.desk.notKept}</strong> {what} {next} {leavingFor !== null && words.desk.leaving}
      </p>
      <button
        type="button"
        onClick={() => {
          save().catch(onFault);
        }}
      >
        {words.desk.saveAsFile}
      </button>
      <button type="button" className="quiet" onClick={keeper.tryAgain}>
        {words.desk.tryAgain}
      </button>
      {leavingFor !== null && (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            desk.stay();
            leavingFor();
          }}
        >
          {words.desk.leaveAllTheSame}
        </button>
      )}
    </div>
  );
}
