import { useCallback, useEffect, useRef, useState } from 'react';
import { ANSWER_LIMIT_BYTES } from '../session/answer.js';
import { takeAnswerIn } from '../session/answer-intake.js';
import { useEquipment } from './equipment.js';
import { FailureNote } from './failure-note.js';
import { answerFailureSaying, conditionsRemark } from './invitations-sentences.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import type { Saying } from './saying.js';
import { useFault } from './use-fault.js';

type Stage =
  | { readonly kind: 'choosing' }
  | { readonly kind: 'reading'; readonly name: string }
  | { readonly kind: 'failed'; readonly name: string; readonly saying: Saying }
  /** kept, but not all of its pictures */
  | { readonly kind: 'without-pictures'; readonly name: string; readonly sessionId: string };

/** Takes in the answer of a distant wearer, and opens the session that it becomes. */
export function AnswerDialog(props: {
  /** a file that was dropped; null where it is still to be chosen */
  readonly file: File | null;
  readonly onOpen: (sessionId: string) => void;
  readonly onClose: () => void;
}) {
  const { onOpen, onClose } = props;
  const { database, sealing } = useEquipment();
  const [stage, setStage] = useState<Stage>({ kind: 'choosing' });
  const onFault = useFault();
  const said = words.invitations.answer;

  const open = useCallback(
    (sessionId: string) => {
      onClose();
      onOpen(sessionId);
    },
    [onClose, onOpen],
  );
  const take = async (file: File): Promise<void> => {
    const { name, size } = file;
    const failed = (saying: Saying): void => {
      setStage({ kind: 'failed', name, saying });
    };
    if (size > ANSWER_LIMIT_BYTES) {
      failed(answerFailureSaying({ kind: 'too-large', bytes: size, limitBytes: ANSWER_LIMIT_BYTES }));
      return;
    }
    setStage({ kind: 'reading', name });
    const bytes = await bytesOf(file);
    if (bytes === null) {
      failed(words.invitations.failure.fileGone);
      return;
    }
    const tools = { ...database, sealing, newId: () => crypto.randomUUID(), remarkOn: conditionsRemark };
    const taken = await takeAnswerIn(tools, bytes, new Date());
    if (!taken.ok) failed(answerFailureSaying(taken.failure));
    else if (taken.value.picturesLost > 0)
      setStage({ kind: 'without-pictures', name, sessionId: taken.value.sessionId });
    else open(taken.value.sessionId);
  };
  const start = (file: File | undefined): void => {
    if (file !== undefined) take(file).catch(onFault);
  };

  const dropped = useRef(props.file);
  const takeDropped = useRef(start);
  useEffect(() => {
    const file = dropped.current;
    dropped.current = null;
    if (file !== null) takeDropped.current(file);
  }, []);

  const isBusy = stage.kind === 'reading';
  return (
    <Modal heading={said.heading} closeLabel={said.close} onClose={onClose}>
      <div
        className="hand-on"
        onDragOver={(event) => {
          event.preventDefault();
        }}
        onDrop={(event) => {
          event.preventDefault();
          event.stopPropagation();
          if (!isBusy) start(event.dataTransfer.files[0]);
        }}
      >
        <div className="hand-on-drop">
          <p>{stage.kind === 'choosing' ? said.what : said.file(stage.name)}</p>
          {!isBusy && stage.kind !== 'without-pictures' && (
            <label className="file-button">
              <input
                type="file"
                accept=".age,.txt"
                onChange={(event) => {
                  const file = event.currentTarget.files?.[0];
                  event.currentTarget.value = '';
                  start(file);
                }}
              />
              <span>{stage.kind === 'choosing' ? said.choose : said.chooseAnother}</span>
            </label>
          )}
        </div>
        <div role="status">
          {isBusy && <p>{said.reading}</p>}
          {stage.kind === 'without-pictures' && <p className="hand-on-made">{said.withoutPictures}</p>}
        </div>
        {stage.kind === 'failed' && <FailureNote saying={stage.saying} />}
        {stage.kind === 'without-pictures' && (
          <div className="actions">
            <button
              type="button"
              className="main-action"
              onClick={() => {
                open(stage.sessionId);
              }}
            >
              {said.openSession}
            </button>
          </div>
        )}
      </div>
    </Modal>
  );
}

/** Null where the file went, or may not be read any more, since it was chosen. */
async function bytesOf(file: File): Promise<Uint8Array | null> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    return null;
  }
}
