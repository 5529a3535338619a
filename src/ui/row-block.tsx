import { memo, useEffect, useId, useRef, useState } from 'react';
import type { MeasurementGroup } from '../core/catalogue/measurement.js';
import type { SheetRow } from '../session/rows.js';
import { PLACE_WANTED } from './hand-place.js';
import { isInDoubt } from './row-findings.js';
import { COLUMNS, isBlankRow, MeasurementRow } from './row-measurement.js';
import type { SheetInHand } from './use-sheet.js';
import type { Words } from './language.js';
import { words } from './language.js';

/** A row that is drawn again only where something of it changed: a key that is typed concerns one row of many. */
const KeptRow = memo(
  ({ row, sheet }: RowProps) => <MeasurementRow row={row} sheet={sheet} />,
  (before, now) =>
    before.row === now.row &&
    before.spoken === now.spoken &&
    before.sheet.misfits === now.sheet.misfits &&
    before.sheet.measurement === now.sheet.measurement &&
    before.sheet.settings === now.sheet.settings &&
    before.sheet.state.settings === now.sheet.state.settings &&
    before.sheet.state.picture === now.sheet.state.picture &&
    before.sheet.state.reader === now.sheet.state.reader,
);
KeptRow.displayName = 'KeptRow';

interface RowProps {
  readonly row: SheetRow;
  readonly sheet: SheetInHand;
  /** the language of the moment: the words are no part of the other two */
  readonly spoken: Words;
}

/** A block of the sheet under a heading that folds it. It never folds by itself. */
export function SheetBlock(props: {
  readonly group: MeasurementGroup;
  readonly rows: readonly SheetRow[];
  readonly sheet: SheetInHand;
}) {
  const { group, rows, sheet } = props;
  const [isFolded, setIsFolded] = useState(false);
  const body = useRef<HTMLTableSectionElement>(null);
  const id = useId();
  useEffect(() => {
    const element = body.current;
    const unfold = (): void => {
      setIsFolded(false);
    };
    element?.addEventListener(PLACE_WANTED, unfold);
    return () => {
      element?.removeEventListener(PLACE_WANTED, unfold);
    };
  }, []);
  const fields = rows.flatMap((row) => row.fields);
  const filled = fields.filter(({ reading }) => reading.ok).length;
  const doubtful = fields.filter((field) => isInDoubt(field, sheet)).length;
  return (
    <>
      <tbody role="rowgroup" className="block-head">
        <tr role="row" className={rows.every(isBlankRow) ? 'group is-blank' : 'group'}>
          <th role="rowheader" scope="rowgroup" colSpan={COLUMNS}>
            <button
              type="button"
              aria-expanded={!isFolded}
              aria-controls={id}
              onClick={() => {
                setIsFolded(!isFolded);
              }}
            >
              <span className="group-name">{words.sheet.groups[group]}</span>{' '}
              <span className="group-count">{words.sheet.groupCount(filled, fields.length)}</span>
              {isFolded && doubtful > 0 && <strong className="is-off">, {words.sheet.groupMisfits(doubtful)}</strong>}
            </button>
          </th>
        </tr>
      </tbody>
      <tbody role="rowgroup" id={id} ref={body} hidden={isFolded}>
        {rows.map((row) => (
          <KeptRow key={row.measurement.id} row={row} sheet={sheet} spoken={words} />
        ))}
      </tbody>
    </>
  );
}
