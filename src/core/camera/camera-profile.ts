import type { Camera } from './pinhole.js';

/** One standard deviation of each intrinsic, px, and of each coefficient of distortion. */
export interface IntrinsicsUncertainty {
  readonly fx: number;
  readonly fy: number;
  readonly cx: number;
  readonly cy: number;
  readonly distortion: readonly [k1: number, k2: number, p1: number, p2: number, k3: number];
}

/** What a calibration found of one camera at one resolution. Pixels count from the outer corner of the top-left pixel. */
export interface CameraProfile extends Camera {
  readonly widthPx: number;
  readonly heightPx: number;
  /** a coefficient that was held at zero has none */
  readonly uncertainty: IntrinsicsUncertainty;
  /** root mean square distance between the sheet's corners as found and as the profile projects them, px */
  readonly rmsPx: number;
  /** the views of the sheet that it was made from */
  readonly viewCount: number;
}
