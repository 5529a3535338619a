import { createPortal } from 'react-dom';
import type { ReaderId, ReaderSheet } from '../core/record/reader-sheet.js';
import type { HistoryLine } from '../session/history-lines.js';
import { historyLines } from '../session/history-lines.js';
import { useEquipment } from './equipment.js';
import { dateText, words } from './language.js';
import { Modal } from './modal.js';
import { readingWords } from './sentences.js';
import { useInPlaceOfSheet } from './use-in-place-of-sheet.js';

// The month as a word: 3/4 is April here and March there.
const MOMENT = {
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
  second: '2-digit',
} as const;

/** All entries of a session, on the screen and on paper. */
export function HistoryDialog(props: {
  readonly readers: Readonly<Record<ReaderId, ReaderSheet>>;
  /** whose sheet is open: what this reader may not see yet stays covered */
  readonly open: ReaderId;
  /** as typed */
  readonly wearer: string;
  readonly onClose: () => void;
}) {
  const lines = historyLines(props.readers, props.open);
  useInPlaceOfSheet('history');
  return (
    <Modal heading={words.history.heading} closeLabel={words.history.close} onClose={props.onClose} wide>
      <p className="note">{words.history.what}</p>
      {lines.length === 0 ? (
        <p>{words.history.none}</p>
      ) : (
        <>
          <div className="actions">
            <button
              type="button"
              onClick={() => {
                window.print();
              }}
            >
              {words.history.print}
            </button>
          </div>
          <HistoryTable lines={lines} />
        </>
      )}
      {createPortal(
        <div className="history-paper">
          <h1>{words.history.heading}</h1>
          <p>
            <strong>{words.history.of(props.wearer.trim())}</strong>, {words.history.count(lines.length)}
          </p>
          <HistoryTable lines={lines} />
          <p>{words.history.printedOn(dateText(new Date(), MOMENT))}</p>
        </div>,
        document.body,
      )}
    </Modal>
  );
}

function HistoryTable({ lines }: { readonly lines: readonly HistoryLine[] }) {
  const { catalogue } = useEquipment();
  return (
    <table className="history-table" aria-label={words.history.table}>
      <thead>
        <tr>
          <th scope="col">{words.history.when}</th>
          <th scope="col">{words.history.reader}</th>
          <th scope="col">{words.history.place}</th>
          <th scope="col">{words.history.text}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line, place) => (
          <tr key={place}>
            <td className="history-when">
              {line.entry.at === null ? words.history.noTime : dateText(new Date(line.entry.at), MOMENT)}
            </td>
            <td>{line.entry.by.trim() === '' ? words.reader[line.reader] : line.entry.by}</td>
            <td>{readingWords(line.entry.name, catalogue)}</td>
            <td>
              <EntryText line={line} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function EntryText({ line: { entry, standing, isCovered } }: { readonly line: HistoryLine }) {
  if (isCovered) return <span className="history-soft">{words.history.covered}</span>;
  const text =
    entry.text.trim() === '' ? (
      <span className="history-soft">{words.history.emptied}</span>
    ) : (
      <span>{entry.text}</span>
    );
  return (
    <>
      {standing === 'replaced' ? <s>{text}</s> : text}
      {standing !== 'stands' && <small className="history-soft"> {words.history[standing]}</small>}
    </>
  );
}
