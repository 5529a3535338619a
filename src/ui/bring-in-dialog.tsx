import { useState } from 'react';
import type { BringFailure, HandOnTools } from '../session/hand-on.js';
import { bringIn, fileKind, LARGEST_BROUGHT_BYTES } from '../session/hand-on.js';
import type { BroughtIn } from '../session/session-store.js';
import { afterPainting } from './after-painting.js';
import { FailureNote } from './failure-note.js';
import { bytesOfFile } from './file-bytes.js';
import { FileDrop } from './file-drop.js';
import { bringFailureSaying, tooLargeSaying } from './hand-on-sentences.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import { PassphraseField } from './passphrase-fields.js';
import type { Saying } from './saying.js';
import { useFault } from './use-fault.js';

type Stage =
  | { readonly kind: 'choosing' }
  | { readonly kind: 'reading'; readonly name: string }
  /** sealed; `isWrong` where a passphrase did not open it */
  | { readonly kind: 'sealed'; readonly name: string; readonly bytes: Uint8Array; readonly isWrong: boolean }
  | { readonly kind: 'opening'; readonly name: string }
  | { readonly kind: 'brought'; readonly name: string; readonly counts: BroughtIn }
  | { readonly kind: 'failed'; readonly name: string; readonly saying: Saying };

/** Brings in a file that was dropped or is chosen here. Files that are sealed to a key go on to `onOther`. */
export function BringInDialog(props: {
  readonly tools: Omit<HandOnTools, 'writers'>;
  /** a file that was dropped; null where one is to be chosen */
  readonly file: File | null;
  readonly onBrought: () => void;
  /** takes a file that no passphrase opens, as the answers of distant wearers are; this dialog has closed by then */
  readonly onOther: (file: File) => void;
  readonly onClose: () => void;
}) {
  const { tools, onBrought, onOther, onClose } = props;
  const [stage, setStage] = useState<Stage>({ kind: 'choosing' });
  const [passphrase, setPassphrase] = useState('');
  const onFault = useFault();

  const bring = async (name: string, bytes: Uint8Array, given: string | null): Promise<void> => {
    const brought = await bringIn(tools, bytes, given);
    if (brought.ok) {
      setPassphrase('');
      setStage({ kind: 'brought', name, counts: brought.value });
      onBrought();
    } else if (brought.failure.kind === 'wrong-passphrase') {
      setStage({ kind: 'sealed', name, bytes, isWrong: true });
    } else {
      setStage(failed(name, brought.failure));
    }
  };
  const read = async (file: File): Promise<void> => {
    const { name, size } = file;
    if (size > LARGEST_BROUGHT_BYTES) {
      setStage({ kind: 'failed', name, saying: tooLargeSaying(size) });
      return;
    }
    setStage({ kind: 'reading', name });
    const bytes = await bytesOfFile(file);
    if (bytes === null) {
      setStage({ kind: 'failed', name, saying: words.handOn.failure.fileGone });
      return;
    }
    const kind = fileKind(bytes);
    if (kind === 'sealed-with-passphrase') {
      setStage({ kind: 'sealed', name, bytes, isWrong: false });
    } else if (kind === 'plain') {
      await bring(name, bytes, null);
    } else {
      onClose();
      onOther(file);
    }
  };
  const open = async (): Promise<void> => {
    if (stage.kind !== 'sealed' || passphrase === '') return;
    const { name, bytes } = stage;
    setStage({ kind: 'opening', name });
    await afterPainting();
    await bring(name, bytes, passphrase);
  };
  const startOpening = (): void => {
    open().catch(onFault);
  };

  return (
    <Modal heading={words.handOn.bringHeading} closeLabel={words.handOn.close} onClose={onClose}>
      <FileDrop
        dropped={props.file}
        intro={<p className="note">{words.handOn.bringWhat}</p>}
        said={stage.kind === 'choosing' ? words.handOn.drop : words.handOn.file(stage.name)}
        chooseWords={stage.kind === 'choosing' ? words.handOn.choose : words.handOn.chooseAnother}
        accept=".json,.age,.txt,application/json"
        isBusy={stage.kind === 'reading' || stage.kind === 'opening'}
        onFile={(file) => {
          read(file).catch(onFault);
        }}
      >
        {stage.kind === 'sealed' && (
          <>
            <p>{words.handOn.needsPassphrase}</p>
            {stage.isWrong && <FailureNote saying={words.handOn.failure.wrongPassphrase} />}
            <PassphraseField
              typed={passphrase}
              onTyped={setPassphrase}
              isInvalid={stage.isWrong}
              onEnter={startOpening}
            />
            <div className="actions">
              <button type="button" className="main-action" onClick={startOpening}>
                {words.handOn.open}
              </button>
            </div>
          </>
        )}
        <div role="status">
          {stage.kind === 'reading' && <p>{words.handOn.readingFile}</p>}
          {stage.kind === 'opening' && <p>{words.handOn.opening}</p>}
          {stage.kind === 'brought' && (
            <p className="hand-on-made">
              {words.handOn.brought(stage.counts)} {stage.counts.beside > 0 && words.handOn.besideWhy}
            </p>
          )}
        </div>
        {stage.kind === 'failed' && <FailureNote saying={stage.saying} />}
      </FileDrop>
    </Modal>
  );
}

function failed(name: string, failure: BringFailure): Stage {
  return { kind: 'failed', name, saying: bringFailureSaying(failure) };
}
