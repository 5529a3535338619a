import { useEffect, useMemo, useState } from 'react';
import { createPortal } from 'react-dom';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { otherReader } from '../session/entries.js';
import { orderOf } from '../session/order.js';
import { parseEffectiveDiameter, parsePrescription } from '../session/prescription-entry.js';
import { fitsBox, lensCautions } from '../session/prescription-frame.js';
import { goToReading } from './hand-place.js';
import { cautionSentence } from './lens-sentences.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import { OrderConfirming } from './order-confirming.js';
import { orderDoubtSentences } from './order-doubts.js';
import type { OrderContent } from './order-sheet.js';
import { OrderSheet } from './order-sheet.js';
import type { WrittenSheet } from './slip-sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { useWrittenSheet } from './use-written-sheet.js';

/** Readings are confirmed, and what is then ordered is shown and printed. */
export function OrderDialog(props: { readonly sheet: SheetInHand; readonly onClose: () => void }) {
  const { sheet, onClose } = props;
  const written = useWrittenSheet(sheet);
  const content = useOrderContent(sheet, written);
  useEffect(() => {
    // As long as the order is open, it is what is printed: by the button below, or by the browser's own command.
    document.body.dataset.printing = 'order';
    return () => {
      delete document.body.dataset.printing;
    };
  }, []);
  const ordered = useMemo(
    () => new Set(content.order.lines.flatMap(({ values }) => values.map(({ name }) => name))),
    [content.order],
  );
  const goTo = (name: ReadingName): void => {
    onClose();
    // The dialog gives the focus back to its button first.
    requestAnimationFrame(() => {
      goToReading(name);
    });
  };
  return (
    <Modal heading={words.order.heading} closeLabel={words.order.close} onClose={onClose} wide>
      <p className="note">{words.order.intro}</p>
      <OrderConfirming sheet={sheet} written={written} ordered={ordered} onGoTo={goTo} />
      <section>
        <div className="order-preview-head">
          <h3>{words.order.preview}</h3>
          <button
            type="button"
            className="main-action"
            onClick={() => {
              window.print();
            }}
          >
            {words.order.print}
          </button>
        </div>
        <p className="note">{words.order.printNote}</p>
        <div className="order-preview">
          <OrderSheet content={content} />
        </div>
      </section>
      {createPortal(
        <div className="order-paper">
          <OrderSheet content={content} />
        </div>,
        document.body,
      )}
    </Modal>
  );
}

function useOrderContent(sheet: SheetInHand, written: Required<WrittenSheet>): OrderContent {
  const { rows, reconciliation, state } = sheet;
  const { notes, prescription, readers, reader } = state;
  const [when] = useState(() => new Date());
  const order = useMemo(
    () => orderOf(rows, reconciliation, { notes, prescription }),
    [rows, reconciliation, notes, prescription],
  );
  const otherName = readers[otherReader(reader)].reader;
  const doubts = orderDoubtSentences(order.doubts, written, otherName);
  const values = order.lines.flatMap((line) => line.values);
  const parsed = parsePrescription(prescription);
  const orderedValues: { readonly [Name in ReadingName]?: number } = Object.fromEntries(
    values.map(({ name, value }) => [name, value]),
  );
  const lensDoubts = !parsed.ok
    ? []
    : lensCautions(orderedValues, parsed.value.prescription)
        // What a progressive lens lacks is among the doubts of the order.
        .filter(({ kind, missing }) => kind !== 'progressive' && missing.length > 0)
        .map((caution) => cautionSentence(caution, written.catalogue));
  const effectiveDiameter = parseEffectiveDiameter(prescription.effectiveDiameter);
  const isDiameterUsed = effectiveDiameter?.ok === true && fitsBox(effectiveDiameter.value, orderedValues);
  return {
    order,
    doubts: [
      ...doubts,
      ...(values.length > 0 ? lensDoubts : []),
      ...(values.some(({ by }) => by.trim() === '') ? [words.orderDoubt.nameless] : []),
    ],
    prescription: parsed,
    effectiveDiameterMm: isDiameterUsed ? effectiveDiameter.value : null,
    notes,
    readers: [...new Set(values.map(({ by }) => by.trim()))].filter((name) => name !== ''),
    secondReader: values.some(({ name }) => written.joined.has(name)) ? otherName.trim() : null,
    when,
    isInvented: state.putAside !== null,
  };
}
