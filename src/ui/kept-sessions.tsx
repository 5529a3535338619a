import type { ReactNode } from 'react';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { SessionSummary } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import type { HandOnTools } from '../session/hand-on.js';
import type { ListQuery } from '../session/session-list.js';
import { indexSessions, listSessions, WHOLE_LIST } from '../session/session-list.js';
import type { SessionStore, StoreFailure, StoreLock } from '../session/session-store.js';
import { BringInDialog } from './bring-in-dialog.js';
import { FailureNote } from './failure-note.js';
import { HandOnDialog } from './hand-on-dialog.js';
import { spokenTag, words } from './language.js';
import { LockDialog } from './lock-dialog.js';
import { SessionsRemoval, UnreadableRemoval } from './sessions-removal.js';
import { SessionsTable, visitShown } from './sessions-table.js';
import { SessionsTools } from './sessions-tools.js';
import { UnreadableSessions } from './sessions-unreadable.js';
import { storeFailureSaying } from './store-sentences.js';
import { useFault } from './use-fault.js';
import { useKeptFocus } from './use-kept-focus.js';

/** Rows that are shown at first and more at a time: as many as come at once, and more than anybody reads through. */
const PAGE_ROWS = 50;

/** What is listed and when that was; days are counted from then. */
type Listed = Result<{ readonly summaries: readonly SessionSummary[]; readonly unreadable: number }, StoreFailure> & {
  readonly at: Date;
};

type OpenDialog =
  | { readonly kind: 'removal'; readonly sessions: readonly SessionSummary[] }
  | { readonly kind: 'unreadable-removal'; readonly ids: readonly string[] }
  /** `file` is null where one is still to be chosen */
  | { readonly kind: 'bring-in'; readonly file: File | null }
  | { readonly kind: 'lock' }
  | null;

/**
 * The list of kept sessions with all that is done from it: handing on, bringing in, deleting, locking. Whoever shows it has kept
 * what is on the sheet before.
 */
export function KeptSessions(props: {
  readonly tools: HandOnTools;
  readonly lock: StoreLock;
  /** the session on the sheet; null where there is none */
  readonly openId: string | null;
  /** what the list is narrowed to and sorted by; held outside, so that it is the same when one comes back */
  readonly query: ListQuery;
  readonly onQuery: (query: ListQuery) => void;
  readonly onOpen: (id: string) => void;
  readonly onBegin: () => void;
  /** records are to be looked through: these sessions at once, or where null what is chosen then */
  readonly onLookThrough: (sessions: readonly SessionSummary[] | null) => void;
  /** sessions were deleted; the one on the sheet may be among them */
  readonly onRemoved: (ids: readonly string[]) => void;
  /** a file that no passphrase opens, as the answers of distant wearers are */
  readonly onOther: (file: File) => void;
  /** nothing can be read any more until the passphrase was typed */
  readonly onLocked: () => void;
  /** what else stands in the head of the page */
  readonly actions?: ReactNode;
  /** what stands between the head and the list, such as a notice of the store */
  readonly notice?: ReactNode;
  readonly footer?: ReactNode;
}) {
  const { openId, query, onQuery } = props;
  const store = props.tools.sessions;
  const heading = useRef<HTMLHeadingElement>(null);
  const search = useRef<HTMLInputElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const [listed, reload] = useListed(store);
  const [selected, setSelected] = useState<ReadonlySet<string>>(new Set());
  const [rows, setRows] = useState(PAGE_ROWS);
  const [dialog, setDialog] = useState<OpenDialog>(null);
  /** opens above the other dialogs */
  const [handingOn, setHandingOn] = useState<readonly string[] | 'all' | null>(null);
  const [happened, setHappened] = useState<string | null>(null);
  useKeptFocus(heading);

  // What was made for one language is made anew for another.
  const tag = spokenTag;
  const now = listed?.at ?? null;
  const summaries = listed?.ok === true ? listed.value.summaries : NO_SESSIONS;
  const indexed = useMemo(
    () => (now === null || tag === '' ? [] : indexSessions(summaries, (summary) => visitShown(summary, now))),
    [summaries, now, tag],
  );
  const compareTexts = useMemo(() => new Intl.Collator(tag, { numeric: true }).compare, [tag]);
  const { sessions, counts } = useMemo(
    () => listSessions(indexed, query, compareTexts),
    [indexed, query, compareTexts],
  );
  // What is selected but not listed any more is never touched: nobody sees it.
  const chosen = useMemo(() => sessions.filter(({ id }) => selected.has(id)), [sessions, selected]);
  const chosenIds = useMemo(() => new Set(chosen.map(({ id }) => id)), [chosen]);

  const openPlace = sessions.findIndex(({ id }) => id === openId);
  const shownRows = useFocusOnOpen({ heading, list, openId, openPlace, isListed: listed !== null, rows, setRows });

  const changeQuery = (changed: ListQuery): void => {
    setRows(PAGE_ROWS);
    setHappened(null);
    onQuery(changed);
  };
  const onSelect = useCallback((id: string, isSelected: boolean) => {
    setSelected((before) => {
      const after = new Set(before);
      if (isSelected) after.add(id);
      else after.delete(id);
      return after;
    });
  }, []);
  const closeDialog = (): void => {
    setDialog(null);
  };
  const afterRemoval = (said: string): void => {
    setDialog(null);
    setHappened(said);
    reload();
    // The button that was pressed goes with what was selected.
    setTimeout(() => heading.current?.focus(), 0);
  };

  return (
    <>
      <header className="top">
        <div className="top-name">
          <h1>{words.header.name}</h1>
          <p>{words.header.whatItIs}</p>
        </div>
        <nav className="top-actions" aria-label={words.sessions.actions}>
          {props.actions}
          <button
            type="button"
            className="quiet"
            onClick={() => {
              setDialog({ kind: 'lock' });
            }}
          >
            {words.lock.open}
          </button>
          {openId !== null && (
            <button
              type="button"
              className="quiet"
              onClick={() => {
                props.onOpen(openId);
              }}
            >
              {words.sessions.backToSheet}
            </button>
          )}
        </nav>
      </header>
      {props.notice}
      <main
        className="sessions"
        onDragOver={(event) => {
          if (event.dataTransfer.types.includes('Files')) event.preventDefault();
        }}
        onDrop={(event) => {
          const file = event.dataTransfer.files[0];
          if (file === undefined) return;
          event.preventDefault();
          setDialog({ kind: 'bring-in', file });
        }}
      >
        <div className="sessions-head">
          <h2 tabIndex={-1} ref={heading}>
            {words.sessions.heading}
          </h2>
          <div className="actions">
            <button type="button" className="main-action" onClick={props.onBegin}>
              {words.sessions.begin}
            </button>
            <button
              type="button"
              onClick={() => {
                setDialog({ kind: 'bring-in', file: null });
              }}
            >
              {words.sessions.bringIn}
            </button>
            <button
              type="button"
              onClick={() => {
                props.onLookThrough(null);
              }}
            >
              {words.audit.open}
            </button>
            {summaries.length > 0 && (
              <button
                type="button"
                onClick={() => {
                  setHandingOn('all');
                }}
              >
                {words.sessions.handOnAll}
              </button>
            )}
          </div>
        </div>
        {listed?.ok === false && <FailureNote saying={storeFailureSaying(listed.failure)} />}
        {listed?.ok === true && listed.value.unreadable > 0 && (
          <UnreadableSessions
            store={store}
            count={listed.value.unreadable}
            onRemove={(ids) => {
              setDialog({ kind: 'unreadable-removal', ids });
            }}
          />
        )}
        {summaries.length > 0 && (
          <SessionsTools
            query={query}
            onQuery={changeQuery}
            counts={counts}
            search={search}
            onIntoList={() => {
              list.current?.querySelector<HTMLElement>('.session-open')?.focus();
            }}
          />
        )}
        <p className="sessions-said" role="status">
          {happened !== null && `${happened} `}
          {listed === null
            ? words.sessions.reading
            : listed.ok && (summaries.length === 0 ? words.sessions.none : countSentence(sessions, summaries))}
        </p>
        {summaries.length > 0 && sessions.length === 0 && (
          <p className="sessions-none">
            {words.sessions.noneFound}{' '}
            <button
              type="button"
              className="quiet"
              onClick={() => {
                changeQuery({ ...WHOLE_LIST, sort: query.sort });
                search.current?.focus();
              }}
            >
              {words.sessions.showAll}
            </button>
          </p>
        )}
        {sessions.length > 0 && now !== null && (
          <div ref={list}>
            <SessionsTable
              sessions={sessions.slice(0, shownRows)}
              listedCount={sessions.length}
              now={now}
              openId={openId}
              sort={query.sort}
              onSort={(sort) => {
                changeQuery({ ...query, sort });
              }}
              selected={chosenIds}
              onSelect={onSelect}
              onSelectAll={(isSelected) => {
                setSelected(new Set(isSelected ? sessions.map(({ id }) => id) : []));
              }}
              onOpen={props.onOpen}
            />
            {sessions.length > shownRows && (
              <button
                type="button"
                className="sessions-more"
                onClick={() => {
                  const next = sessions[shownRows]?.id;
                  setRows(shownRows + PAGE_ROWS);
                  setTimeout(() => {
                    if (next !== undefined) rowButton(list.current, next)?.focus();
                  }, 0);
                }}
              >
                {words.sessions.showMore(Math.min(PAGE_ROWS, sessions.length - shownRows))}
              </button>
            )}
          </div>
        )}
        {chosen.length > 0 && (
          <div className="sessions-selection" role="region" aria-label={words.sessions.selection}>
            <strong role="status">{words.sessions.selected(chosen.length)}</strong>
            <div className="actions">
              <button
                type="button"
                onClick={() => {
                  setHandingOn([...chosenIds]);
                }}
              >
                {words.sessions.handOn}
              </button>
              <button
                type="button"
                onClick={() => {
                  props.onLookThrough(chosen);
                }}
              >
                {words.audit.openSelected}
              </button>
              <button
                type="button"
                onClick={() => {
                  setDialog({ kind: 'removal', sessions: chosen });
                }}
              >
                {words.sessions.remove}
              </button>
              <button
                type="button"
                className="quiet"
                onClick={() => {
                  setSelected(new Set());
                }}
              >
                {words.sessions.letGo}
              </button>
            </div>
          </div>
        )}
      </main>
      {props.footer !== undefined && <footer className="bottom">{props.footer}</footer>}
      {dialog?.kind === 'removal' && now !== null && (
        <SessionsRemoval
          store={store}
          sessions={dialog.sessions}
          now={now}
          onHandOn={() => {
            setHandingOn(dialog.sessions.map(({ id }) => id));
          }}
          onRemoved={(ids) => {
            setSelected(new Set());
            afterRemoval(words.sessions.removal.done(ids.length));
            props.onRemoved(ids);
          }}
          onClose={closeDialog}
        />
      )}
      {dialog?.kind === 'unreadable-removal' && (
        <UnreadableRemoval
          store={store}
          ids={dialog.ids}
          onRemoved={() => {
            afterRemoval(words.sessions.removal.unreadableDone);
          }}
          onClose={closeDialog}
        />
      )}
      {dialog?.kind === 'bring-in' && (
        <BringInDialog
          tools={props.tools}
          file={dialog.file}
          onBrought={reload}
          onOther={props.onOther}
          onClose={closeDialog}
        />
      )}
      {dialog?.kind === 'lock' && (
        <LockDialog
          lock={props.lock}
          onLocked={props.onLocked}
          onHandOn={() => {
            setHandingOn('all');
          }}
          onClose={closeDialog}
        />
      )}
      {handingOn !== null && (
        <HandOnDialog
          tools={props.tools}
          ids={handingOn}
          onClose={() => {
            setHandingOn(null);
          }}
        />
      )}
    </>
  );
}

const NO_SESSIONS: readonly SessionSummary[] = [];

function countSentence(sessions: readonly SessionSummary[], all: readonly SessionSummary[]): string {
  return sessions.length === all.length
    ? words.sessions.count(all.length)
    : words.sessions.countOf(sessions.length, all.length);
}

function rowButton(list: HTMLElement | null, id: string): HTMLElement | null {
  return list?.querySelector<HTMLElement>(`.session-open[data-session="${CSS.escape(id)}"]`) ?? null;
}

/** The sessions of the store, read anew whenever another window changed some, and when that is asked for. */
function useListed(store: SessionStore): readonly [Listed | null, () => void] {
  const [listed, setListed] = useState<Listed | null>(null);
  const [asked, setAsked] = useState(0);
  const onFault = useFault();
  const reload = useCallback(() => {
    setAsked((before) => before + 1);
  }, []);
  useEffect(() => store.onChangedElsewhere(reload), [store, reload]);
  useEffect(() => {
    let isWanted = true;
    store.summaries().then((answer) => {
      if (isWanted) setListed({ ...answer, at: new Date() });
    }, onFault);
    return () => {
      isWanted = false;
    };
  }, [store, asked, onFault]);
  return [listed, reload];
}

/**
 * Who comes from the sheet finds the focus on its row, as it was left; who comes from nowhere, on the heading. Only once, and
 * only while nothing else has the focus.
 *
 * @returns how many rows to show, so that this row is among them
 */
function useFocusOnOpen(from: {
  readonly heading: React.RefObject<HTMLElement | null>;
  readonly list: React.RefObject<HTMLElement | null>;
  readonly openId: string | null;
  readonly openPlace: number;
  readonly isListed: boolean;
  readonly rows: number;
  readonly setRows: (rows: number) => void;
}): number {
  const { heading, list, openId, openPlace, isListed, rows, setRows } = from;
  const isDone = useRef(false);
  const needed = openPlace < rows ? rows : Math.ceil((openPlace + 1) / PAGE_ROWS) * PAGE_ROWS;
  const [isFirst, setIsFirst] = useState(true);
  const shown = isFirst ? needed : rows;
  useEffect(() => {
    if (!isListed || isDone.current) return;
    isDone.current = true;
    setRows(shown);
    setIsFirst(false);
    const { activeElement } = document;
    if (activeElement !== null && activeElement !== document.body) return;
    const row = openId === null ? null : rowButton(list.current, openId);
    (row ?? heading.current)?.focus();
  }, [heading, list, isListed, openId, setRows, shown]);
  return shown;
}
