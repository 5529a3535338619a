import { useId } from 'react';
import { measuringSettings } from '../session/measuring-settings.js';
import { checkIris } from '../core/crosscheck/check-iris.js';
import { measurementById } from '../core/catalogue/catalogue.js';
import { useEquipment } from './equipment.js';
import { formatEstimate, formatNumber } from './numbers.js';
import { adviceSentence } from './sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { pictureWords as words, sheetWords } from './words.js';

/** What the picture says besides the rows of the sheet, and what would make the next one better. */
export function PictureFacts({ sheet }: { readonly sheet: SheetInHand }) {
  const { catalogue } = useEquipment();
  const adviceId = useId();
  if (sheet.measurement?.ok !== true) return null;
  const { estimates, pixelsPerMm, advice } = sheet.measurement.value;
  const { workingDistanceMm } = measuringSettings(sheet.state.settings);
  // The near PD would give the distance PD away.
  const isPdCovered = sheet.rows.some(
    ({ covered, fields }) => covered && fields.some(({ field }) => field === 'pdFar'),
  );
  const iris = checkIris(estimates.irisDiameter, measurementById(catalogue, 'irisDiameter').population);
  const aside = formatNumber(Math.abs(estimates.headYaw.value), 1);
  const nod = formatNumber(Math.abs(estimates.headPitch.value), 1);
  return (
    <>
      <dl className="facts" aria-label={words.facts}>
        <div>
          <dt>
            {words.nearPd} {words.nearPdFor(workingDistanceMm)}
          </dt>
          <dd>
            {isPdCovered ? (
              <em className="cover">{sheetWords.coveredShort}</em>
            ) : (
              `${formatEstimate(estimates.pdNear)} mm`
            )}
          </dd>
        </div>
        <div>
          <dt>{words.irisDiameter}</dt>
          <dd>
            {formatEstimate(estimates.irisDiameter)} mm
            <small>{words.irisCheck[iris.kind]}</small>
          </dd>
        </div>
        <div>
          <dt>{words.distance}</dt>
          <dd>{formatNumber(estimates.distance.value / 10, 0)} cm</dd>
        </div>
        <div>
          <dt>{words.turned}</dt>
          <dd>{words.turnedBy(aside, nod, estimates.headPitch.value > 0 ? 'down' : 'up')}</dd>
        </div>
        <div>
          <dt>{words.scale}</dt>
          <dd>{words.pixelsPerMm(formatNumber(pixelsPerMm, 1))}</dd>
        </div>
      </dl>
      {advice.length > 0 && (
        <section className="advice" aria-labelledby={adviceId}>
          <h3 id={adviceId}>{words.better}</h3>
          <ul>
            {advice.map((one) => (
              <li key={JSON.stringify(one)}>{adviceSentence(one)}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
