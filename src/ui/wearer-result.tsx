import { useId } from 'react';
import { ANSWER_PICTURE_DAYS } from '../session/answer-intake.js';
import { spokenTag, words } from './language.js';
import { nowText } from './now-text.js';
import { SentenceList } from './sentence-list.js';
import { WearerFrame } from './wearer-frame.js';
import type { StepProps } from './wearer-step-props.js';
import { betterSentences } from './wearer-sentences.js';

/** Whether what was taken is good enough, and whether pictures go along. */
export function WearerResult({ visit, dispatch, invitation, readAloud, place }: StepProps) {
  const noteId = useId();
  const said = words.wearer.result;
  const { taken } = visit;
  if (taken === null) return null;
  const better = betterSentences(taken, visit.conditions);
  const sentences = [...(taken.kind === 'picture' ? [said.single] : []), ...better];
  const verdict = sentences.length === 0 ? said.good : said.better;
  const wording = said.consent(invitation.practice, ANSWER_PICTURE_DAYS);
  return (
    <WearerFrame
      heading={said.heading}
      place={place}
      readAloud={readAloud}
      spoken={[said.heading, verdict, ...sentences, said.noNumbers].join(' ')}
      onBack={null}
      actions={
        <>
          <button
            type="button"
            className="main-action"
            onClick={() => {
              dispatch({ kind: 'went-on', isSo: true });
            }}
          >
            {said.done}
          </button>
          <button
            type="button"
            onClick={() => {
              dispatch({ kind: 'taking-again' });
            }}
          >
            {said.again}
          </button>
        </>
      }
    >
      <p>
        <strong>{verdict}</strong>
      </p>
      <SentenceList sentences={sentences} />
      <p>{said.noNumbers}</p>
      {invitation.asksForPictures && (
        <fieldset className="wearer-pictures">
          <legend>{said.askPictures}</legend>
          <p className="wearer-small" id={noteId}>
            {wording}
          </p>
          <label className="wearer-check">
            <input
              type="checkbox"
              aria-describedby={noteId}
              checked={visit.consent !== null}
              onChange={(event) => {
                const isGiven = event.currentTarget.checked;
                dispatch({
                  kind: 'consent-given',
                  consent: isGiven ? { at: nowText(), wording, language: spokenTag } : null,
                });
              }}
            />
            {said.pictures}
          </label>
          <p className="wearer-small">{said.picturesNote}</p>
        </fieldset>
      )}
    </WearerFrame>
  );
}
