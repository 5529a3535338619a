import type { SlipKind } from '../core/crosscheck/slip.js';
import type { Misfit, RefusedFailure } from '../session/misfits.js';
import { upperFirstInEnglish } from './english-grammar.js';

/** What a sentence about a slip is made from. */
export interface SlipFacts {
  /** the places that it concerns, as in `crest height R and L` */
  readonly places: string;
  /** how many places they are */
  readonly count: number;
  /** more probable than all else together; else it is said as something that may be */
  readonly isProbable: boolean;
  /** two rows whose right and left changed places, as in `frontal angle and splay angle`; else null */
  readonly rows: string | null;
  /** what a gauge needs, with its unit, and that gauge; null where it is not known */
  readonly amount: string | null;
  readonly gauge: string | null;
}

function adverb({ isProbable }: SlipFacts): string {
  return isProbable ? 'probably' : 'perhaps';
}

function were(facts: SlipFacts): string {
  return `${facts.count > 1 ? 'were' : 'was'} ${adverb(facts)}`;
}

function amountNeeded({ amount, gauge }: SlipFacts): string {
  return amount === null
    ? 'amount that a gauge needs'
    : `${amount} that ${gauge === null ? 'a gauge' : `the gauge “${gauge}”`} needs`;
}

/** What probably happened when a number was written, and what it would have been. */
export const slipWords = {
  /** a probability that is nearly nothing or nearly certain; `percent` carries its sign */
  under: (percent: string): string => `under ${percent}`,
  over: (percent: string): string => `over ${percent}`,

  /** What happened, without the numbers: a whole sentence but for its capital and its end. */
  clauses: {
    'digits-swapped': (slip) => `${slip.places} ${were(slip)} written with two digits swapped`,
    'rows-swapped': (slip) =>
      slip.rows === null
        ? `${slip.places} ${were(slip)} swapped`
        : `the rows ${slip.rows} ${were(slip)} swapped, right and left`,
    'row-repeated': (slip) =>
      `the number of the row above or below was ${adverb(slip)} written again for ${slip.places}`,
    'sides-swapped': (slip) => `${slip.places} ${were(slip)} swapped`,
    'offset-forgotten': (slip) => `${slip.places} ${were(slip)} written without the ${amountNeeded(slip)}`,
    'offset-twice': (slip) => `the ${amountNeeded(slip)} was ${adverb(slip)} added twice to ${slip.places}`,
    'near-for-distance': (slip) => `the near distance was ${adverb(slip)} written for ${slip.places}`,
    'distance-for-near': (slip) => `the far distance was ${adverb(slip)} written for ${slip.places}`,
    'half-for-whole': (slip) => `one eye’s distance was ${adverb(slip)} written for ${slip.places}`,
    'whole-for-half': (slip) => `both eyes’ distance was ${adverb(slip)} written for ${slip.places}`,
    halved: (slip) => `${slip.places} ${were(slip)} not measured but taken as half of the whole`,
    'point-moved': (slip) => `${slip.places} ${were(slip)} written with the decimal point moved or lost`,
    centimetres: (slip) => `${slip.places} ${were(slip)} written in centimetres`,
    inches: (slip) => `${slip.places} ${were(slip)} written in inches`,
    'ten-off': (slip) => `${slip.places} ${were(slip)} read at the wrong ten`,
    'digit-wrong': (slip) => `${slip.places} ${were(slip)} written with one digit wrong`,
    'sign-lost': (slip) => `${slip.places} ${were(slip)} written with the wrong sign`,
  } satisfies Record<SlipKind, (slip: SlipFacts) => string> as Record<SlipKind, (slip: SlipFacts) => string>,
  explained: (clause: string, instead: string, probability: string): string =>
    `${upperFirstInEnglish(clause)}: ${instead} (${probability}).`,
  explainedByTwo: (
    one: string,
    insteadOfOne: string,
    other: string,
    insteadOfOther: string,
    probability: string,
  ): string => `Two things (${probability}): ${one} (${insteadOfOne}), and ${other} (${insteadOfOther}).`,
  instead: (written: string, restored: string): string => `${written} instead of ${restored}`,
  /** where there are several; the place is a side, or a measurement */
  insteadAt: (place: string, instead: string): string => `${place} ${instead}`,

  /** the next best cause */
  nextSame: (value: string, probability: string): string => `Next: the same, but ${value} (${probability}).`,
  next: (causes: string, probability: string): string => `Next: ${causes} (${probability}).`,
  /** of other places than the best cause; the value where it would be one alone */
  nextCause: (places: string | null, phrase: string, value: string | null): string =>
    `${places === null ? '' : `${places}, `}${phrase}${value === null ? '' : `, then ${value}`}`,
  phrases: {
    'digits-swapped': 'two digits swapped',
    'sides-swapped': 'right and left swapped',
    'offset-forgotten': 'without what a gauge needs',
    'offset-twice': 'with what the gauge needs added twice',
    'near-for-distance': 'the near distance written for the far one',
    'distance-for-near': 'the far distance written for the near one',
    'half-for-whole': 'one eye’s distance written for both',
    'whole-for-half': 'both eyes’ distance written for one',
    halved: 'half of the whole written',
    'point-moved': 'decimal point moved or lost',
    centimetres: 'written in centimetres',
    inches: 'written in inches',
    'rows-swapped': 'two rows swapped',
    'row-repeated': 'the number of the row above or below written again',
    'ten-off': 'read at the wrong ten',
    'digit-wrong': 'one digit wrong',
    'sign-lost': 'the wrong sign',
  } satisfies Record<SlipKind, string>,

  /** leads to a field */
  readAgain: (place: string): string => `Read ${place} again`,
  /** `71`, or where there are several `5 for crest height R` */
  valueFor: (value: string, place: string): string => `${value} for ${place}`,
  offer: (used: string, kept: string): string => `Use ${used}, keep ${kept} on record`,
  /** behind the offer, for whoever hears it alone */
  offerPlace: (place: string): string => ` (${place})`,

  /** beside a field; `value` where it may be offered */
  probably: (value: string | null, inShort: string): string =>
    `probably ${value === null ? '' : `${value}: `}${inShort}`,
  marks: {
    'does-not-add-up': 'R and L do not make the whole',
    suspected: 'does not fit',
    /** less doubtful than another of the same suspicion */
    inDoubt: 'in doubt',
    disagrees: 'disagrees',
    'readers-differ': 'the readers differ',
    'far-off-repeat': 'a repeat far from the others',
    unusual: 'unusual: look again',
    refused: {
      impossible: 'cannot be',
      'not-positive': 'cannot be',
      'trials-contradict': 'the trials contradict each other',
      'not-a-number': 'not a number',
      'not-a-trial': 'not a trial',
      'too-many-repeats': 'too many numbers',
    } satisfies Record<RefusedFailure['kind'], string>,
  } satisfies Record<Exclude<Misfit['kind'], 'refused'>, string> & Record<'inDoubt' | 'refused', unknown>,
};
