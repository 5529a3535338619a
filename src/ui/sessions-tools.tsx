import type { RefObject } from 'react';
import { useId } from 'react';
import type { FindingFilter, ListedSessions, ListQuery } from '../session/session-list.js';
import { FINDING_FILTERS, LIST_COLUMNS } from '../session/session-list.js';
import { isPressed } from './shortcuts.js';
import { words } from './language.js';
import { nextSort } from './sessions-table.js';

/** Far longer than any name; what is longer was pasted by mistake. */
const SEARCH_LIMIT = 200;

/** What the list is narrowed to, and in a narrow window its order. */
export function SessionsTools(props: {
  readonly query: ListQuery;
  readonly onQuery: (query: ListQuery) => void;
  readonly counts: ListedSessions['counts'];
  readonly search: RefObject<HTMLInputElement | null>;
  /** the reader wants to go on from the search into the list */
  readonly onIntoList: () => void;
}) {
  const { query, onQuery, counts, search } = props;
  const id = useId();
  const toggle = (filter: FindingFilter, isOn: boolean): void => {
    onQuery({
      ...query,
      findings: FINDING_FILTERS.filter((one) => (one === filter ? isOn : query.findings.includes(one))),
    });
  };
  return (
    <div className="sessions-tools" role="search">
      <div className="sessions-search">
        <label htmlFor={`${id}-search`}>{words.sessions.search}</label>
        <input
          id={`${id}-search`}
          ref={search}
          type="search"
          autoComplete="off"
          spellCheck={false}
          maxLength={SEARCH_LIMIT}
          placeholder={words.sessions.searchHint}
          value={query.search}
          onChange={(event) => {
            onQuery({ ...query, search: event.currentTarget.value });
          }}
          onKeyDown={(event) => {
            if (!isPressed('intoSessions', event)) return;
            event.preventDefault();
            props.onIntoList();
          }}
        />
      </div>
      <div className="sessions-search">
        <label htmlFor={`${id}-origin`}>{words.sessions.origin}</label>
        <select
          id={`${id}-origin`}
          value={query.origin ?? ''}
          onChange={(event) => {
            const { value } = event.currentTarget;
            onQuery({ ...query, origin: value === 'desk' || value === 'distant' ? value : null });
          }}
        >
          <option value="">{words.sessions.anywhere}</option>
          <option value="desk">{words.sessions.atTheDesk}</option>
          <option value="distant">{words.sessions.atADistance}</option>
        </select>
      </div>
      <fieldset className="choice sessions-filters">
        <legend>{words.sessions.filters}</legend>
        {FINDING_FILTERS.map((filter) => (
          <label key={filter}>
            <input
              type="checkbox"
              checked={query.findings.includes(filter)}
              onChange={(event) => {
                toggle(filter, event.currentTarget.checked);
              }}
            />
            {words.sessions.filterCount(words.sessions.filter[filter], counts[filter])}
          </label>
        ))}
      </fieldset>
      <div className="sessions-search sessions-order">
        <label htmlFor={`${id}-sort`}>{words.sessions.sortBy}</label>
        <select
          id={`${id}-sort`}
          value={query.sort.column}
          onChange={(event) => {
            const column = LIST_COLUMNS.find((one) => one === event.currentTarget.value);
            if (column !== undefined) onQuery({ ...query, sort: nextSort(query.sort, column) });
          }}
        >
          {LIST_COLUMNS.map((column) => (
            <option key={column} value={column}>
              {words.sessions.column[column]}
            </option>
          ))}
        </select>
        <button
          type="button"
          aria-label={words.sessions.turnOrder}
          onClick={() => {
            onQuery({ ...query, sort: nextSort(query.sort, query.sort.column) });
          }}
        >
          {query.sort.descending ? words.sessions.descending : words.sessions.ascending}
        </button>
      </div>
    </div>
  );
}
