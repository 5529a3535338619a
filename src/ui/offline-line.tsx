import type { KeptFiles, OfflinePort } from '../session/offline.js';
import { words } from './language.js';
import { formatNumber } from './numbers.js';
import { useOffline } from './use-offline.js';
import { WorkProgress } from './work-progress.js';

/** Chosen: a million bytes, as browsers and systems count what is downloaded. */
const MB = 1_000_000;

/** Whole megabytes; what is under way never reads as all of it. */
function megabytes(bytes: number, round: (value: number) => number): string {
  return formatNumber(round(bytes / MB), 0);
}

/** The quiet line at the end of the page: whether it works without a network, and how far that has come. */
export function OfflineLine({ offline }: { readonly offline: OfflinePort }) {
  const { files } = useOffline(offline);
  if (files.kind === 'unknown') return null;
  return (
    <aside className="offline" aria-label={words.offline.part}>
      <OfflineFiles files={files} onGoOn={offline.goOn} />
    </aside>
  );
}

function OfflineFiles({
  files,
  onGoOn,
}: {
  readonly files: Exclude<KeptFiles, { readonly kind: 'unknown' }>;
  readonly onGoOn: () => void;
}) {
  if (files.kind === 'complete') return <p>{words.offline.complete}</p>;
  const [kept, all] = [megabytes(files.keptBytes, Math.floor), megabytes(files.allBytes, Math.ceil)];
  if (files.kind === 'fetching') {
    return <WorkProgress what={words.offline.fetching(kept, all)} share={files.keptBytes / files.allBytes} />;
  }
  return (
    <p>
      {words.offline.incomplete(kept, all)} {words.offline.why[files.why]}{' '}
      {files.why !== 'other-build' && (
        <button type="button" className="quiet" onClick={onGoOn}>
          {words.offline.goOn}
        </button>
      )}
    </p>
  );
}
