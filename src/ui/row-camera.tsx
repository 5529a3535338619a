import type { SheetRow } from '../session/rows.js';
import { formatEstimate } from './numbers.js';
import { spokenName } from './sentences.js';
import { laterPart } from './later-part.js';
import { words } from './language.js';

const AloneMark = laterPart(async () => (await import('./alone-mark.js')).AloneMark);

/**
 * What the camera says of a row, as soon as it may be seen.
 *
 * @param isAlone nobody but the wearer saw how it was taken
 */
export function CameraCell({ row, isAlone }: { readonly row: SheetRow; readonly isAlone: boolean }) {
  const { fields, covered, measurement } = row;
  if (covered) {
    return (
      <td role="cell" className="col-camera">
        <CameraLabel />
        <em className="cover">{fields.length > 1 ? words.sheet.coveredBoth : words.sheet.covered}</em>
      </td>
    );
  }
  return (
    <td role="cell" className="col-camera">
      {fields.map(({ field, side, estimate }) => (
        <div key={field} className="camera-value">
          <CameraLabel />
          {side !== null && (
            <span className="side" aria-hidden="true">
              {words.sheet.side[side]}
            </span>
          )}
          <output aria-label={words.sheet.cameraCell(spokenName(measurement, side))}>
            {estimate === null ? '' : formatEstimate(estimate)}
          </output>
          {isAlone && estimate !== null && <AloneMark />}
        </div>
      ))}
    </td>
  );
}

/** Said in the cell where a narrow screen has no column headings. */
function CameraLabel() {
  return (
    <span className="cell-label" aria-hidden="true">
      {words.sheet.cameraShort}
    </span>
  );
}
