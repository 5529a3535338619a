import { useId } from 'react';
import type { MeasuringProgress } from '../session/ports.js';
import { progressSentence } from './picture-sentences.js';
import { words } from './language.js';

/** How far the work on the frames of a sweep has come. */
export function FramesProgress(props: {
  readonly done: number;
  readonly all: number;
  readonly loading: MeasuringProgress | null;
}) {
  const { all, done, loading } = props;
  return loading === null ? (
    <WorkProgress what={words.sweep.workingThrough(done, all)} share={done / Math.max(1, all)} />
  ) : (
    <WorkProgress what={progressSentence(loading)} share={loading.share} />
  );
}

/** A work with its progress; `share` is null where nobody knows how far it has come. */
export function WorkProgress({ what, share }: { readonly what: string; readonly share: number | null }) {
  const id = useId();
  return (
    <p className="note progress">
      <span id={id}>{what}</span>
      {share === null ? <progress aria-labelledby={id} /> : <progress aria-labelledby={id} max={1} value={share} />}
    </p>
  );
}
