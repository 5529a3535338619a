import type { SlipKind } from '../core/crosscheck/slip.js';

/** What went wrong, in as few words as go into a row of the sheet. */
export const slipsInShortWords: Readonly<Record<SlipKind, string>> = {
  'digits-swapped': 'two digits swapped',
  'sides-swapped': 'right and left swapped',
  'offset-forgotten': 'gauge amount left out',
  'offset-twice': 'gauge amount added twice',
  'near-for-distance': 'near for distance',
  'distance-for-near': 'distance for near',
  'half-for-whole': 'one eye for both',
  'whole-for-half': 'both eyes for one',
  halved: 'half of the whole',
  'point-moved': 'decimal point',
  centimetres: 'in centimetres',
  inches: 'in inches',
  'rows-swapped': 'two rows swapped',
  'row-repeated': 'neighbouring row repeated',
  'ten-off': 'wrong ten',
  'digit-wrong': 'one digit wrong',
  'sign-lost': 'wrong sign',
};
