import type { RecordProblem, RecordTableFailure } from '../../src/session/record-table.js';
import { completeEnglish } from '../../src/ui/language.js';
import { problemSentence } from '../../src/ui/record-problem-sentences.js';

// The screen loads most words later; here they are wanted from the start.
await completeEnglish();

/** Why a table of records is refused, one line for each problem, each with the place where a person has to look. */
export function problemLines(file: string, { problems, problemCount }: RecordTableFailure): readonly string[] {
  const lines = problems.map((problem) => `${file}${placeOf(problem)}: ${problemSentence(problem)}`);
  const more = problemCount - problems.length;
  return more > 0 ? [...lines, `${file}: ${more} more problems of ${problemCount} are not shown.`] : lines;
}

/** `, line 3, column 2 (pd_far_mm)` as far as it is known. */
function placeOf(problem: RecordProblem): string {
  if ('place' in problem) {
    const { line, column, columnName } = problem.place;
    return `, line ${line}, column ${column}${columnName === '' ? '' : ` (${columnName})`}`;
  }
  return 'line' in problem ? `, line ${problem.line}` : '';
}
