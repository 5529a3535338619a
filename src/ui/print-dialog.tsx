import { useEffect, useState } from 'react';
import type { Paper } from '../session/ports.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import { useEquipment } from './equipment.js';
import { Modal } from './modal.js';
import { PaperChoice } from './paper-choice.js';
import { PrintScaleField } from './print-scale-field.js';
import { words } from './language.js';

const SHEETS = [
  { kind: 'markerCard', fileName: 'glabella-marker-card' },
  { kind: 'printCheck', fileName: 'glabella-print-check' },
  { kind: 'board', fileName: 'glabella-camera-sheet' },
] as const;

type Files = Readonly<Record<(typeof SHEETS)[number]['kind'], string>>;
type FilesState =
  { readonly kind: 'ready'; readonly paper: Paper; readonly files: Files } | { readonly kind: 'failed' };

/** The sheets to print, and the check of the print. */
export function PrintDialog(props: {
  readonly settings: SheetSettings;
  readonly onChange: (change: Partial<SheetSettings>) => void;
  readonly onClose: () => void;
}) {
  const [paper, setPaper] = useState<Paper>('a4');
  const state = useSheetFiles(paper);
  return (
    <Modal heading={words.print.heading} closeLabel={words.print.close} onClose={props.onClose}>
      <p>{words.print.intro}</p>
      <PaperChoice paper={paper} onChoose={setPaper} />
      <p role="status" className={state?.kind === 'failed' ? 'note note-failure' : 'note'}>
        {state === null && words.print.making}
        {state?.kind === 'failed' && words.print.failed}
      </p>
      {state?.kind === 'ready' && (
        <ul className="sheet-links">
          {SHEETS.map(({ kind, fileName }) => (
            <li key={kind}>
              <a href={state.files[kind]} download={`${fileName}-${state.paper}.pdf`}>
                {words.print[kind]}
              </a>
            </li>
          ))}
        </ul>
      )}
      <p className="note">{words.print.printCheckNote}</p>
      <p className="note">{words.print.boardNote}</p>
      <p className="caution">{words.print.caution}</p>
      <PrintScaleField settings={props.settings} onChange={props.onChange} />
    </Modal>
  );
}

/** Addresses of the PDF files for a paper; null while they are made. They are given back with the dialog. */
function useSheetFiles(paper: Paper): FilesState | null {
  const { print } = useEquipment();
  const [state, setState] = useState<FilesState | null>(null);
  useEffect(() => {
    const life = { isOver: false };
    const addresses: string[] = [];
    const address = (file: Blob): string => {
      const made = URL.createObjectURL(file);
      addresses.push(made);
      return made;
    };
    const make = async (): Promise<FilesState> => {
      const [markerCard, printCheck, board] = await Promise.all([
        print.markerCardPdf(paper),
        print.printCheckPdf(paper),
        print.boardPdf(paper),
      ]);
      return life.isOver
        ? { kind: 'failed' }
        : {
            kind: 'ready',
            paper,
            files: { markerCard: address(markerCard), printCheck: address(printCheck), board: address(board) },
          };
    };
    make().then(
      (made) => {
        if (!life.isOver) setState(made);
      },
      // The code that makes them is loaded on demand and may not come.
      () => {
        if (!life.isOver) setState({ kind: 'failed' });
      },
    );
    return () => {
      life.isOver = true;
      setState(null);
      for (const one of addresses) URL.revokeObjectURL(one);
    };
  }, [print, paper]);
  return state;
}
