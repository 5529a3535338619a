import type { Conflict } from '../core/crosscheck/reconciliation.js';
import { upperFirstInEnglish } from './english-grammar.js';

/** What a sentence about a conflict is made from; values carry their unit. */
export interface ConflictFacts {
  /** the readings that it follows from, with their numbers, as in `head width (150 mm)`; null where they are not named */
  readonly from: string | null;
  readonly expected: string;
  readonly place: string;
  readonly written: string;
}

/** What both eyes make against the whole. Lengths in mm; of near or far. */
export interface SumFacts {
  readonly right: string;
  readonly left: string;
  readonly sum: string;
  readonly whole: string;
  readonly isNear: boolean;
}

function follows({ from, expected, place, written }: ConflictFacts): string {
  return `from ${from ?? 'the other readings'} about ${expected} follows for ${place}; ${written} is written.`;
}

function alone(facts: ConflictFacts): string {
  return upperFirstInEnglish(follows(facts));
}

function sumMade({ right, left, sum, whole, isNear }: SumFacts): string {
  return `${isNear ? 'Near, ' : ''}R ${right} and L ${left} make ${sum} mm; ${whole} is written`;
}

/** Why a reading is suspected: what it conflicts with, in numbers. */
export const conflictWords = {
  with: {
    'eyes-sum': alone,
    'near-eyes-sum': alone,
    'near-from-far': alone,
    'nose-flanks': alone,
    'sides-alike': alone,
    'side-sum': (facts) => `A side is as long as its way to the bend and its drop: ${follows(facts)}`,
    'tangent-before-bend': (facts) => `The tangent comes a little before the bend: ${follows(facts)}`,
    'temples-in-head': (facts) => `Temples follow the head: ${follows(facts)}`,
    'frame-around-pd': (facts) => `The frame’s centres usually stand about as far apart as the eyes: ${follows(facts)}`,
    'eye-heights': (facts) => `Where one eye is higher, crest and fitting heights show it: ${follows(facts)}`,
    'ear-heights': (facts) => `The side on the higher ear is flatter: ${follows(facts)}`,
    'lean-of-front': (facts) => `The front leans about as its sides are angled: ${follows(facts)}`,
    camera: ({ expected, place, written }) => `The camera says about ${expected} for ${place}; ${written} is written.`,
    population: ({ expected, place, written }) =>
      `${upperFirstInEnglish(written)} for ${place} is rare among people: about ${expected} is usual.`,
  } satisfies Record<Conflict['with'], (facts: ConflictFacts) => string> as Record<
    Conflict['with'],
    (facts: ConflictFacts) => string
  >,
  eyesSum: (facts: SumFacts): string => `${sumMade(facts)} for both eyes.`,
  eyesDoNotAddUp: (facts: SumFacts): string => `${sumMade(facts)}: read all three again.`,
  temples: (templePlace: string, temple: string, headPlace: string, head: string): string =>
    `Temples are narrower than the head, but ${templePlace} is written as ${temple} and ${headPlace} as ${head}.`,
  /** the place is the right one */
  sides: (place: string, right: string, left: string): string =>
    `${upperFirstInEnglish(place)} is ${right} and L ${left}: right and left seldom differ so much.`,
  doesNotFit: (place: string, written: string): string =>
    `${upperFirstInEnglish(place)}: ${written} does not fit the rest.`,
  allElse: (expected: string, place: string, written: string): string =>
    `All else says about ${expected} for ${place}; ${written} is written.`,
  nothing: 'nothing',
  /** a number that neither reader wrote */
  meanOfBoth: (value: string): string => `${value} (mean of both readers)`,
  /** `head width (150 mm)`, `length to bend (R 100, L 101 mm)` */
  placeWith: (place: string, values: string): string => `${place} (${values})`,
  placeWithMean: (place: string, value: string): string => `${place} (${value}, mean of both readers)`,
};
