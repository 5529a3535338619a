/** Handing kept sessions on as files, and bringing them in. */
export const handOnWords = {
  heading: (count: number): string => (count === 1 ? 'Hand on this session' : `Hand on ${count} sessions`),
  headingAll: 'Hand on all sessions',
  close: 'Close',

  as: 'As',
  format: {
    'session-file': 'Session file (JSON)',
    backup: 'Backup with a passphrase (age)',
    table: 'Spreadsheet (CSV)',
  },
  formatNote: {
    'session-file':
      'Everything but pictures: readings, histories, findings. Glabella on another machine can bring it in. Whoever has the file can read it.',
    backup: 'The same, sealed: only the passphrase opens it, here or with any program that reads age files.',
    table:
      'One row for each session, for spreadsheets. It cannot be brought in again. Whoever has the file can read it.',
  },
  decimalSign: 'Decimal sign',
  point: 'point (62.5), commas between the cells',
  comma: 'comma (62,5), semicolons between the cells',
  make: 'Make the file',
  making: 'Making the file.',
  sealing: 'Sealing the file. This takes a few seconds on purpose.',
  made: (count: number, fileName: string): string =>
    count === 1
      ? `1 session was handed to the browser as ${fileName}.`
      : `${count} sessions were handed to the browser as ${fileName}.`,
  leftOut: (count: number): string =>
    count === 1
      ? '1 session that cannot be read is not in it.'
      : `${count} sessions that cannot be read are not in it.`,

  bringHeading: 'Bring in a file',
  bringWhat: 'A session file, or a backup with a passphrase. A distant wearer’s answer works as well.',
  drop: 'Drop the file here, or choose it.',
  choose: 'Choose a file',
  chooseAnother: 'Choose another file',
  file: (name: string): string => `File: ${name}`,
  readingFile: 'Reading the file.',
  opening: 'Opening the file. This takes a few seconds on purpose.',
  needsPassphrase: 'This file is sealed with a passphrase.',
  open: 'Open',
  brought: (counts: {
    readonly added: number;
    readonly renewed: number;
    readonly beside: number;
    readonly same: number;
  }): string => {
    const parts = [
      counts.added > 0 && `${counts.added} added`,
      counts.renewed > 0 && `${counts.renewed} continued`,
      counts.beside > 0 && `${counts.beside} kept beside`,
      counts.same > 0 && `${counts.same} here already`,
    ].filter((part) => part !== false);
    return parts.length === 0 ? 'There is no session in this file.' : `Sessions: ${parts.join(', ')}.`;
  },
  besideWhy: 'Kept beside: changed here and in the file as well. Both stand in the list now; compare them.',

  failure: {
    notText: {
      what: 'This is no text that Glabella wrote.',
      next: 'Choose a session file (.json) or a backup (.age).',
    },
    notJson: {
      what: 'This is no session file.',
      next: 'Choose a session file (.json) or a backup (.age). If it should be one, get it once more: it may have been cut off.',
    },
    notASessionFile: {
      what: 'This file holds something other than sessions.',
      next: 'Choose a session file (.json) or a backup (.age).',
    },
    newer: (version: number): { readonly what: string; readonly next: string } => ({
      what: `This file was written by a newer version of Glabella (format ${version}).`,
      next: 'Load this page again while online, so that the newer version comes. Nothing was brought in.',
    }),
    damaged: (place: string): { readonly what: string; readonly next: string } => ({
      what: place === '' ? 'This file is damaged.' : `This file is damaged at ${place}.`,
      next: 'Get it once more. Nothing was brought in.',
    }),
    damagedSession: (number: number, place: string): { readonly what: string; readonly next: string } => ({
      what:
        place === ''
          ? `Session ${number} of this file is damaged.`
          : `Session ${number} of this file is damaged at ${place}.`,
      next: 'Get it once more. Nothing was brought in.',
    }),
    tooLarge: (megabytes: string, limit: string): { readonly what: string; readonly next: string } => ({
      what: `This file is too large: ${megabytes} MB, and ${limit} MB is the most.`,
      next: 'Hand on fewer sessions at a time.',
    }),
    fileGone: {
      what: 'The file cannot be read.',
      next: 'It may have been moved or changed. Choose it again.',
    },
    notSealed: {
      what: 'This is no sealed file.',
      next: 'Choose a backup (.age).',
    },
    truncated: {
      what: 'This file ends too early.',
      next: 'Get it once more. Nothing was brought in.',
    },
    altered: {
      what: 'This file is not as it was sealed.',
      next: 'It was cut off or changed. Get it once more. Nothing was brought in.',
    },
    wrongPassphrase: {
      what: 'The passphrase does not open this file.',
      next: 'Mind capitals and spaces, and try again. If it is surely right, the file is damaged.',
    },
    sealedToKey: {
      what: 'This file is sealed to a key, and no passphrase opens it.',
      next: 'A distant wearer’s answer opens only with the key of the practice that asked for it.',
    },
    tooCostly: {
      what: 'This file was sealed so that a browser cannot open it.',
      next: 'Open it with a program for age files, and bring in the session file that comes out.',
    },
  },

  passphrase: 'Passphrase',
  again: 'The same once more',
  show: 'Show what is typed',
  strength: {
    empty: '',
    'too-short': (least: number): string => `Too short: at least ${least} letters.`,
    weak: 'Weak: it can be guessed. Take four or five words that do not belong together.',
    fair: 'Fair. Longer is better: add another word.',
    good: 'Good, if nobody else would think of it.',
  },
  problem: {
    empty: 'Type a passphrase.',
    'too-short': 'This passphrase is too short.',
    'not-the-same': 'The two are not the same.',
  },
  cannotRestore:
    'Nobody can restore it. Without the passphrase all that is sealed is lost: write it down and keep it safe.',
  sealingNotLoadable: {
    what: 'What seals files could not be loaded.',
    next: 'Go online and try again.',
  },
  sealingUnsupported: {
    what: 'This browser cannot seal files here.',
    next: 'Use a newer browser, and open Glabella over https.',
  },
  noPassphrase: {
    what: 'There is no passphrase.',
    next: 'Type one.',
  },
};
