import { useState } from 'react';
import type { DecimalSign } from '../core/reading/parse-reading.js';
import type { HandedOn, HandOnFailure, HandOnFormat, HandOnTools } from '../session/hand-on.js';
import { handOn } from '../session/hand-on.js';
import type { PassphraseProblem } from '../session/passphrase.js';
import { passphraseProblem } from '../session/passphrase.js';
import { afterPainting } from './after-painting.js';
import { downloadFile } from './download-file.js';
import { FailureNote } from './failure-note.js';
import { handOnFailureSaying } from './hand-on-sentences.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import { fieldDecimalSign } from './numbers.js';
import { NewPassphraseFields, NO_PASSPHRASE } from './passphrase-fields.js';
import { RadioChoice } from './radio-choice.js';
import { useFault } from './use-fault.js';

const FORMATS: readonly HandOnFormat[] = ['session-file', 'backup', 'table'];
const DECIMAL_SIGNS: readonly DecimalSign[] = ['.', ','];

type Stage =
  | { readonly kind: 'choosing' }
  | { readonly kind: 'making' }
  | { readonly kind: 'made'; readonly file: HandedOn }
  | { readonly kind: 'failed'; readonly failure: HandOnFailure };

/** Hands sessions on as a file: what kind of file, and with which passphrase. */
export function HandOnDialog(props: {
  readonly tools: Omit<HandOnTools, 'fresh'>;
  readonly ids: readonly string[] | 'all';
  readonly onClose: () => void;
}) {
  const { ids, tools } = props;
  const [format, setFormat] = useState<HandOnFormat>('session-file');
  // as the screen writes numbers, so will the spreadsheet of this desk
  const [decimalSign, setDecimalSign] = useState<DecimalSign>(fieldDecimalSign);
  const [typed, setTyped] = useState(NO_PASSPHRASE);
  const [problem, setProblem] = useState<PassphraseProblem | null>(null);
  const [stage, setStage] = useState<Stage>({ kind: 'choosing' });
  const onFault = useFault();

  const make = async (): Promise<void> => {
    const found = format === 'backup' ? passphraseProblem(typed.once, typed.again) : null;
    setProblem(found);
    if (found !== null || stage.kind === 'making') return;
    setStage({ kind: 'making' });
    await afterPainting();
    const wish = { ids, format, decimalSign, passphrase: typed.once, now: new Date() };
    const made = await handOn(tools, wish);
    if (!made.ok) {
      setStage({ kind: 'failed', failure: made.failure });
      return;
    }
    downloadFile(made.value.content, made.value.fileName, made.value.type);
    setTyped(NO_PASSPHRASE);
    setStage({ kind: 'made', file: made.value });
  };
  const start = (): void => {
    make().catch(onFault);
  };

  return (
    <Modal
      heading={ids === 'all' ? words.handOn.headingAll : words.handOn.heading(ids.length)}
      closeLabel={words.handOn.close}
      onClose={props.onClose}
    >
      <div className="hand-on">
        <RadioChoice
          legend={words.handOn.as}
          values={FORMATS}
          chosen={format}
          wordsOf={(one) => words.handOn.format[one]}
          onChoose={(one) => {
            setFormat(one);
            setProblem(null);
            setStage({ kind: 'choosing' });
          }}
        />
        <p className="note">{words.handOn.formatNote[format]}</p>
        {format === 'table' && (
          <RadioChoice
            legend={words.handOn.decimalSign}
            values={DECIMAL_SIGNS}
            chosen={decimalSign}
            wordsOf={(sign) => (sign === ',' ? words.handOn.comma : words.handOn.point)}
            onChoose={setDecimalSign}
          />
        )}
        {format === 'backup' && (
          <NewPassphraseFields typed={typed} onTyped={setTyped} problem={problem} onEnter={start} />
        )}
        <div className="actions">
          <button type="button" className="main-action" aria-disabled={stage.kind === 'making'} onClick={start}>
            {words.handOn.make}
          </button>
        </div>
        <div role="status">
          {stage.kind === 'making' && <p>{format === 'backup' ? words.handOn.sealing : words.handOn.making}</p>}
          {stage.kind === 'made' && (
            <p className="hand-on-made">
              {words.handOn.made(stage.file.count, stage.file.fileName)}{' '}
              {stage.file.unreadable > 0 && words.handOn.leftOut(stage.file.unreadable)}
            </p>
          )}
        </div>
        {stage.kind === 'failed' && <FailureNote saying={handOnFailureSaying(stage.failure)} />}
      </div>
    </Modal>
  );
}
