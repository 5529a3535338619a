import type { CameraRecord } from '../core/record/session-record.js';
import { formatNumber } from './numbers.js';
import { AdviceList } from './picture-facts.js';
import { adviceSentence } from './picture-sentences.js';
import { sweepAdviceSentence } from './sweep-sentences.js';
import { dateText, words } from './language.js';

const WHEN = { dateStyle: 'long', timeStyle: 'short' } as const;

/** What is said in place of a picture that is not there any more, or never was at this desk. */
export function RecordedNote({ camera }: { readonly camera: CameraRecord }) {
  const when = dateText(new Date(camera.takenAt), WHEN);
  const isAlone = camera.supervision === 'none';
  const sentences =
    camera.kind === 'picture'
      ? camera.advice.map(adviceSentence)
      : camera.advice.map((advice) => sweepAdviceSentence(advice, (place) => place + 1));
  return (
    <>
      <div className={isAlone ? 'note note-warning' : 'note'}>
        <p>
          {isAlone ? <strong>{words.desk.recorded.alone(when)}</strong> : words.desk.recorded[camera.kind](when)}{' '}
          {isAlone && words.desk.recorded.aloneMore}
        </p>
        <p>
          {words.picture.distance}: {formatNumber(camera.estimates.distance.value / 10, 0)} cm.{' '}
          {words.picture.pixelsPerMm(formatNumber(camera.pixelsPerMm, 1))}.{' '}
          {camera.kind === 'sweep' && words.desk.recorded.frames(camera.framesUsed, camera.framesTaken)}
        </p>
      </div>
      <AdviceList heading={words.picture.better} sentences={sentences} />
    </>
  );
}
