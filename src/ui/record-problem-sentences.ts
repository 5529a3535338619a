import { unreachable } from '../core/result.js';
import { SUFFIXES } from '../session/record-columns.js';
import type { CellPlace, RecordProblem } from '../session/record-table.js';
import { words } from './language.js';
import { formatNumber } from './numbers.js';

/** Chosen: enough of a text to find it again. */
const LONGEST_QUOTED = 40;

function shortened(text: string): string {
  const plain = text.replace(/\s+/g, ' ');
  return plain.length > LONGEST_QUOTED ? `${plain.slice(0, LONGEST_QUOTED)}…` : plain;
}

const MEGABYTE = 2 ** 20;

/** Where a person has to look in the table, as far as that is known: `Line 3, column 2 (pd_far_mm)`. */
export function problemPlace(problem: RecordProblem): string {
  if ('place' in problem) {
    const { line, column, columnName } = problem.place;
    return words.recordProblem.cell(line, column, columnName);
  }
  return 'line' in problem ? words.recordProblem.line(problem.line) : words.recordProblem.file;
}

/** Why a table of records is refused, and what to do. */
export function problemSentence(problem: RecordProblem): string {
  const said = words.recordProblem;
  switch (problem.kind) {
    case 'too-large':
      return said.tooLarge(formatNumber(problem.bytes / MEGABYTE, 0), formatNumber(problem.limitBytes / MEGABYTE, 0));
    case 'utf-16':
      return said.utf16;
    case 'not-utf-8':
      return said.notUtf8;
    case 'nul':
      return said.nul;
    case 'empty':
      return said.empty;
    case 'no-header':
      return said.noHeader(shortened(problem.text));
    case 'unknown-column': {
      const name = shortened(problem.place.columnName);
      return problem.nearest === null ? said.unknownColumn(name) : said.nearestColumn(name, problem.nearest);
    }
    case 'unnamed-column':
      return said.unnamedColumn;
    case 'duplicate-column':
      return said.duplicateColumn(problem.firstColumn);
    case 'partner-missing':
      return said.partnerMissing(problem.partner);
    case 'no-readings':
      return said.noReadings;
    case 'no-records':
      return said.noRecords;
    case 'quotation':
      return said.quotation;
    case 'field-count':
      return problem.found > problem.expected
        ? said.tooManyFields(problem.found, problem.expected)
        : said.tooFewFields(problem.found, problem.expected);
    case 'bad-number':
      return said.badNumber(shortened(problem.text));
    case 'several-numbers':
      return said.severalNumbers(shortened(problem.text));
    case 'not-positive':
      return said.notPositive(shortened(problem.text));
    case 'half-estimate':
      return halfEstimateSentence(problem.place);
    default:
      return unreachable(problem);
  }
}

function halfEstimateSentence({ columnName }: CellPlace): string {
  return columnName.endsWith(SUFFIXES['camera-uncertainty'])
    ? words.recordProblem.uncertaintyMissing
    : words.recordProblem.estimateMissing;
}
