import { useEffect, useRef } from 'react';
import type { Picture } from '../session/ports.js';
import type { PictureRegion } from './picture-region.js';

/** Draws a part of the picture at the resolution of the screen. What it shows is told by the elements around it. */
export function PictureCanvas(props: { readonly picture: Picture; readonly region: PictureRegion }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { picture } = props;
  const { xPx, yPx, widthPx, heightPx } = props.region;

  useEffect(() => {
    const element = canvas.current;
    if (element === null) return;
    const draw = (): void => {
      const width = Math.round(element.clientWidth * devicePixelRatio);
      const height = Math.round(element.clientHeight * devicePixelRatio);
      const context = element.getContext('2d');
      // A picture that was put away is closed, and has no width any more.
      if (width === 0 || height === 0 || context === null || picture.bitmap.width === 0) return;
      if (element.width !== width || element.height !== height) {
        element.width = width;
        element.height = height;
      }
      context.clearRect(0, 0, width, height);
      context.imageSmoothingQuality = 'high';
      const scale = width / widthPx;
      context.setTransform(scale, 0, 0, height / heightPx, -xPx * scale, (-yPx * height) / heightPx);
      // A small copy of a picture is drawn in the coordinates of the picture.
      context.drawImage(picture.bitmap, 0, 0, picture.widthPx, picture.heightPx);
      context.setTransform(1, 0, 0, 1, 0, 0);
    };
    draw();
    const observer = new ResizeObserver(draw);
    observer.observe(element);
    return () => {
      observer.disconnect();
    };
  }, [picture, xPx, yPx, widthPx, heightPx]);

  return <canvas ref={canvas} className="picture-canvas" aria-hidden="true" />;
}
