import type { ReactNode } from 'react';
import { useId } from 'react';
import type { FaceEstimates } from '../core/estimate/estimate.js';
import { workingDistanceOf } from '../session/measuring-settings.js';
import { checkIris } from '../core/crosscheck/check-iris.js';
import { measurementById } from '../core/catalogue/catalogue.js';
import { useEquipment } from './equipment.js';
import { formatEstimate, formatNumber } from './numbers.js';
import { ProfileFact } from './profile-fact.js';
import { adviceSentence } from './picture-sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { words } from './language.js';

/** What the picture says besides the rows of the sheet, and what would make the next one better. */
export function PictureFacts({ sheet }: { readonly sheet: SheetInHand }) {
  if (sheet.measurement?.ok !== true || sheet.measurement.value.kind !== 'picture') return null;
  const { estimates, pixelsPerMm, advice } = sheet.measurement.value;
  const aside = formatNumber(Math.abs(estimates.headYaw.value), 1);
  const nod = formatNumber(Math.abs(estimates.headPitch.value), 1);
  return (
    <>
      <dl className="facts" aria-label={words.picture.facts}>
        <FactsOfBoth sheet={sheet} estimates={estimates} />
        <Fact name={words.picture.distance}>{formatNumber(estimates.distance.value / 10, 0)} cm</Fact>
        <Fact name={words.picture.turned}>
          {words.picture.turnedBy(aside, nod, estimates.headPitch.value > 0 ? 'down' : 'up')}
        </Fact>
        <Fact name={words.picture.scale}>{words.picture.pixelsPerMm(formatNumber(pixelsPerMm, 1))}</Fact>
      </dl>
      <AdviceList heading={words.picture.better} sentences={advice.map(adviceSentence)} />
    </>
  );
}

/** What a picture and a sweep both say. */
export function FactsOfBoth(props: { readonly sheet: SheetInHand; readonly estimates: FaceEstimates }) {
  const { estimates, sheet } = props;
  const { catalogue } = useEquipment();
  const workingDistanceMm = workingDistanceOf(sheet.state.settings);
  // The near PD would give the distance PD away.
  const isPdCovered = sheet.rows.some(
    ({ covered, fields }) => covered && fields.some(({ field }) => field === 'pdFar'),
  );
  const iris = checkIris(estimates.irisDiameter, measurementById(catalogue, 'irisDiameter').population);
  return (
    <>
      <Fact name={`${words.picture.nearPd} ${words.picture.nearPdFor(workingDistanceMm)}`}>
        {isPdCovered ? <em className="cover">{words.sheet.coveredShort}</em> : `${formatEstimate(estimates.pdNear)} mm`}
      </Fact>
      <Fact name={words.picture.irisDiameter}>
        {formatEstimate(estimates.irisDiameter)} mm
        <small>{words.picture.irisCheck[iris.kind]}</small>
      </Fact>
      <ProfileFact state={sheet.state} />
    </>
  );
}

/** One entry of a list of facts. */
export function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** What would make the next picture or sweep better. */
export function AdviceList(props: { readonly heading: string; readonly sentences: readonly string[] }) {
  const headingId = useId();
  if (props.sentences.length === 0) return null;
  return (
    <section className="advice" aria-labelledby={headingId}>
      <h3 id={headingId}>{props.heading}</h3>
      <ul>
        {props.sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
