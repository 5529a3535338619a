import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { unreachable } from '../core/result.js';
import type { OrderDoubt } from '../session/order.js';
import { misfitSentence } from './misfit-sentences.js';
import { orderMeasurementsWords, orderPlacesWords, orderPlaceWords } from './order-places.js';
import { words } from './language.js';
import { findingReason, readingFailureSentence } from './sentences.js';
import type { WrittenSheet } from './slip-sentences.js';
import { suspicionSentence } from './slip-sentences.js';

/** A doubt that has a sentence of its own. */
type ToldDoubt = Exclude<OrderDoubt, { kind: 'camera-cannot-tell' }>;

/**
 * What whoever works from the order has to know, a sentence each. What the camera could not tell is told in one.
 *
 * @param otherReader the name of the reader whose sheet is not open; empty where none was typed
 */
export function orderDoubtSentences(
  doubts: readonly OrderDoubt[],
  sheet: WrittenSheet,
  otherReader: string,
): readonly string[] {
  const undecided = doubts.flatMap((doubt) => (doubt.kind === 'camera-cannot-tell' ? [doubt.name] : []));
  const suspected = new Set(doubts.flatMap((doubt) => (doubt.kind === 'suspected' ? doubt.suspicion.names : [])));
  const refused = new Set(doubts.flatMap((doubt) => (doubt.kind === 'refused' ? [doubt.name] : [])));
  const others = doubts.flatMap((doubt): readonly ToldDoubt[] => {
    if (doubt.kind === 'camera-cannot-tell') return [];
    // A number that cannot be is told already.
    if (doubt.kind === 'suspected' && doubt.suspicion.names.every((name) => refused.has(name))) return [];
    if (doubt.kind !== 'unconfirmed') return [doubt];
    // What is suspected is named already.
    const names = doubt.names.filter((name) => !suspected.has(name));
    return names.length === 0 ? [] : [{ ...doubt, names }];
  });
  return [
    ...others.map((doubt) => doubtSentence(doubt, sheet, otherReader)),
    ...(undecided.length === 0 ? [] : [words.orderDoubt.cameraCannotTell(places(undecided, sheet))]),
  ];
}

function places(names: readonly ReadingName[], { catalogue }: WrittenSheet): string {
  return orderPlacesWords(names, catalogue);
}

function doubtSentence(doubt: ToldDoubt, sheet: WrittenSheet, otherReader: string): string {
  const { catalogue } = sheet;
  switch (doubt.kind) {
    case 'suspected':
      return words.orderDoubt.suspected(
        suspicionSentence(doubt.suspicion, sheet),
        places(doubt.suspicion.names, sheet),
      );
    case 'does-not-add-up':
      return misfitSentence(doubt.misfit, sheet);
    case 'camera-disagrees': {
      const { unit } = measurementOfReading(catalogue, doubt.name);
      const reason = findingReason(doubt.finding, false, 'picture', unit);
      return words.orderDoubt.cameraDisagrees(orderPlaceWords(doubt.name, catalogue), reason);
    }
    case 'refused': {
      const { unit } = measurementOfReading(catalogue, doubt.name);
      const why = readingFailureSentence(doubt.failure, unit) ?? '';
      return words.orderDoubt.refused(orderPlaceWords(doubt.name, catalogue), doubt.typed.trim(), why);
    }
    case 'readers-differ':
      return words.orderDoubt.readersDiffer(orderPlaceWords(doubt.name, catalogue));
    case 'read-by-other-only':
      return words.orderDoubt.otherOnly(
        otherReader === '' ? words.orderDoubt.otherReader : otherReader,
        places(doubt.names, sheet),
      );
    case 'unconfirmed':
      return words.orderDoubt.unconfirmed(places(doubt.names, sheet));
    case 'gauge-overdue': {
      const used = places(doubt.names, sheet);
      return doubt.daysSinceCheck === null
        ? words.orderDoubt.gaugeNever(doubt.gauge.name, used)
        : words.orderDoubt.gaugeOld(doubt.gauge.name, doubt.daysSinceCheck, used);
    }
    case 'squint':
      return words.orderDoubt.squint(orderMeasurementsWords(doubt.measurements));
    case 'pupil-without-light':
      return words.orderDoubt.pupilWithoutLight;
    case 'frame-incomplete':
      return words.orderDoubt.frameIncomplete(places(doubt.names, sheet));
    default:
      return unreachable(doubt);
  }
}
