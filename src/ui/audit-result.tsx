import { useCallback, useRef } from 'react';
import type { SessionSummary } from '../core/record/session-record.js';
import { WHOLE_AUDIT } from '../session/audit-list.js';
import type { AuditRun, AuditState, AuditView } from '../session/audit-run.js';
import { AuditPages } from './audit-pages.js';
import { AuditSaving } from './audit-saving.js';
import { auditResult, auditSubject } from './audit-sentences.js';
import { AuditTable } from './audit-table.js';
import { AuditTools } from './audit-tools.js';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import { useLanguage } from './speaking.js';
import { PAGE_ROWS, useAuditList } from './use-audit-list.js';

/** What an audit found: the flagged records, narrowed and sorted as wished, page by page. */
export function AuditResult(props: {
  readonly run: AuditRun;
  /** of `run`, now */
  readonly state: AuditState;
  /** those of `state`, or those before it until there is time to draw these */
  readonly rows: AuditState['rows'];
  /** of kept sessions, by their ids */
  readonly summaries: ReadonlyMap<string, SessionSummary>;
  /** what can still be opened; null where that is not known */
  readonly keptIds: ReadonlySet<string> | null;
  /** the session on the sheet; null where there is none */
  readonly openId: string | null;
  readonly onOpen: (sessionId: string) => void;
}) {
  const { run, state, rows, summaries } = props;
  const { stage, subject, unreadable, view } = state;
  const { catalogue } = useEquipment();
  const { tag } = useLanguage();
  const list = useAuditList(rows, view, catalogue, tag);
  const body = useRef<HTMLDivElement>(null);
  const onToggle = useCallback(
    (place: number) => {
      const { view: now } = run.now();
      const opened = new Set(now.opened);
      if (!opened.delete(place)) opened.add(place);
      run.look({ ...now, opened });
    },
    [run],
  );
  const changeQuery = (query: AuditView['query']): void => {
    run.look({ ...view, query, page: 0 });
  };
  const turnTo = (page: number): void => {
    run.look({ ...view, page });
  };
  if (subject === null || !('at' in stage)) return null;
  const { lines, page, pageNumber, pageCount } = list;
  const from = pageNumber * PAGE_ROWS;
  return (
    <section className="audit-result">
      <h3 className="audit-outcome" tabIndex={-1}>
        {auditResult(state)}
      </h3>
      <p className="note">
        {auditSubject(subject, stage.at)} {unreadable > 0 && words.audit.unreadable(unreadable)}
      </p>
      {state.rows.length === 0 && stage.kind === 'done' && <p className="note note-advice">{words.audit.noneWhy}</p>}
      {state.rows.length > 0 && rows === state.rows && (
        <>
          <AuditTools
            query={view.query}
            counts={state.counts}
            catalogue={catalogue}
            onQuery={changeQuery}
            onIntoList={() => {
              body.current?.querySelector<HTMLElement>('.audit-toggle')?.focus();
            }}
          />
          <p className="audit-listed" role="status">
            {words.audit.listed(lines.length, rows.length)}
          </p>
          {lines.length === 0 && (
            <p className="sessions-none">
              {words.audit.noneFound}{' '}
              <button
                type="button"
                className="quiet"
                onClick={() => {
                  changeQuery({ ...WHOLE_AUDIT, sort: view.query.sort });
                }}
              >
                {words.audit.showAll}
              </button>
            </p>
          )}
          {lines.length > 0 && (
            <div ref={body}>
              {pageCount > 1 && (
                <AuditPages
                  isAbove={true}
                  page={pageNumber}
                  pageCount={pageCount}
                  rows={[from + 1, from + page.length, lines.length]}
                  onTurn={turnTo}
                />
              )}
              <AuditTable
                lines={page}
                from={from}
                lineCount={lines.length}
                opened={view.opened}
                summaries={summaries}
                keptIds={props.keptIds}
                openId={props.openId}
                at={stage.at}
                catalogue={catalogue}
                tag={tag}
                sort={list.query.sort}
                onSort={(sort) => {
                  changeQuery({ ...view.query, sort });
                }}
                onToggle={onToggle}
                onOpen={props.onOpen}
              />
              {pageCount > 1 && (
                <AuditPages
                  isAbove={false}
                  page={pageNumber}
                  pageCount={pageCount}
                  rows={[from + 1, from + page.length, lines.length]}
                  onTurn={(wanted) => {
                    turnTo(wanted);
                    // the new page begins at its top
                    body.current?.querySelector<HTMLElement>('.audit-rows')?.focus();
                  }}
                />
              )}
              <p className="note">{words.audit.basis}</p>
              <AuditSaving state={state} list={list} summaries={summaries} />
            </div>
          )}
        </>
      )}
    </section>
  );
}
