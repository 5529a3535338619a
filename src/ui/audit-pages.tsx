import { words } from './language.js';

/** Leads from page to page of a long list. */
export function AuditPages(props: {
  /** above the list: it tells each new page, and takes the focus where one was turned from below */
  readonly isAbove: boolean;
  /** from 0 */
  readonly page: number;
  readonly pageCount: number;
  /** the first and the last row that are shown, from 1, and how many there are */
  readonly rows: readonly [from: number, to: number, of: number];
  readonly onTurn: (page: number) => void;
}) {
  const { isAbove, page, pageCount, rows } = props;
  const last = pageCount - 1;
  const targets = [
    ['first', 0],
    ['previous', Math.max(0, page - 1)],
    ['next', Math.min(last, page + 1)],
    ['last', last],
  ] as const;
  return (
    <nav className="audit-pages" aria-label={words.audit.pages}>
      <p className="audit-rows" tabIndex={isAbove ? -1 : undefined} role={isAbove ? 'status' : undefined}>
        {words.audit.rows(...rows)}
      </p>
      <div className="actions">
        {targets.map(([name, target]) => (
          <button
            key={name}
            type="button"
            // it stays where the focus is, though there is nowhere to go
            aria-disabled={target === page}
            onClick={() => {
              if (target !== page) props.onTurn(target);
            }}
          >
            {words.audit.page[name]}
          </button>
        ))}
      </div>
    </nav>
  );
}
