import type { ReactNode } from 'react';
import { useState } from 'react';
import type { HandOnTools } from '../session/hand-on.js';
import type { ListQuery } from '../session/session-list.js';
import type { StoreLock } from '../session/session-store.js';
import { BringInDialog } from './bring-in-dialog.js';
import { HandOnDialog } from './hand-on-dialog.js';
import { words } from './language.js';
import { LockDialog } from './lock-dialog.js';
import { SessionsScreen } from './sessions-screen.js';

/** The list of kept sessions with all that is done from it: handing on, bringing in, deleting, locking. */
export function KeptSessions(props: {
  readonly tools: HandOnTools;
  readonly lock: StoreLock;
  /** the session on the sheet; null where there is none */
  readonly openId: string | null;
  /** counts up where sessions came in by another way than this list */
  readonly refresh?: number;
  readonly query: ListQuery;
  readonly onQuery: (query: ListQuery) => void;
  readonly onOpen: (id: string) => void;
  readonly onBegin: () => void;
  /** sessions were deleted; the one on the sheet may be among them */
  readonly onRemoved: (ids: readonly string[]) => void;
  /** a file that no passphrase opens, as the answers of distant wearers are */
  readonly onOther?: (file: File) => void;
  /** nothing can be read any more until the passphrase was typed */
  readonly onLocked: () => void;
  readonly actions?: ReactNode;
  readonly notice?: ReactNode;
  readonly footer?: ReactNode;
}) {
  const { tools, lock, refresh = 0 } = props;
  const [handingOn, setHandingOn] = useState<readonly string[] | 'all' | null>(null);
  const [bringing, setBringing] = useState<{ readonly file: File | null } | null>(null);
  const [isLocking, setIsLocking] = useState(false);
  const [broughtCount, setBroughtCount] = useState(0);
  return (
    <>
      <SessionsScreen
        sessions={tools.sessions}
        openId={props.openId}
        refresh={refresh + broughtCount}
        query={props.query}
        onQuery={props.onQuery}
        onOpen={props.onOpen}
        onBegin={props.onBegin}
        onRemoved={props.onRemoved}
        onHandOn={setHandingOn}
        onBringIn={(file) => {
          setBringing({ file });
        }}
        actions={
          <>
            {props.actions}
            <button
              type="button"
              className="quiet"
              onClick={() => {
                setIsLocking(true);
              }}
            >
              {words.lock.open}
            </button>
          </>
        }
        notice={props.notice}
        footer={props.footer}
      />
      {bringing !== null && (
        <BringInDialog
          tools={tools}
          file={bringing.file}
          onBrought={() => {
            setBroughtCount((before) => before + 1);
          }}
          onOther={props.onOther}
          onClose={() => {
            setBringing(null);
          }}
        />
      )}
      {isLocking && (
        <LockDialog
          lock={lock}
          onChanged={() => undefined}
          onLocked={props.onLocked}
          onHandOn={() => {
            setHandingOn('all');
          }}
          onClose={() => {
            setIsLocking(false);
          }}
        />
      )}
      {handingOn !== null && (
        <HandOnDialog
          tools={tools}
          ids={handingOn}
          onClose={() => {
            setHandingOn(null);
          }}
        />
      )}
    </>
  );
}
