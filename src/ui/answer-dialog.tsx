import { useState } from 'react';
import { ANSWER_LIMIT_BYTES } from '../session/answer.js';
import { takeAnswerIn } from '../session/answer-intake.js';
import { useEquipment } from './equipment.js';
import { FailureNote } from './failure-note.js';
import { bytesOfFile } from './file-bytes.js';
import { FileDrop } from './file-drop.js';
import { invitationFailureSaying, conditionsRemark } from './invitations-sentences.js';
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

  const open = (sessionId: string): void => {
    onClose();
    onOpen(sessionId);
  };
  const take = async (file: File): Promise<void> => {
    const { name, size } = file;
    const failed = (saying: Saying): void => {
      setStage({ kind: 'failed', name, saying });
    };
    if (size > ANSWER_LIMIT_BYTES) {
      failed(invitationFailureSaying({ kind: 'too-large', bytes: size, limitBytes: ANSWER_LIMIT_BYTES }));
      return;
    }
    setStage({ kind: 'reading', name });
    const bytes = await bytesOfFile(file);
    if (bytes === null) {
      failed(words.invitations.failure.fileGone);
      return;
    }
    const tools = { ...database, sealing, newId: () => crypto.randomUUID(), remarkOn: conditionsRemark };
    const taken = await takeAnswerIn(tools, bytes, new Date());
    if (!taken.ok) failed(invitationFailureSaying(taken.failure));
    else if (taken.value.picturesLost > 0)
      setStage({ kind: 'without-pictures', name, sessionId: taken.value.sessionId });
    else open(taken.value.sessionId);
  };
  return (
    <Modal heading={said.heading} closeLabel={said.close} onClose={onClose}>
      <FileDrop
        dropped={props.file}
        said={stage.kind === 'choosing' ? said.what : said.file(stage.name)}
        chooseWords={stage.kind === 'choosing' ? said.choose : said.chooseAnother}
        accept=".age,.txt"
        // What was taken in is to be opened first.
        isBusy={stage.kind === 'reading' || stage.kind === 'without-pictures'}
        onFile={(file) => {
          take(file).catch(onFault);
        }}
      >
        <div role="status">
          {stage.kind === 'reading' && <p>{said.reading}</p>}
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
      </FileDrop>
    </Modal>
  );
}
