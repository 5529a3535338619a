import { measurementOfReading } from '../core/catalogue/catalogue.js';
import { unreachable } from '../core/result.js';
import type { Misfit } from '../session/misfits.js';
import { explanationsOf } from '../session/misfits.js';
import { formatNumber, plainNumber, tenthNumber, withUnit } from './numbers.js';
import { readingFailureSentence } from './sentences.js';
import { listWords, placeWords, upperFirst } from './slip-places.js';
import type { WrittenSheet } from './slip-sentences.js';
import { explanationSentence, nextSentence, sumWords, suspicionSentence, writtenNumber } from './slip-sentences.js';
import { isProbableSlip } from './slip-marks.js';

const UNEXPLAINED = 'No usual slip explains it: read it again.';
const UNSURE = 'It may be something else: read it again.';

/** What does not fit, with the numbers. */
export function misfitSentence(misfit: Misfit, sheet: WrittenSheet): string {
  const { catalogue } = sheet;
  const [name] = misfit.names;
  if (name === undefined) return '';
  const place = upperFirst(placeWords(name, catalogue));
  const { unit } = measurementOfReading(catalogue, name);
  switch (misfit.kind) {
    case 'refused':
      return `${place}: ${readingFailureSentence(misfit.failure, unit) ?? ''}`;
    case 'suspected':
      return suspicionSentence(misfit.suspicion, sheet);
    case 'does-not-add-up':
      return `${sumWords(misfit.names, misfit.isNear, sheet) ?? `${place}: R and L do not make the whole`}: read all three again.`;
    case 'disagrees': {
      const { difference, cameraExpanded } = misfit.finding.comparison;
      const camera = `${formatNumber(misfit.value - difference, 1)} ± ${withUnit(formatNumber(cameraExpanded, 1), unit)}`;
      return `${place}: ${withUnit(writtenNumber(name, misfit.value, sheet), unit)} by hand, ${camera} by the camera.`;
    }
    case 'readers-differ': {
      const other = misfit.otherReader === '' ? 'the other reader' : misfit.otherReader;
      return `${place}: ${withUnit(tenthNumber(misfit.value), unit)} on this sheet, ${withUnit(tenthNumber(misfit.otherValue), unit)} by ${other.replace(/\.$/, '')}. That is more than two readers should differ.`;
    }
    case 'far-off-repeat': {
      const [farOff, others] = [misfit.farOff, misfit.others].map((all) => listWords(all.map(plainNumber)));
      return `${place}: ${farOff ?? ''} ${misfit.farOff.length === 1 ? 'stands' : 'stand'} far from the other repeats (${others ?? ''}).`;
    }
    case 'unusual': {
      const { value, usual } = misfit;
      return `${place}: ${withUnit(writtenNumber(name, value, sheet), unit)} is unusual (most adults: ${plainNumber(usual.low)} to ${withUnit(plainNumber(usual.high), unit)}).`;
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
    const unsure = isProbableSlip(explanations) ? [] : [UNSURE];
    return [best, ...(next === null ? [] : [next]), ...unsure];
  }
  switch (misfit.kind) {
    case 'suspected':
      return [UNEXPLAINED];
    case 'disagrees':
      return ['Read it again, or look at the points in the picture.'];
    case 'readers-differ':
      return ['Both read it again, each without the other’s number.'];
    case 'far-off-repeat':
      return ['Read it again, and take out the number that was misread.'];
    case 'unusual':
      return ['Nothing contradicts it, and unusual faces exist: look again.'];
    case 'does-not-add-up':
    case 'refused':
      // its sentence says already what to do
      return [];
    default:
      return unreachable(misfit);
  }
}
