import type { SheetState } from '../session/sheet.js';
import type { SweepFrame, SweepTrouble } from '../session/sweep-frames.js';
import { frameCounts, framesMissing, straightestFrame } from '../session/sweep-frames.js';
import type { SweepRun } from '../session/sweep-run.js';
import { sweepFailureSaying } from './sweep-sentences.js';
import { sweepHeadline } from './sweep-headline.js';
import { FramesList } from './sweep-view.js';
import type { SheetInHand } from './use-sheet.js';
import { FramesProgress, WorkProgress } from './work-progress.js';
import { words } from './language.js';

/** A sweep on its way, or why it came to nothing. */
export function SweepNote({ sheet, run }: { readonly sheet: SheetInHand; readonly run: SweepRun }) {
  const { stage, frames, expected } = run;
  switch (stage.kind) {
    case 'collecting': {
      const { found, missed } = frameCounts(frames);
      return expected === null && frames.length === 0 ? (
        <WorkProgress what={words.sweep.openingVideo} share={null} />
      ) : (
        <FramesProgress done={found + missed} all={expected ?? frames.length} loading={sheet.sweep.loading} />
      );
    }
    case 'measuring':
      return <WorkProgress what={words.sweep.measuring} share={sheet.sweep.measuringShare ?? 0} />;
    case 'failed':
      return <SweepFailed sheet={sheet} run={run} failure={stage.failure} />;
  }
}

function SweepFailed(props: { readonly sheet: SheetInHand; readonly run: SweepRun; readonly failure: SweepTrouble }) {
  const { state, sweep } = props.sheet;
  const { frames } = props.run;
  const { kind } = state.picture;
  return (
    <div className="sweep-failed">
      <SweepFailureNote failure={props.failure} frames={frames} />
      <div className="actions">
        <BestAlone sheet={props.sheet} frames={frames} />
        <button type="button" className={kind === 'none' ? 'quiet' : undefined} onClick={sweep.drop}>
          {kind === 'none' ? words.sweep.dismiss : words.sweep.backTo[kind === 'swept' ? 'sweep' : 'picture']}
        </button>
      </div>
      {frames.length > 0 && <FramesList frames={frames} />}
    </div>
  );
}

/** Offers the straightest of the frames in which all was found. */
function BestAlone({ sheet, frames }: { readonly sheet: SheetInHand; readonly frames: readonly SweepFrame[] }) {
  const best = straightestFrame(frames)?.kept ?? null;
  if (best === null) return null;
  return (
    <button
      type="button"
      onClick={() => {
        sheet.measurePicture({ kind: 'file', blob: best, name: '' });
      }}
    >
      {words.sweep.bestAlone}
    </button>
  );
}

function SweepFailureNote(props: { readonly failure: SweepTrouble; readonly frames: SweepRun['frames'] }) {
  const { what, next } = sweepFailureSaying(props.failure, framesMissing(props.frames));
  return (
    <p className="note note-failure">
      <strong>{what}</strong> {next}
    </p>
  );
}

/** What a measured sweep says of itself: how many frames carried it, that it is being renewed, or why it has no numbers. */
export function SweptNote({ sheet, picture }: { readonly sheet: SheetInHand; readonly picture: SweptState }) {
  const { measurement } = sheet;
  const share = sheet.sweep.measuringShare;
  // While another sweep is being measured, the share is that one's.
  const isRenewed = share !== null && sheet.state.sweep?.stage.kind !== 'measuring';
  return (
    <>
      {isRenewed && <WorkProgress what={words.sweep.renewing} share={share} />}
      {measurement?.ok === true && measurement.value.kind === 'sweep' && (
        <p className={measurement.value.slippedFromFrame === null ? 'note headline' : 'note headline note-advice'}>
          <strong>{sweepHeadline(measurement.value, picture.frames, picture.outcome)}</strong>
        </p>
      )}
      {measurement?.ok === false && measurement.failure.kind === 'sweep' && !isRenewed && (
        <div className="sweep-failed">
          <SweepFailureNote failure={measurement.failure.failure} frames={picture.frames} />
          <div className="actions">
            <BestAlone sheet={sheet} frames={picture.frames} />
          </div>
        </div>
      )}
    </>
  );
}

type SweptState = Extract<SheetState['picture'], { kind: 'swept' }>;
