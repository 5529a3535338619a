import { measurementOfReading } from '../core/catalogue/catalogue.js';
import { unreachable } from '../core/result.js';
import type { Misfit } from '../session/misfits.js';
import { explanationsOf } from '../session/explanations.js';
import { words } from './language.js';
import { formatNumber, plainNumber, tenthNumber, withUnit } from './numbers.js';
import { readingFailureSentence } from './sentences.js';
import { listWords, placeWords, upperFirst } from './slip-places.js';
import type { WrittenSheet } from './slip-sentences.js';
import { explanationSentence, nextSentence, sumFacts, suspicionSentence, writtenNumber } from './slip-sentences.js';
import { isProbableSlip } from './slip-marks.js';

/** What does not fit, with the numbers. */
export function misfitSentence(misfit: Misfit, sheet: WrittenSheet): string {
  const { catalogue } = sheet;
  const [name] = misfit.names;
  if (name === undefined) return '';
  const place = upperFirst(placeWords(name, catalogue));
  const { unit } = measurementOfReading(catalogue, name);
  switch (misfit.kind) {
    case 'refused':
      return words.misfit.refused(place, readingFailureSentence(misfit.failure, unit) ?? '');
    case 'suspected':
      return suspicionSentence(misfit.suspicion, sheet);
    case 'does-not-add-up': {
      const facts = sumFacts(misfit.names, misfit.isNear, sheet);
      return facts === null ? words.misfit.doesNotAddUp(place) : words.conflict.eyesDoNotAddUp(facts);
    }
    case 'disagrees': {
      const { difference, cameraExpanded } = misfit.finding.comparison;
      const camera = `${formatNumber(misfit.value - difference, 1)} ± ${withUnit(formatNumber(cameraExpanded, 1), unit)}`;
      return words.misfit.disagrees(place, withUnit(writtenNumber(name, misfit.value, sheet), unit), camera);
    }
    case 'readers-differ': {
      const [own, other] = [misfit.value, misfit.otherValue].map((value) => withUnit(tenthNumber(value), unit));
      return words.misfit.readersDiffer(place, own ?? '', other ?? '', misfit.otherReader.replace(/\.$/, ''));
    }
    case 'far-off-repeat': {
      const [farOff, others] = [misfit.farOff, misfit.others].map((all) => listWords(all.map(plainNumber)));
      return words.misfit.farOff(place, misfit.farOff.length, farOff ?? '', others ?? '');
    }
    case 'unusual': {
      const { value, usual } = misfit;
      return words.misfit.unusual(
        place,
        withUnit(writtenNumber(name, value, sheet), unit),
        plainNumber(usual.low),
        withUnit(plainNumber(usual.high), unit),
      );
    }
    default:
      return unreachable(misfit);
  }
}

/** What probably happened, the next best cause where it is worth a sentence, or what to do where nothing explains it. */
export function misfitExplanations(misfit: Misfit, sheet: WrittenSheet): readonly string[] {
  const explanations = explanationsOf(misfit);
  const best = explanationSentence(explanations, sheet);
  if (best !== null) {
    const next = nextSentence(explanations, sheet);
    const unsure = isProbableSlip(explanations) ? [] : [words.misfit.unsure];
    return [best, ...(next === null ? [] : [next]), ...unsure];
  }
  switch (misfit.kind) {
    case 'suspected':
      return [words.misfit.unexplained];
    case 'disagrees':
      return [words.misfit.ways.disagrees];
    case 'readers-differ':
      return [words.misfit.ways.readersDiffer];
    case 'far-off-repeat':
      return [words.misfit.ways.farOffRepeat];
    case 'unusual':
      return [words.misfit.ways.unusual];
    case 'does-not-add-up':
    case 'refused':
      // its sentence says already what to do
      return [];
    default:
      return unreachable(misfit);
  }
}
