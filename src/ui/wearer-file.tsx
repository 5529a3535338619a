import { useEffect, useState } from 'react';
import type { Answer, AnswerPicture } from '../session/answer.js';
import { answerFileName, sealAnswer } from '../session/answer-exchange.js';
import { armoured } from '../session/armoured.js';
import type { SealFailure } from '../session/sealing.js';
import { answerOfVisit, framesToSend } from '../session/wearer-visit.js';
import type { WearerVisit } from '../session/wearer-visit.js';
import { afterPainting } from './after-painting.js';
import { downloadFile } from './download-file.js';
import { FailureNote } from './failure-note.js';
import { keptPixels } from './kept-picture-pixels.js';
import { spokenTag, words } from './language.js';
import { useFault } from './use-fault.js';
import { WearerFrame } from './wearer-frame.js';
import type { StepProps } from './wearer-step-props.js';
import { wearerSealSaying } from './wearer-sentences.js';

interface MadeFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly pictures: number;
  /** the wearer agreed, but none could be cut out */
  readonly lacksPictures: boolean;
}

type Stage =
  | { readonly kind: 'making' }
  | { readonly kind: 'failed'; readonly failure: SealFailure }
  | { readonly kind: 'made'; readonly file: MadeFile };

type Handed = 'saved' | 'shared' | 'refused' | null;

/** The encrypted file, and how it comes to the practice. */
export function WearerFile({ visit, dispatch, invitation, equipment, readAloud, place }: StepProps) {
  const [stage, setStage] = useState<Stage>({ kind: 'making' });
  const [handed, setHanded] = useState<Handed>(null);
  const onFault = useFault();
  const said = words.wearer.file;
  const { sealing, appVersion } = equipment;
  const { practice } = invitation;

  const isMaking = stage.kind === 'making';
  useEffect(() => {
    if (!isMaking) return;
    const life = { isOver: false };
    const make = async (): Promise<void> => {
      await afterPainting();
      const pictures = visit.consent === null ? [] : await cutOut(visit);
      const answer = answerOfVisit(visit, {
        id: sealing.randomId(),
        invitation,
        appVersion,
        language: spokenTag,
        pictures: visit.consent === null || pictures.length === 0 ? null : { consent: visit.consent, pictures },
      });
      if (answer === null || life.isOver) return;
      const sealed = await sealAnswer(sealing, answer, invitation);
      if (life.isOver) return;
      if (sealed.ok) setStage({ kind: 'made', file: madeFile(answer, sealed.value, visit.consent !== null) });
      else setStage({ kind: 'failed', failure: sealed.failure });
    };
    make().catch((reason: unknown) => {
      if (!life.isOver) onFault(reason);
    });
    return () => {
      life.isOver = true;
    };
  }, [isMaking, visit, invitation, sealing, appVersion, onFault]);

  const file = stage.kind === 'made' ? stage.file : null;
  const isHanded = handed === 'saved' || handed === 'shared';
  useEffect(() => {
    if (isHanded || file === null) return;
    const ask = (event: BeforeUnloadEvent): void => {
      event.preventDefault();
    };
    window.addEventListener('beforeunload', ask);
    return () => {
      window.removeEventListener('beforeunload', ask);
    };
  }, [isHanded, file]);

  const shared = file === null ? null : textFile(file);
  const canShare = shared !== null && canShareFile(shared);
  const save = (): void => {
    if (file === null) return;
    downloadFile(file.bytes, file.name, 'application/octet-stream');
    setHanded('saved');
  };
  const share = async (): Promise<void> => {
    if (shared === null) return;
    try {
      await navigator.share({ files: [shared], title: said.shareTitle });
      setHanded('shared');
    } catch (error) {
      // Whoever closed the sheet wants to choose again.
      if (!(error instanceof DOMException && error.name === 'AbortError')) setHanded('refused');
    }
  };
  const mainSave = !canShare || handed === 'refused';

  return (
    <WearerFrame
      heading={said.heading}
      place={place}
      readAloud={readAloud}
      spoken={file === null ? said.making : `${said.ready(practice)} ${said.how(practice)}`}
      onBack={
        isHanded
          ? null
          : () => {
              dispatch({ kind: 'went-back' });
            }
      }
      actions={
        <>
          {file !== null && canShare && (
            <button
              type="button"
              className={mainSave ? '' : 'main-action'}
              onClick={() => {
                share().catch(onFault);
              }}
            >
              {said.share}
            </button>
          )}
          {file !== null && (
            <button type="button" className={mainSave ? 'main-action' : ''} onClick={save}>
              {said.save}
            </button>
          )}
          {stage.kind === 'failed' && (
            <button
              type="button"
              className="main-action"
              onClick={() => {
                setStage({ kind: 'making' });
              }}
            >
              {said.again}
            </button>
          )}
        </>
      }
    >
      {stage.kind === 'failed' && <FailureNote saying={wearerSealSaying(stage.failure, navigator.onLine)} />}
      <p role="status">{file === null ? isMaking && said.making : said.ready(practice)}</p>
      {file !== null && (
        <>
          <p>
            {file.lacksPictures
              ? words.wearer.result.noPicture
              : file.pictures === 0
                ? said.withoutPictures
                : said.withPictures(file.pictures)}
          </p>
          <p>{said.how(practice)}</p>
          {!isHanded && <p className="wearer-small">{said.keepOpen}</p>}
        </>
      )}
      <div role="status">
        {handed === 'saved' && file !== null && <p className="wearer-done">{said.saved(file.name)}</p>}
        {handed === 'shared' && <p className="wearer-done">{said.shared}</p>}
        {isHanded && <p>{said.over}</p>}
      </div>
      {handed === 'refused' && <FailureNote saying={said.shareFailed} />}
    </WearerFrame>
  );
}

function madeFile(answer: Answer, bytes: Uint8Array<ArrayBuffer>, isAgreed: boolean): MadeFile {
  const pictures = answer.pictures?.pictures.length ?? 0;
  return { name: answerFileName(answer), bytes, pictures, lacksPictures: isAgreed && pictures === 0 };
}

/** The pictures that go along; those that cannot be opened or cut out are left out. */
async function cutOut({ taken }: WearerVisit): Promise<readonly AnswerPicture[]> {
  const pictures: AnswerPicture[] = [];
  for (const { kept, outcome } of taken === null ? [] : framesToSend(taken)) {
    if (kept === null || outcome.kind !== 'found') continue;
    const bitmap = await createImageBitmap(kept).catch(() => null);
    if (bitmap === null) continue;
    try {
      const cut = await keptPixels(bitmap, outcome.features);
      if (cut.ok) pictures.push(cut.value);
    } finally {
      bitmap.close();
    }
  }
  return pictures;
}

/** The file as text: phones hand on texts, and mostly nothing that they do not know. */
function textFile({ name, bytes }: MadeFile): File {
  return new File([armoured(bytes)], `${name}.txt`, { type: 'text/plain' });
}

function canShareFile(file: File): boolean {
  // Not every browser has these functions.
  const { canShare, share } = navigator as Partial<Pick<Navigator, 'canShare' | 'share'>>;
  return share !== undefined && canShare?.call(navigator, { files: [file] }) === true;
}
