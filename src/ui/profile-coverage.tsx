import { useId } from 'react';
import type { ViewSetQuality } from '../core/camera/profile-quality.js';
import { COVERAGE_GRID } from '../core/camera/profile-quality.js';
import { percent } from './profile-sentences.js';
import { words } from './language.js';

/** A small picture of the frame: the cells in which the sheet was seen are filled. */
export function ProfileCoverage(props: {
  readonly quality: ViewSetQuality;
  /** width over height of the frame */
  readonly ratio: number;
  readonly isMirrored: boolean;
}) {
  const { quality, ratio, isMirrored } = props;
  const captionId = useId();
  const { columns, rows } = COVERAGE_GRID;
  const [width, height] = [1000, 1000 / ratio];
  return (
    <figure className="profile-coverage">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby={captionId}>
        {quality.coveredCells.map((isCovered, index) => {
          const column = index % columns;
          const shown = isMirrored ? columns - 1 - column : column;
          return (
            <rect
              key={index}
              className={isCovered ? 'cell-covered' : 'cell-open'}
              x={(shown * width) / columns}
              y={(Math.floor(index / columns) * height) / rows}
              width={width / columns}
              height={height / rows}
            />
          );
        })}
      </svg>
      <figcaption id={captionId}>{words.profile.covered(percent(quality.coverage, 0))}</figcaption>
    </figure>
  );
}
