import { useState } from 'react';
import { isoDay } from '../session/iso-day.js';
import { writeOrderFile } from '../session/order-file.js';
import type { Paper } from '../session/ports.js';
import type { OrderDocument } from '../sheets/order-document.js';
import { downloadFile } from './download-file.js';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import type { OrderContent } from './order-document.js';
import { PaperChoice } from './paper-choice.js';

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'making' }
  | { readonly kind: 'made'; readonly fileName: string }
  | { readonly kind: 'failed' };

/** The order as files: as a PDF, and as numbers that a workshop's program can read. */
export function OrderSaving({ content, order }: { readonly content: OrderContent; readonly order: OrderDocument }) {
  const { orderPdf } = useEquipment();
  const [paper, setPaper] = useState<Paper>('a4');
  const [stage, setStage] = useState<Stage>({ kind: 'idle' });
  const day = isoDay(content.when);

  const savePdf = (): void => {
    if (stage.kind === 'making') return;
    setStage({ kind: 'making' });
    const fileName = `glabella-order-${day}-${paper}.pdf`;
    orderPdf(order, paper).then(
      (bytes) => {
        downloadFile(bytes, fileName, 'application/pdf');
        setStage({ kind: 'made', fileName });
      },
      // The code and the fonts that it is made with are loaded on demand and may not come.
      () => {
        setStage({ kind: 'failed' });
      },
    );
  };
  const saveData = (): void => {
    const fileName = `glabella-order-${day}.json`;
    downloadFile(writeOrderFile(content, new Date().toISOString()), fileName, 'application/json');
    setStage({ kind: 'made', fileName });
  };

  return (
    <div className="order-saving">
      <PaperChoice paper={paper} onChoose={setPaper} />
      <button type="button" onClick={savePdf}>
        {words.order.savePdf}
      </button>
      <button type="button" className="quiet" onClick={saveData}>
        {words.order.saveData}
      </button>
      <p role="status" className={stage.kind === 'failed' ? 'note note-failure' : 'note'}>
        {stage.kind === 'making' && words.order.saving}
        {stage.kind === 'made' && words.order.saved(stage.fileName)}
        {stage.kind === 'failed' && words.order.saveFailed}
      </p>
    </div>
  );
}
