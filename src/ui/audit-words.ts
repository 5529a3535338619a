import type { MisfitKind } from '../session/audit-list.js';
import { formatCount } from './numbers.js';

const records = (count: number): string => (count === 1 ? '1 record' : `${formatCount(count)} records`);
const sessions = (count: number): string => (count === 1 ? '1 session' : `${formatCount(count)} sessions`);

/** Looking through many records at once: a table from a file, or the sessions that are kept. */
export const auditWords = {
  open: 'Look through records',
  openSelected: 'Look through',
  heading: 'Many records at once',
  actions: 'Records',
  toSessions: 'Sessions',
  toSheet: 'Back to the sheet',
  intro:
    'Each record is looked through as a sheet is: what does not fit together, what probably happened, and which number was meant. Nothing is changed, and nothing leaves this device.',

  drop: 'Drop a table of records (CSV) here, or choose it.',
  dropAnother: 'Drop another table here, or choose it.',
  choose: 'Choose a table',
  chooseAnother: 'Choose another table',
  kept: (count: number): string => `Look through the ${count === 1 ? 'one session' : sessions(count)} kept here`,
  keptNone: 'No session is kept here yet.',
  unreadable: (count: number): string =>
    `${sessions(count)} cannot be read, and ${count === 1 ? 'was' : 'were'} left out.`,

  format: {
    open: 'What the table has to look like',
    rules:
      'One record in a row. The first row names the columns, in any order; all but one reading may be missing, and cells may be empty. Decimal point or comma; commas, semicolons or tabs between the cells; UTF-8.',
    table: 'Columns of a table of records',
    column: 'Column',
    holds: 'What it holds',
    record: 'what you call the record',
    reading: 'what was read, for example the PD; several repeats in one cell with spaces between them',
    offset: 'what its gauge needs added; the reading is then what the scale showed',
    camera: 'what the camera says of the same',
    cameraUncertainty: 'one standard deviation of that; both or neither',
    workingDistance: 'from the lenses to what is looked at near, in mm; 400 where it is missing',
    allReadings: 'The names of all readings',
    saveExample: 'Save an example',
    tryExample: 'Look the example through',
    example: 'The example has four invented records; slips are in two of them.',
  },

  reading: 'Reading and checking the table.',
  readingSessions: (count: number, of: number): string =>
    `${formatCount(count)} of ${sessions(of)} looked through; reading the next ones.`,
  progress: (count: number, flagged: number): string =>
    `${records(count)} looked through, ${formatCount(flagged)} flagged so far.`,
  stop: 'Stop',

  result: (flagged: number, all: number): string =>
    flagged === 1
      ? all === 1
        ? 'The one record has something that does not fit.'
        : `1 of ${records(all)} has something that does not fit.`
      : `${formatCount(flagged)} of ${records(all)} have something that does not fit.`,
  none: (all: number): string =>
    all === 1
      ? 'The one record was not flagged; that does not make it right.'
      : `None of ${records(all)} was flagged; that does not make them right.`,
  noneWhy:
    'A slip shows where other readings of the same record contradict it. Where there are few, it may hide; and a reading that is wrong but likely is never seen.',
  stopped: (count: number, flagged: number): string =>
    `Stopped after ${records(count)}: ${formatCount(flagged)} of them flagged. The others were not looked through.`,
  ofTable: (name: string, time: string): string => `${name}, looked through at ${time}.`,
  ofSessions: (count: number, isPart: boolean, time: string): string =>
    `${isPart ? `${sessions(count)} that ${count === 1 ? 'was' : 'were'} selected` : count === 1 ? 'The one session kept here' : `All ${sessions(count)} kept here`}, looked through at ${time}.`,

  kinds: {
    refused: 'cannot be',
    suspected: 'probably wrong',
    disagrees: 'camera disagrees',
    'readers-differ': 'readers differ',
    'far-off-repeat': 'a repeat far off',
    'does-not-add-up': 'does not add up',
    unusual: 'only unusual',
  } satisfies Record<MisfitKind, string> as Record<MisfitKind, string>,

  tools: 'What is listed',
  search: 'Search',
  searchHint: 'name, line, reading, slip, number',
  only: 'Only these',
  counted: (name: string, count: number): string => `${name} (${formatCount(count)})`,
  slip: 'Slip',
  anySlip: 'any or none',
  measurement: 'Reading',
  anyMeasurement: 'any',
  sortBy: 'Sort by',
  ascending: 'Ascending',
  descending: 'Descending',
  turnOrder: 'Turn the order round',

  listed: (count: number, all: number): string =>
    count === all ? `${formatCount(all)} flagged.` : `${formatCount(count)} of ${formatCount(all)} flagged.`,
  noneFound: 'Nothing flagged is like that. Search for less, or take a filter away.',
  showAll: 'Show all that is flagged',

  pages: 'Pages of the list',
  rows: (from: number, to: number, of: number): string =>
    `${formatCount(from)} to ${formatCount(to)} of ${formatCount(of)}`,
  page: { first: 'First', previous: 'Previous', next: 'Next', last: 'Last' },

  table: 'Flagged records',
  column: {
    place: 'Record',
    measurement: 'Reading',
    written: 'Written',
    restored: 'Probably meant',
    probability: 'How sure',
    why: 'Why',
  },
  noName: 'No name',
  line: (line: number): string => `Line ${line}`,
  /** a number that may have been meant */
  perhaps: (value: string): string => `perhaps ${value}`,
  cause: (slips: string, probability: string): string => `${slips}, ${probability}`,
  noSlip: 'no usual slip',
  details: (count: number): string => (count === 1 ? 'More' : `All ${count} findings`),
  detailsOf: (count: number, record: string): string =>
    count === 1 ? `More of ${record}` : `All ${count} findings of ${record}`,
  wrongHere: (probability: string): string => `Something is wrong here: ${probability}.`,
  gone: 'Deleted since',
  openSession: 'Open this session',
  basis:
    'How sure: the probability that something is wrong there, and after a slip the probability of just that cause, with chosen frequencies of slips; both tend to be too low.',

  save: 'Save what is listed',
  saveCsv: 'As CSV',
  saveJson: 'As JSON',
  saveNote: 'Names of records go into the file: whoever has it can read them.',
  making: (done: number, all: number): string => `Writing the file: ${formatCount(done)} of ${formatCount(all)}.`,
  saved: (count: number, fileName: string): string => `${records(count)} went to the browser as ${fileName}.`,

  refused: (problems: number): string =>
    problems === 1
      ? 'The table is refused for one problem. No record was looked through.'
      : `The table is refused for ${formatCount(problems)} problems. No record was looked through.`,
  refusedNext: 'Mend it there, save it as CSV, and choose it again.',
  problems: 'Problems of the table',
  problemPlace: 'Where',
  problem: 'What is wrong, and what to do',
  moreProblems: (count: number): string =>
    count === 1
      ? '1 more problem is not shown: mend these first.'
      : `${formatCount(count)} more problems are not shown: mend these first.`,
  fileUnreadable: {
    what: 'The file cannot be read.',
    next: 'It may have been moved or changed since. Choose it again.',
  },
  auditStopped: {
    what: 'What looks records through could not be loaded, or stopped.',
    next: 'Load this page again while online, close other tabs if memory is short, and try once more.',
  },
};
