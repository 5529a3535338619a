import { listInEnglish } from './list-in-english.js';

export const grammarWords = {
  /** `a`, `a and b`, `a, b and c` */
  list: listInEnglish,
};
