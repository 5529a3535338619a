import { useMemo } from 'react';
import { createPortal } from 'react-dom';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { goToReading } from './hand-place.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import { OrderConfirming } from './order-confirming.js';
import { orderDocument } from './order-document.js';
import { OrderSaving } from './order-saving.js';
import { OrderSheet } from './order-sheet.js';
import { useInPlaceOfSheet } from './use-in-place-of-sheet.js';
import type { SheetInHand } from './use-sheet.js';
import { useOrderContent } from './use-order-content.js';
import { useWrittenSheet } from './use-written-sheet.js';

/** Readings are confirmed, and what is then ordered is shown and printed. */
export function OrderDialog(props: { readonly sheet: SheetInHand; readonly onClose: () => void }) {
  const { sheet, onClose } = props;
  const written = useWrittenSheet(sheet);
  const content = useOrderContent(sheet, written);
  const order = orderDocument(content);
  useInPlaceOfSheet('order');
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
        <OrderSaving content={content} order={order} />
        <div className="order-preview">
          <OrderSheet order={order} />
        </div>
      </section>
      {createPortal(
        <div className="order-paper">
          <OrderSheet order={order} />
        </div>,
        document.body,
      )}
    </Modal>
  );
}
