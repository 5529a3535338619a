/** Why a table of records is refused, each with what to do; columns and texts are as the table has them. */
export const recordProblemWords = {
  /** where to look: line and column of the file, the column's name */
  file: 'The file',
  line: (line: number): string => `Line ${line}`,
  cell: (line: number, column: number, name: string): string =>
    `Line ${line}, column ${column}${name === '' ? '' : ` (${name})`}`,

  tooLarge: (megabytes: string, limit: string): string =>
    `The file has ${megabytes} MB; up to ${limit} can be read. Split it.`,
  utf16: 'The file is UTF-16. Save it as CSV in UTF-8.',
  notUtf8: 'There is a character that is not UTF-8. Save the file as CSV in UTF-8.',
  nul: 'There is a NUL byte: this is no text in UTF-8. Save the file as CSV in UTF-8.',
  empty: 'The file is empty.',
  noHeader: (text: string): string =>
    `The first row should name the columns, but holds “${text}”. Put a row with their names above it.`,
  unknownColumn: (name: string): string => `No column is called “${name}”. Rename it or take it away.`,
  nearestColumn: (name: string, nearest: string): string => `No column is called “${name}”. Is ${nearest} meant?`,
  unnamedColumn: 'This column has no name. Name it or take it away.',
  duplicateColumn: (first: number): string => `This name stands in column ${first} already. Take one of them away.`,
  partnerMissing: (partner: string): string => `This column needs the column ${partner} beside it.`,
  noReadings: 'No column holds a reading. Name at least one.',
  noRecords: 'There is no record below the header. Write one in each row.',
  quotation:
    'A quotation mark is not closed, or does not end its field; nothing behind it can be read. Close it, or double it where it belongs to the text.',
  tooManyFields: (found: number, expected: number): string =>
    `The row has ${found} ${found === 1 ? 'field' : 'fields'}, the header ${expected}. Where commas part the fields, a number with a decimal comma needs quotation marks.`,
  tooFewFields: (found: number, expected: number): string =>
    `The row has ${found} ${found === 1 ? 'field' : 'fields'}, the header ${expected}. Empty cells need their separators too.`,
  badNumber: (text: string): string =>
    `“${text}” is no number. Write digits only, and leave the cell empty where nothing was read.`,
  severalNumbers: (text: string): string => `“${text}” are several numbers where one can stand. Keep one.`,
  notPositive: (text: string): string => `“${text}” is not above zero. Mend it, or empty the cell.`,
  uncertaintyMissing:
    'This is empty, but the camera’s estimate is there: it needs its uncertainty. Write it, or empty both cells.',
  estimateMissing:
    'This is empty, but the uncertainty of the camera’s estimate is there. Write the estimate, or empty both cells.',
};
