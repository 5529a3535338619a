import { useId, useState } from 'react';
import type { Paper } from '../session/ports.js';
import type { OrderDocument } from '../sheets/order-document.js';
import { downloadFile } from './download-file.js';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import type { OrderContent } from './order-document.js';
import { writeOrderFile } from '../session/order-file.js';

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'making' }
  | { readonly kind: 'made'; readonly fileName: string }
  | { readonly kind: 'failed' };

/** The order as files: as a PDF, and as numbers that a workshop's program can read. */
export function OrderSaving(props: { readonly content: OrderContent; readonly paper: OrderDocument }) {
  const { content } = props;
  const { orderPdf } = useEquipment();
  const [paper, setPaper] = useState<Paper>('a4');
  const [stage, setStage] = useState<Stage>({ kind: 'idle' });
  const paperId = useId();
  const day = content.when.toISOString().slice(0, 10);

  const savePdf = (): void => {
    if (stage.kind === 'making') return;
    setStage({ kind: 'making' });
    const fileName = `glabella-order-${day}-${paper}.pdf`;
    orderPdf(props.paper, paper).then(
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
      <p className="labelled">
        <label htmlFor={paperId}>{words.print.paper}</label>
        <select
          id={paperId}
          value={paper}
          onChange={(event) => {
            setPaper(event.currentTarget.value === 'letter' ? 'letter' : 'a4');
          }}
        >
          <option value="a4">{words.print.a4}</option>
          <option value="letter">{words.print.letter}</option>
        </select>
      </p>
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
