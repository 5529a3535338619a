import { listInEnglish } from './english-grammar.js';

export const grammarWords = {
  /** `a`, `a and b`, `a, b and c` */
  list: listInEnglish,
};
