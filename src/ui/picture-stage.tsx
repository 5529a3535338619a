import type { CSSProperties, ReactNode } from 'react';
import type { PictureFeatures } from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { Handle } from '../session/handles.js';
import { handleKey, handlePoint } from '../session/handles.js';
import type { Picture } from '../session/ports.js';
import { PictureCanvas } from './picture-canvas.js';
import { PictureHandle } from './picture-handle.js';
import { PictureMarks } from './picture-marks.js';
import type { PictureRegion } from './picture-region.js';

/** A part of the picture with what was found drawn on it, and the handles that are moved in this part. */
export function PictureStage(props: {
  readonly label: string;
  readonly picture: Picture;
  readonly features: PictureFeatures | null;
  readonly region: PictureRegion;
  readonly handles: readonly Handle[];
  readonly hintId: string;
  readonly onMove: (handle: Handle, to: ImagePoint, gesture: number) => void;
  readonly onHold: (handle: Handle | null) => void;
  readonly children?: ReactNode;
}) {
  const { features, region } = props;
  return (
    <div
      role="group"
      aria-label={props.label}
      className="stage"
      style={{ '--ratio': region.widthPx / region.heightPx } as CSSProperties}
    >
      <PictureCanvas picture={props.picture} region={region} />
      {features !== null && <PictureMarks features={features} region={region} />}
      {features !== null &&
        props.handles.map((handle) => (
          <PictureHandle
            key={handleKey(handle)}
            handle={handle}
            at={handlePoint(features, handle)}
            region={region}
            hintId={props.hintId}
            onMove={props.onMove}
            onHold={props.onHold}
          />
        ))}
      {props.children}
    </div>
  );
}
