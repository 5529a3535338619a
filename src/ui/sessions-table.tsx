import type { KeyboardEvent } from 'react';
import { useEffect, useRef } from 'react';
import type { SessionSummary } from '../core/record/session-record.js';
import { unreachable } from '../core/result.js';
import type { ListColumn, ListedState, ListSort } from '../session/session-list.js';
import { daysAgo, LIST_COLUMNS, listedState } from '../session/session-list.js';
import { isPressed } from './shortcuts.js';
import { words } from './language.js';
import { dayShown, timeShown } from './sessions-when.js';
import { orderOf, SortHeader } from './sort-header.js';

/** What the list says of the visit's time. */
export function visitShown({ begunAt }: SessionSummary, now: Date): string {
  return words.sessions.when(dayShown(begunAt, now), timeShown(begunAt));
}

export function nameShown({ wearer }: SessionSummary): string {
  return wearer === '' ? words.sessions.noName : wearer;
}

/** The state of a session in words. */
export function stateShown(summary: SessionSummary): string {
  const { findings } = summary;
  const state = listedState(findings);
  switch (state) {
    case 'misfits':
      return words.sessions.state.misfits(findings.misfits);
    case 'disagrees':
      return words.sessions.state.disagrees(findings.disagrees);
    case 'open':
      return words.sessions.state.open(findings.confirmed, findings.written);
    case 'confirmed':
      return words.sessions.state.confirmed(findings.confirmed);
    case 'empty':
      return words.sessions.state.empty;
    default:
      return unreachable(state);
  }
}

const SIGNS: Readonly<Record<ListedState, string>> = {
  misfits: 'M8 3.5V9M8 11.5V12.5',
  disagrees: 'M4 6.5H12M4 9.5H12M10.5 3.5L5.5 12.5',
  open: 'M4.5 8H4.6M8 8H8.1M11.4 8H11.5',
  confirmed: 'M4 8.5L7 11.5L12 5',
  empty: '',
};

/** A sign beside the words of a state, which say the same. */
function StateMark({ state }: { readonly state: ListedState }) {
  return (
    <svg className="finding-mark" viewBox="0 0 16 16" aria-hidden="true">
      <rect x="0.75" y="0.75" width="14.5" height="14.5" rx="3" />
      <path d={SIGNS[state]} />
    </svg>
  );
}

/** What the arrow keys move between: the same control of the rows above and below. */
const CONTROLS = ['.session-open', '.session-select input'] as const;

function onArrow(event: KeyboardEvent<HTMLTableSectionElement>): void {
  const { target, currentTarget } = event;
  if (!(target instanceof HTMLElement)) return;
  const control = CONTROLS.find((selector) => target.matches(selector));
  if (control === undefined) return;
  const all = [...currentTarget.querySelectorAll<HTMLElement>(control)];
  const at = all.indexOf(target);
  const places = [
    ['nextSession', at + 1],
    ['previousSession', at - 1],
    ['firstSession', 0],
    ['lastSession', all.length - 1],
  ] as const;
  const place = places.find(([id]) => isPressed(id, event));
  if (place === undefined) return;
  event.preventDefault();
  all[place[1]]?.focus();
}

/**
 * The sessions as a table; in a narrow window each row stands as a card of its own. The roles are written out, since browsers
 * take them away from tables that are laid out otherwise.
 */
export function SessionsTable(props: {
  readonly sessions: readonly SessionSummary[];
  /** how many are listed in all, shown or not */
  readonly listedCount: number;
  readonly now: Date;
  readonly openId: string | null;
  readonly sort: ListSort;
  readonly onSort: (sort: ListSort) => void;
  readonly selected: ReadonlySet<string>;
  readonly onSelect: (id: string, isSelected: boolean) => void;
  readonly onSelectAll: (isSelected: boolean) => void;
  readonly onOpen: (id: string) => void;
}) {
  const { sessions, selected, sort, listedCount } = props;
  return (
    <table className="sessions-table" role="table" aria-label={words.sessions.table}>
      <thead role="rowgroup">
        <tr role="row">
          <td role="cell" className="session-select">
            <SelectAll count={listedCount} selectedCount={selected.size} onSelect={props.onSelectAll} />
          </td>
          {LIST_COLUMNS.map((column) => (
            <SortHeader
              key={column}
              order={orderOf(sort, column)}
              onSort={() => {
                props.onSort(nextSort(sort, column));
              }}
            >
              {words.sessions.column[column]}
            </SortHeader>
          ))}
        </tr>
      </thead>
      <tbody role="rowgroup" onKeyDown={onArrow}>
        {sessions.map((summary) => (
          <SessionRow
            key={summary.id}
            summary={summary}
            now={props.now}
            isOpen={summary.id === props.openId}
            isSelected={selected.has(summary.id)}
            onSelect={props.onSelect}
            onOpen={props.onOpen}
          />
        ))}
      </tbody>
    </table>
  );
}

/** A column that is chosen anew begins in the order that is mostly wanted of it: the latest first, all else from the top. */
export function nextSort(sort: ListSort, column: ListColumn): ListSort {
  return { column, descending: sort.column === column ? !sort.descending : column === 'when' };
}

function SelectAll(props: {
  readonly count: number;
  readonly selectedCount: number;
  readonly onSelect: (isSelected: boolean) => void;
}) {
  const box = useRef<HTMLInputElement>(null);
  const isSome = props.selectedCount > 0 && props.selectedCount < props.count;
  useEffect(() => {
    if (box.current !== null) box.current.indeterminate = isSome;
  }, [isSome]);
  return (
    <label className="select-all">
      <input
        ref={box}
        type="checkbox"
        aria-label={words.sessions.selectAll(props.count)}
        disabled={props.count === 0}
        checked={props.count > 0 && props.selectedCount === props.count}
        onChange={(event) => {
          props.onSelect(event.currentTarget.checked);
        }}
      />
      <span aria-hidden="true">{words.sessions.selectAll(props.count)}</span>
    </label>
  );
}

function SessionRow(props: {
  readonly summary: SessionSummary;
  readonly now: Date;
  readonly isOpen: boolean;
  readonly isSelected: boolean;
  readonly onSelect: (id: string, isSelected: boolean) => void;
  readonly onOpen: (id: string) => void;
}) {
  const { summary, now } = props;
  const when = visitShown(summary, now);
  const name = nameShown(summary);
  const state = listedState(summary.findings);
  const isChangedLater = daysAgo(summary.begunAt, now) !== daysAgo(summary.changedAt, now);
  return (
    <tr
      role="row"
      className={props.isSelected ? 'session session-selected' : 'session'}
      aria-current={props.isOpen ? 'true' : undefined}
    >
      <td role="cell" className="session-select">
        <input
          type="checkbox"
          aria-label={words.sessions.select(name, when)}
          checked={props.isSelected}
          onChange={(event) => {
            props.onSelect(summary.id, event.currentTarget.checked);
          }}
        />
      </td>
      <th role="rowheader" scope="row">
        <button
          type="button"
          className="quiet session-open"
          data-session={summary.id}
          onClick={() => {
            props.onOpen(summary.id);
          }}
        >
          {name}
        </button>
        {props.isOpen && <small className="session-now">{words.sessions.openNow}</small>}
        {summary.remark !== '' && <small className="session-remark">{summary.remark}</small>}
      </th>
      <td role="cell" className="session-when" data-column={words.sessions.column.when}>
        <span>{when}</span>
        {isChangedLater && <small>{words.sessions.changed(dayShown(summary.changedAt, now))}</small>}
      </td>
      <td role="cell" data-column={words.sessions.column.readers}>
        {summary.readers.join(', ')}
      </td>
      <td role="cell" className="session-pd" data-column={words.sessions.column.pd}>
        {summary.binocularPd !== '' && words.sessions.pd(summary.binocularPd)}
      </td>
      <td role="cell" data-column={words.sessions.column.origin}>
        {words.sessions[summary.origin]}
      </td>
      <td role="cell" className={`session-state state-${state}`} data-column={words.sessions.column.state}>
        <StateMark state={state} />
        <span>{stateShown(summary)}</span>
      </td>
    </tr>
  );
}
