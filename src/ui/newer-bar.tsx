import type { OfflinePort } from '../session/offline.js';
import { words } from './language.js';
import { useOffline } from './use-offline.js';

/** Says that a newer version waits, and takes it when the user wants it; never by itself. */
export function NewerBar({ offline }: { readonly offline: OfflinePort }) {
  const { newer } = useOffline(offline);
  // The place is there before the words, so that a screen reader hears them come.
  return (
    <div role="status">
      {newer !== 'none' && (
        <div className="bar screen-bar">
          <p>
            <strong>{words.offline.newer[newer]}</strong> {words.offline.newer.whatGoes}
          </p>
          <button type="button" onClick={offline.takeNewer}>
            {words.offline.newer.take}
          </button>
        </div>
      )}
    </div>
  );
}
