import { useId } from 'react';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { AuditCounts, AuditQuery } from '../session/audit-list.js';
import { AUDIT_COLUMNS, MISFIT_KINDS, nextAuditSort } from '../session/audit-list.js';
import { words } from './language.js';
import { upperFirst } from './slip-places.js';

/** Far longer than any name; what is longer was pasted by mistake. */
const SEARCH_LIMIT = 200;

/** What the list of flagged records is narrowed to, and in a narrow window its order. */
export function AuditTools(props: {
  readonly query: AuditQuery;
  readonly counts: AuditCounts;
  readonly catalogue: Catalogue;
  readonly onQuery: (query: AuditQuery) => void;
  /** the reader wants to go on from the search into the list */
  readonly onIntoList: () => void;
}) {
  const { query, counts, onQuery } = props;
  const { kinds, slips, measurements } = counts;
  const id = useId();
  return (
    <div className="sessions-tools audit-tools" role="search" aria-label={words.audit.tools}>
      <div className="sessions-search">
        <label htmlFor={`${id}-search`}>{words.audit.search}</label>
        <input
          id={`${id}-search`}
          type="search"
          autoComplete="off"
          spellCheck={false}
          maxLength={SEARCH_LIMIT}
          placeholder={words.audit.searchHint}
          value={query.search}
          onChange={(event) => {
            onQuery({ ...query, search: event.currentTarget.value });
          }}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowDown' || event.nativeEvent.isComposing) return;
            event.preventDefault();
            props.onIntoList();
          }}
        />
      </div>
      <div className="sessions-search">
        <label htmlFor={`${id}-measurement`}>{words.audit.measurement}</label>
        <select
          id={`${id}-measurement`}
          value={query.measurement ?? ''}
          onChange={(event) => {
            const { value } = event.currentTarget;
            onQuery({ ...query, measurement: [...measurements.keys()].find((one) => one === value) ?? null });
          }}
        >
          <option value="">{words.audit.anyMeasurement}</option>
          {[...measurements].map(([measurement, count]) => (
            <option key={measurement} value={measurement}>
              {words.audit.counted(words.measurements[measurement].shortName, count)}
            </option>
          ))}
        </select>
      </div>
      {slips.size > 0 && (
        <div className="sessions-search">
          <label htmlFor={`${id}-slip`}>{words.audit.slip}</label>
          <select
            id={`${id}-slip`}
            value={query.slip ?? ''}
            onChange={(event) => {
              const { value } = event.currentTarget;
              onQuery({ ...query, slip: [...slips.keys()].find((one) => one === value) ?? null });
            }}
          >
            <option value="">{words.audit.anySlip}</option>
            {[...slips].map(([slip, count]) => (
              <option key={slip} value={slip}>
                {words.audit.counted(upperFirst(words.slipsInShort[slip]), count)}
              </option>
            ))}
          </select>
        </div>
      )}
      <fieldset className="choice sessions-filters">
        <legend>{words.audit.only}</legend>
        {[...kinds].map(([kind, count]) => (
          <label key={kind}>
            <input
              type="checkbox"
              checked={query.kinds.includes(kind)}
              onChange={(event) => {
                const isOn = event.currentTarget.checked;
                onQuery({
                  ...query,
                  kinds: MISFIT_KINDS.filter((one) => (one === kind ? isOn : query.kinds.includes(one))),
                });
              }}
            />
            {words.audit.counted(words.audit.kinds[kind], count)}
          </label>
        ))}
      </fieldset>
      <div className="sessions-search sessions-order">
        <label htmlFor={`${id}-sort`}>{words.audit.sortBy}</label>
        <select
          id={`${id}-sort`}
          value={query.sort.column}
          onChange={(event) => {
            const column = AUDIT_COLUMNS.find((one) => one === event.currentTarget.value);
            if (column !== undefined) onQuery({ ...query, sort: nextAuditSort(query.sort, column) });
          }}
        >
          {AUDIT_COLUMNS.map((column) => (
            <option key={column} value={column}>
              {words.audit.column[column]}
            </option>
          ))}
        </select>
        <button
          type="button"
          aria-label={words.audit.turnOrder}
          onClick={() => {
            onQuery({ ...query, sort: nextAuditSort(query.sort, query.sort.column) });
          }}
        >
          {query.sort.descending ? words.audit.descending : words.audit.ascending}
        </button>
      </div>
    </div>
  );
}
