import type { KeyboardEvent } from 'react';
import { memo, useId } from 'react';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { SessionSummary } from '../core/record/session-record.js';
import type { AuditColumn, AuditedLine, AuditSort } from '../session/audit-list.js';
import { AUDIT_COLUMNS, nextAuditSort } from '../session/audit-list.js';
import { findingCells, recordNaming } from './audit-sentences.js';
import { words } from './language.js';
import { misfitExplanations, misfitSentence } from './misfit-sentences.js';
import type { WrittenSheet } from './slip-sentences.js';
import { probabilityWords } from './slip-sentences.js';
import { orderOf, SortHeader } from './sort-header.js';

const COLUMNS = ['place', 'measurement', 'written', 'restored', 'probability', 'why'] as const;

function isSorted(column: (typeof COLUMNS)[number]): column is AuditColumn {
  return (AUDIT_COLUMNS as readonly string[]).includes(column);
}

/** What the arrow keys move between: the same control of the rows above and below. */
const CONTROLS = ['.audit-toggle', '.audit-open'] as const;

function onArrow(event: KeyboardEvent<HTMLTableSectionElement>): void {
  const { target, currentTarget, key } = event;
  if (!(target instanceof HTMLElement) || event.ctrlKey || event.metaKey || event.altKey) return;
  const control = CONTROLS.find((selector) => target.matches(selector));
  if (control === undefined) return;
  const all = [...currentTarget.querySelectorAll<HTMLElement>(control)];
  const at = all.indexOf(target);
  const next = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 }[key];
  if (next === undefined) return;
  event.preventDefault();
  all[next]?.focus();
}

interface RowTools {
  readonly catalogue: Catalogue;
  /** when the audit ended; days are counted from then */
  readonly at: Date;
  /** of the language that is spoken: all is written anew with another one */
  readonly tag: string;
  readonly onToggle: (place: number) => void;
  readonly onOpen: (sessionId: string) => void;
}

/** One page of flagged records; in a narrow window each row stands as a card of its own, for which the roles are written out. */
export function AuditTable(
  props: RowTools & {
    readonly lines: readonly AuditedLine[];
    /** how many lines stand before them on other pages, and in all */
    readonly from: number;
    readonly lineCount: number;
    /** places of the records whose findings are all shown */
    readonly opened: ReadonlySet<number>;
    readonly summaries: ReadonlyMap<string, SessionSummary>;
    /** the sessions that can still be opened; null where that is not known */
    readonly keptIds: ReadonlySet<string> | null;
    /** the session on the sheet; null where there is none */
    readonly openId: string | null;
    readonly sort: AuditSort;
    readonly onSort: (sort: AuditSort) => void;
  },
) {
  const { sort, summaries, catalogue, at, tag, onToggle, onOpen } = props;
  return (
    <table
      className="sessions-table audit-table"
      role="table"
      aria-label={words.audit.table}
      aria-rowcount={props.lineCount + 1}
    >
      <thead role="rowgroup">
        <tr role="row" aria-rowindex={1}>
          {COLUMNS.map((column) =>
            isSorted(column) ? (
              <SortHeader
                key={column}
                order={orderOf(sort, column)}
                onSort={() => {
                  props.onSort(nextAuditSort(sort, column));
                }}
              >
                {words.audit.column[column]}
              </SortHeader>
            ) : (
              <th key={column} role="columnheader" scope="col">
                <span className="audit-unsorted">{words.audit.column[column]}</span>
              </th>
            ),
          )}
        </tr>
      </thead>
      <tbody role="rowgroup" onKeyDown={onArrow}>
        {props.lines.map((line, index) => {
          const { place, origin } = line.row.record;
          const id = origin.kind === 'session' ? origin.sessionId : null;
          return (
            <AuditRow
              key={place}
              line={line}
              rowIndex={props.from + index + 2}
              isOpened={props.opened.has(place)}
              summary={id === null ? null : (summaries.get(id) ?? null)}
              isOnSheet={id !== null && id === props.openId}
              isGone={id !== null && props.keptIds?.has(id) === false}
              catalogue={catalogue}
              at={at}
              tag={tag}
              onToggle={onToggle}
              onOpen={onOpen}
            />
          );
        })}
      </tbody>
    </table>
  );
}

const AuditRow = memo(function AuditRow(
  props: RowTools & {
    readonly line: AuditedLine;
    readonly rowIndex: number;
    readonly isOpened: boolean;
    readonly summary: SessionSummary | null;
    readonly isOnSheet: boolean;
    /** it was deleted since it was looked through */
    readonly isGone: boolean;
  },
) {
  const { line, isOpened, catalogue } = props;
  const { row, finding } = line;
  const { record } = row;
  const { origin, place } = record;
  const id = useId();
  const { name, where } = recordNaming(record, props.summary, props.at);
  const sheet: WrittenSheet = { ...record.written, catalogue };
  const cells = findingCells(finding, sheet);
  const count = row.findings.length;
  const opens = origin.kind === 'session' && !props.isGone ? origin.sessionId : null;
  const hasMore = count > 1 || opens !== null || misfitExplanations(finding.misfit, sheet).length > 0;
  const column = words.audit.column;
  return (
    <>
      <tr
        role="row"
        className={isOpened ? 'audit-row audit-opened' : 'audit-row'}
        aria-rowindex={props.rowIndex}
        aria-current={props.isOnSheet ? 'true' : undefined}
      >
        <th role="rowheader" scope="row">
          {opens !== null ? (
            <button
              type="button"
              className="quiet audit-open"
              data-session={opens}
              onClick={() => {
                props.onOpen(opens);
              }}
            >
              {name}
            </button>
          ) : (
            <span className="audit-name">{name}</span>
          )}
          <small>{where}</small>
          {props.isGone && <small>{words.audit.gone}</small>}
        </th>
        <td role="cell" data-column={column.measurement}>
          {cells.reading}
        </td>
        <td role="cell" data-column={column.written}>
          {cells.written}
        </td>
        <td role="cell" className="audit-restored" data-column={column.restored}>
          {cells.restored !== null && <span>{cells.restored}</span>}
          {cells.cause !== null && <small>{cells.cause}</small>}
          {cells.restored === null && finding.misfit.kind === 'suspected' && <small>{words.audit.noSlip}</small>}
        </td>
        <td role="cell" className={`audit-${finding.misfit.kind}`} data-column={column.probability}>
          {cells.sureness}
        </td>
        <td role="cell" className="audit-why">
          <p>{misfitSentence(finding.misfit, sheet)}</p>{' '}
          {hasMore && (
            <button
              type="button"
              className="quiet audit-toggle"
              aria-expanded={isOpened}
              aria-controls={isOpened ? id : undefined}
              aria-label={words.audit.detailsOf(count, name)}
              onClick={() => {
                props.onToggle(place);
              }}
            >
              {words.audit.details(count)}
            </button>
          )}
        </td>
      </tr>
      {isOpened && hasMore && (
        <tr role="row" id={id} className="audit-more">
          <td role="cell" colSpan={COLUMNS.length}>
            <AuditFindings line={line} sheet={sheet} />
            {opens !== null && (
              <button
                type="button"
                onClick={() => {
                  props.onOpen(opens);
                }}
              >
                {words.audit.openSession}
              </button>
            )}
          </td>
        </tr>
      )}
    </>
  );
});

/** All that does not fit in a record, as its sheet says it. */
function AuditFindings({ line, sheet }: { readonly line: AuditedLine; readonly sheet: WrittenSheet }) {
  const { findings } = line.row;
  return (
    <ul className="audit-findings">
      {findings.map(({ misfit }) => (
        <li key={`${misfit.kind} ${misfit.names.join(' ')}`}>
          <p>
            <strong>{misfitSentence(misfit, sheet)}</strong>{' '}
            {misfit.kind === 'suspected' && words.audit.wrongHere(probabilityWords(misfit.suspicion.probability))}
          </p>
          {misfitExplanations(misfit, sheet).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </li>
      ))}
    </ul>
  );
}
