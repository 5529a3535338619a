import { unreachable } from '../../src/core/result.js';
import { SUFFIXES } from '../../src/session/record-columns.js';
import type { CellPlace, RecordProblem, RecordTableFailure } from '../../src/session/record-table.js';

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

/** Chosen: enough of a text to find it again. */
const LONGEST_QUOTED = 40;

function quoted(text: string): string {
  const plain = text.replace(/\s+/g, ' ');
  return `"${plain.length > LONGEST_QUOTED ? `${plain.slice(0, LONGEST_QUOTED)}…` : plain}"`;
}

const MEGABYTE = 2 ** 20;

function problemSentence(problem: RecordProblem): string {
  switch (problem.kind) {
    case 'too-large':
      return `The file has ${(problem.bytes / MEGABYTE).toFixed(0)} MB; up to ${(problem.limitBytes / MEGABYTE).toFixed(0)} can be read. Split it.`;
    case 'utf-16':
      return 'The file is UTF-16. Save it as CSV in UTF-8.';
    case 'not-utf-8':
      return 'There is a character that is not UTF-8. Save the file as CSV in UTF-8.';
    case 'nul':
      return 'There is a NUL byte: this is no text in UTF-8. Save the file as CSV in UTF-8.';
    case 'empty':
      return 'The file is empty.';
    case 'no-header':
      return `The first row should name the columns, but holds ${quoted(problem.text)}.`;
    case 'unknown-column':
      return `No column is called ${quoted(problem.place.columnName)}.${problem.nearest === null ? '' : ` Is ${problem.nearest} meant?`}`;
    case 'unnamed-column':
      return 'This column has no name. Name it or take it away.';
    case 'duplicate-column':
      return `This name stands in column ${problem.firstColumn} already.`;
    case 'partner-missing':
      return `This column needs the column ${problem.partner} beside it.`;
    case 'no-readings':
      return 'No column holds a reading.';
    case 'no-records':
      return 'There is no record below the header.';
    case 'quotation':
      return 'A quotation mark is not closed, or does not end its field; nothing behind it can be read.';
    case 'field-count':
      return fieldCountSentence(problem.found, problem.expected);
    case 'bad-number':
      return `${quoted(problem.text)} is no number.`;
    case 'several-numbers':
      return `${quoted(problem.text)} are several numbers where one can stand.`;
    case 'not-positive':
      return `${quoted(problem.text)} is not above zero.`;
    case 'half-estimate':
      return halfEstimateSentence(problem.place);
    default:
      return unreachable(problem);
  }
}

function fieldCountSentence(found: number, expected: number): string {
  const counts = `The row has ${found} ${found === 1 ? 'field' : 'fields'}, the header ${expected}.`;
  return found > expected
    ? `${counts} Where commas part the fields, a number with a decimal comma needs quotation marks.`
    : counts;
}

function halfEstimateSentence({ columnName }: CellPlace): string {
  return columnName.endsWith(SUFFIXES['camera-uncertainty'])
    ? 'This is empty, but the camera’s estimate is there: it needs its uncertainty.'
    : 'This is empty, but the uncertainty of the camera’s estimate is there.';
}
