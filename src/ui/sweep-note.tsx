import type { SheetState } from '../session/sheet.js';
import type { SweepTrouble } from '../session/sweep-frames.js';
import { commonestFailure, frameCounts, straightestFrame } from '../session/sweep-frames.js';
import type { SweepRun } from '../session/sweep-run.js';
import { sweepFailureSaying } from './sentences.js';
import { FramesProgress, WorkProgress } from './sweep-dialog.js';
import { FramesList } from './sweep-view.js';
import type { SheetInHand } from './use-sheet.js';
import { sweepWords as words } from './words.js';

/** A sweep on its way, or why it came to nothing. */
export function SweepNote({ sheet, run }: { readonly sheet: SheetInHand; readonly run: SweepRun }) {
  const { stage, frames, expected } = run;
  switch (stage.kind) {
    case 'collecting': {
      const { found, missed } = frameCounts(frames);
      return expected === null && frames.length === 0 ? (
        <WorkProgress what={words.openingVideo} share={null} />
      ) : (
        <FramesProgress done={found + missed} all={expected ?? frames.length} loading={sheet.sweep.loading} />
      );
    }
    case 'measuring':
      return <WorkProgress what={words.measuring} share={sheet.sweep.measuringShare ?? 0} />;
    case 'failed':
      return <SweepFailed sheet={sheet} run={run} failure={stage.failure} />;
  }
}

function SweepFailed(props: { readonly sheet: SheetInHand; readonly run: SweepRun; readonly failure: SweepTrouble }) {
  const { measurePicture, sweep } = props.sheet;
  const { frames } = props.run;
  const best = straightestFrame(frames)?.kept ?? null;
  return (
    <div className="sweep-failed">
      <SweepFailureNote failure={props.failure} frames={frames} />
      <div className="actions">
        {best !== null && (
          <button
            type="button"
            onClick={() => {
              measurePicture({ kind: 'file', blob: best, name: '' });
            }}
          >
            {words.bestAlone}
          </button>
        )}
        <button type="button" className="quiet" onClick={sweep.drop}>
          {words.dismiss}
        </button>
      </div>
      {frames.length > 0 && <FramesList frames={frames} />}
    </div>
  );
}

function SweepFailureNote(props: { readonly failure: SweepTrouble; readonly frames: SweepRun['frames'] }) {
  const { what, next } = sweepFailureSaying(props.failure, commonestFailure(props.frames));
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
      {isRenewed && <WorkProgress what={words.renewing} share={share} />}
      {measurement?.ok === true && measurement.value.kind === 'sweep' && (
        <p className="note">
          <strong>{words.used(measurement.value.framesUsed, picture.frames.length)}</strong>
        </p>
      )}
      {measurement?.ok === false && measurement.failure.kind === 'sweep' && !isRenewed && (
        <SweepFailureNote failure={measurement.failure.failure} frames={picture.frames} />
      )}
    </>
  );
}

type SweptState = Extract<SheetState['picture'], { kind: 'swept' }>;
