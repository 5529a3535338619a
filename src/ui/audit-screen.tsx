import type { ReactNode } from 'react';
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import type { SessionSummary } from '../core/record/session-record.js';
import type { AuditRun, AuditState, AuditSubject } from '../session/audit-run.js';
import type { SessionStore } from '../session/session-store.js';
import { AuditProgress } from './audit-progress.js';
import { AuditRefusal } from './audit-refusal.js';
import { AuditResult } from './audit-result.js';
import { AuditSource } from './audit-source.js';
import { words } from './language.js';
import { useFault } from './use-fault.js';
import { useKeptFocus } from './use-kept-focus.js';

/**
 * Many records looked through at once: a table that is dropped or chosen, or the sessions that are kept here. What was found stays
 * in `run`, so that who opens a session finds the list again as it was.
 */
export function AuditScreen(props: {
  readonly run: AuditRun;
  readonly store: SessionStore;
  /** the session on the sheet; null where there is none */
  readonly openId: string | null;
  readonly onOpen: (sessionId: string) => void;
  readonly onBack: () => void;
  readonly footer?: ReactNode;
}) {
  const { run, openId, onOpen } = props;
  const state = useSyncExternalStore(run.subscribe, run.now, run.now);
  const { stage } = state;
  // The outcome is told before its list is drawn.
  const rows = useDeferredValue(state.rows);
  const heading = useRef<HTMLHeadingElement>(null);
  const main = useRef<HTMLElement>(null);
  const kept = useKeptSummaries(props.store);
  const onFault = useFault();
  useKeptFocus(heading);
  useFocusOfAudit({ heading, main, stage: stage.kind, openId });

  const start = useCallback(
    (subject: AuditSubject) => {
      run.start(subject).catch(onFault);
    },
    [run, onFault],
  );
  const isRunning = stage.kind === 'running';
  const startFile = (file: File | undefined): void => {
    if (file !== undefined && !isRunning) start({ kind: 'table', file, name: file.name });
  };
  const summaries = useMemo(
    () =>
      new Map(
        [...(state.subject?.kind === 'sessions' ? state.subject.summaries : []), ...(kept ?? [])].map((one) => [
          one.id,
          one,
        ]),
      ),
    [state.subject, kept],
  );

  const keptIds = useMemo(() => (kept === null ? null : new Set(kept.map(({ id }) => id))), [kept]);

  return (
    <>
      <header className="top">
        <div className="top-name">
          <h1>{words.header.name}</h1>
          <p>{words.header.whatItIs}</p>
        </div>
        <nav className="top-actions" aria-label={words.audit.actions}>
          <button type="button" className="quiet" onClick={props.onBack}>
            {words.audit.toSessions}
          </button>
          {openId !== null && (
            <button
              type="button"
              className="quiet"
              onClick={() => {
                onOpen(openId);
              }}
            >
              {words.audit.toSheet}
            </button>
          )}
        </nav>
      </header>
      <main
        ref={main}
        className="sessions audit"
        onDragOver={(event) => {
          if (event.dataTransfer.types.includes('Files')) event.preventDefault();
        }}
        onDrop={(event) => {
          if (event.dataTransfer.files.length === 0) return;
          event.preventDefault();
          startFile(event.dataTransfer.files[0]);
        }}
      >
        <h2 tabIndex={-1} ref={heading}>
          {words.audit.heading}
        </h2>
        {stage.kind === 'failed' && <AuditRefusal failure={stage.failure} />}
        {!isRunning && (
          <AuditSource
            isFirst={stage.kind === 'idle'}
            isExplained={stage.kind === 'idle' || stage.kind === 'failed'}
            kept={kept}
            onFile={startFile}
            onStart={start}
          />
        )}
        {isRunning && state.subject !== null && (
          <AuditProgress running={stage} subject={state.subject} onStop={run.stop} />
        )}
        {(stage.kind === 'done' || stage.kind === 'stopped') && (
          <AuditResult
            run={run}
            state={state}
            rows={rows}
            summaries={summaries}
            keptIds={keptIds}
            openId={openId}
            onOpen={onOpen}
          />
        )}
      </main>
      {props.footer !== undefined && <footer className="bottom">{props.footer}</footer>}
    </>
  );
}

/** The kept sessions that can be read; null until they are, or where the store does not answer. */
function useKeptSummaries(store: SessionStore): readonly SessionSummary[] | null {
  const [kept, setKept] = useState<readonly SessionSummary[] | null>(null);
  const [asked, setAsked] = useState(0);
  const onFault = useFault();
  useEffect(
    () =>
      store.onChangedElsewhere(() => {
        setAsked((before) => before + 1);
      }),
    [store],
  );
  useEffect(() => {
    let isWanted = true;
    store.summaries().then((answer) => {
      if (isWanted) setKept(answer.ok ? answer.value.summaries : null);
    }, onFault);
    return () => {
      isWanted = false;
    };
  }, [store, asked, onFault]);
  return kept;
}

/**
 * Who comes here finds the focus on the heading, or on the row of the session that was opened from here; who waited for an audit, on
 * what came of it.
 */
function useFocusOfAudit(from: {
  readonly heading: React.RefObject<HTMLElement | null>;
  readonly main: React.RefObject<HTMLElement | null>;
  readonly stage: AuditState['stage']['kind'];
  readonly openId: string | null;
}): void {
  const { heading, main, stage, openId } = from;
  const before = useRef<typeof stage | null>(null);
  useEffect(() => {
    const last = before.current;
    before.current = stage;
    if (last === null) {
      const row = openId === null ? null : main.current?.querySelector(`[data-session="${CSS.escape(openId)}"]`);
      if (row instanceof HTMLElement) row.focus();
      else {
        heading.current?.focus();
        window.scrollTo(0, 0);
      }
    } else if (last === 'running' && stage !== 'running') {
      main.current?.querySelector<HTMLElement>('.audit-outcome')?.focus();
    }
  }, [heading, main, stage, openId]);
}
