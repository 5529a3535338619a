import type { CSSProperties } from 'react';
import type { CameraStream } from '../session/ports.js';
import { Preview } from './camera-parts.js';
import { words } from './language.js';
import { liveCameraOf } from './live-camera.js';
import { hintSentence, type HintContext } from './live-sentences.js';
import { failureSaying, progressSentence } from './picture-sentences.js';
import type { LiveView } from './use-live-view.js';
import { WorkProgress } from './work-progress.js';

/** The running picture, mirrored, with what was found in each frame drawn on it; the camera's own preview until there is one. */
export function LiveStage({ camera, view }: { readonly camera: CameraStream | null; readonly view: LiveView }) {
  const { stage, picture, marks } = view.screen;
  const size = camera === null ? null : liveCameraOf(camera);
  const ratio: CSSProperties = size === null ? {} : { ['--ratio' as string]: size.widthPx / size.heightPx };
  return (
    <div ref={stage} className={view.isDrawn ? 'live-stage is-drawn' : 'live-stage'} style={ratio}>
      <Preview stream={view.isDrawn ? null : (camera?.stream ?? null)} />
      <canvas ref={picture} className="live-picture" aria-hidden="true" />
      <canvas ref={marks} className="live-marks" aria-hidden="true" />
    </div>
  );
}

/**
 * The one thing to be done, in large letters, over a line that fills from its middle while everything is right and still. It is read out
 * elsewhere, where it cannot come too often.
 */
export function LiveHintLine(props: {
  readonly text: string;
  readonly view: LiveView;
  readonly shutter: HintContext['shutter'];
}) {
  const { stillness } = props.view.screen;
  return (
    <div className="live-hint" aria-hidden="true">
      <p className={props.view.hint === null ? 'is-waiting' : undefined}>{props.text}</p>
      <div className="stillness">
        {props.shutter === 'by-itself' && <span ref={stillness} style={{ transform: 'scaleX(0)' }} />}
      </div>
    </div>
  );
}

/** What the hint line says. */
export function liveText({ hint, isDrawn, failure }: LiveView, context: HintContext): string {
  if (hint !== null) return hintSentence(hint, context);
  if (failure !== null) return words.live.lost;
  return isDrawn ? '' : words.live.starting;
}

/** Why there is no guidance yet, or none any more. */
export function LiveTrouble({ view }: { readonly view: LiveView }) {
  if (view.failure !== null) {
    const { what, next } = failureSaying(view.failure);
    return (
      <p className="note note-failure">
        <strong>{what}</strong> {next}
      </p>
    );
  }
  return view.loading === null ? null : (
    <WorkProgress what={progressSentence(view.loading)} share={view.loading.share} />
  );
}

/** The numbers of the moment. The PD itself is told only where the sheet would tell it as well. */
export function LiveReadout({ view, isPdTold }: { readonly view: LiveView; readonly isPdTold: boolean }) {
  const said = words.live;
  const { distance, sureness, pd, frames } = view.screen;
  return (
    <dl className="live-readout" aria-label={said.readout}>
      <div>
        <dt>{said.distance}</dt>
        <dd ref={distance}>{said.nothing}</dd>
      </div>
      <div>
        <dt>{said.sureness}</dt>
        <dd ref={sureness}>{said.nothing}</dd>
      </div>
      {isPdTold && (
        <div>
          <dt>{words.measurements.binocularPd.shortName}</dt>
          <dd ref={pd}>{said.nothing}</dd>
        </div>
      )}
      <div>
        <dt>{said.frames}</dt>
        <dd ref={frames}>{said.nothing}</dd>
      </div>
    </dl>
  );
}
