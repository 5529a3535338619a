import { numberOfPlace } from '../session/sweep-frames.js';
import { formatNumber } from './numbers.js';
import { AdviceList, Fact, FactsOfBoth } from './picture-facts.js';
import { sweepAdviceSentence } from './sweep-sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { words } from './language.js';

/** What a sweep says besides the rows of the sheet, and what would make the next one better. */
export function SweepFacts({ sheet }: { readonly sheet: SheetInHand }) {
  const { measurement } = sheet;
  const { picture } = sheet.state;
  if (measurement?.ok !== true || measurement.value.kind !== 'sweep' || picture.kind !== 'swept') return null;
  const { advice, distancesMm, estimates, fates, pixelsPerMm, yawsDeg } = measurement.value;
  const distances = ofUsed(distancesMm, fates);
  const yaws = ofUsed(yawsDeg, fates);
  return (
    <>
      <dl className="facts" aria-label={words.sweep.facts}>
        <FactsOfBoth sheet={sheet} estimates={estimates} />
        {distances.length > 0 && (
          <Fact name={words.picture.distance}>
            {words.sweep.from(
              formatNumber(Math.min(...distances) / 10, 0),
              `${formatNumber(Math.max(...distances) / 10, 0)} cm`,
            )}
          </Fact>
        )}
        {yaws.length > 0 && <Fact name={words.picture.turned}>{turnWords(Math.min(...yaws), Math.max(...yaws))}</Fact>}
        <Fact name={words.picture.scale}>{words.picture.pixelsPerMm(formatNumber(pixelsPerMm, 1))}</Fact>
      </dl>
      <AdviceList
        heading={words.sweep.better}
        sentences={advice.map((one) => sweepAdviceSentence(one, (place) => numberOfPlace(picture.outcome, place)))}
      />
    </>
  );
}

/** Positive yaws are turns to the wearer's left. */
function turnWords(lowestDeg: number, highestDeg: number): string {
  const [right, left] = [Math.round(-lowestDeg), Math.round(highestDeg)];
  const degrees = (value: number): string => formatNumber(Math.max(0, value), 0);
  if (right <= 0) return words.sweep.turnedOneSide.L(degrees(-right), degrees(left));
  if (left <= 0) return words.sweep.turnedOneSide.R(degrees(-left), degrees(right));
  return words.sweep.turnedFromTo(degrees(right), degrees(left));
}

function ofUsed(values: readonly (number | null)[], fates: readonly string[]): readonly number[] {
  return values.flatMap((value, place) => (value === null || fates[place] !== 'used' ? [] : [value]));
}
