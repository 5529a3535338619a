import type { ReactNode } from 'react';

/** The head of a column that a table can be sorted by. */
export function SortHeader(props: {
  readonly children: ReactNode;
  /** how the table is sorted by this column now */
  readonly order: 'none' | 'ascending' | 'descending';
  readonly onSort: () => void;
}) {
  return (
    <th role="columnheader" scope="col" aria-sort={props.order}>
      <button type="button" className="sessions-sort" onClick={props.onSort}>
        {props.children}
      </button>
    </th>
  );
}

/** How a table is sorted by one of its columns. */
export function orderOf<Column>(
  sort: { readonly column: Column; readonly descending: boolean },
  column: Column,
): 'none' | 'ascending' | 'descending' {
  return sort.column !== column ? 'none' : sort.descending ? 'descending' : 'ascending';
}
