import type { PictureFeatures } from '../core/camera/features.js';
import type { Handle } from '../session/handles.js';
import { handlePoint } from '../session/handles.js';
import type { Picture } from '../session/ports.js';
import { PictureCanvas } from './picture-canvas.js';
import { PictureMarks } from './picture-marks.js';
import type { PictureRegion } from './picture-region.js';
import { loupeRegion } from './picture-region.js';

/** The surroundings of the handle in hand, magnified, in the corner of the view that is farther from it. */
export function Loupe(props: {
  readonly picture: Picture;
  readonly features: PictureFeatures;
  readonly handle: Handle;
  readonly view: PictureRegion;
}) {
  const at = handlePoint(props.features, props.handle);
  const region = loupeRegion(props.features, at);
  const isOnRight = at.xPx > props.view.xPx + props.view.widthPx / 2;
  const isOnTop = at.yPx < props.view.yPx + props.view.heightPx / 2;
  return (
    <div
      className={`loupe ${isOnRight ? 'loupe-left' : 'loupe-right'} ${isOnTop ? 'loupe-bottom' : 'loupe-top'}`}
      aria-hidden="true"
    >
      <PictureCanvas picture={props.picture} region={region} />
      <PictureMarks features={props.features} region={region} />
      <svg className="loupe-hair" viewBox="-50 -50 100 100">
        <path d="M-50 0H-6M6 0H50M0 -50V-6M0 6V50" />
      </svg>
    </div>
  );
}
