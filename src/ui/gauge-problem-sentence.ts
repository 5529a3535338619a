import { words } from './language.js';
import { plainNumber } from './numbers.js';
import { GAUGE_LIMITS, type GaugeDraft, type GaugeProblem } from './practice-gauge-draft.js';

/** What is wrong with a field of the gauge's form. */
export function gaugeProblemSentence(problem: GaugeProblem, field: keyof GaugeDraft, typed: string): string {
  const said = words.gaugeProblem;
  switch (problem) {
    case 'empty':
      return field === 'name' ? said.noName : said.noNumber;
    case 'not-a-number':
      return said.notANumber(typed.trim());
    case 'not-positive':
      return said.notPositive(typed.trim());
    case 'too-large':
      return field === 'resolution' || field === 'zeroOffset' || field === 'bias'
        ? said.beyondLimit(typed.trim(), plainNumber(GAUGE_LIMITS[field]))
        : said.tooLarge;
    case 'serves-nothing':
      return said.servesNothing;
    case 'mixed-units':
      return said.mixedUnits;
    case 'in-future':
      return said.inFuture;
  }
}
