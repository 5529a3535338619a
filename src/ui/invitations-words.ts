import type { Saying } from './saying.js';

/** Inviting distant wearers, taking their answers in, and the key for both. */
export const invitationsWords = {
  open: 'Invite a distant wearer',
  heading: 'Distant wearers',
  close: 'Close',
  what: 'A wearer who cannot come opens a link on a phone, is led through the pictures, and sends back one encrypted file. Drop it on the list or the sheet: its estimates are for pre-fitting only, taken without supervision.',

  make: {
    heading: 'New invitation',
    wearer: 'For whom',
    wearerNote: 'Stays here; it is not in the link.',
    practice: 'Your practice, as the wearer reads it',
    language: 'Language of the wearer’s page',
    days: 'Good for',
    daysOf: (days: number): string => (days === 1 ? '1 day' : `${days} days`),
    pictures: 'Ask for two pictures, cut out around eyes and card',
    picturesNote: 'The wearer may refuse. They are kept with the session and deleted after 90 days.',
    address: 'Address of this app, as a phone reaches it',
    addressLocal: 'A phone cannot reach this address: it means this computer only.',
    addressInsecure: 'The camera of a phone works only at an address that begins with https.',
    addressWrong: 'This is no address. It begins with https.',
    now: 'Make the invitation',
    making: 'Making the invitation.',
  },

  made: {
    heading: (wearer: string): string => (wearer === '' ? 'Invitation made' : `Invitation for ${wearer}`),
    link: 'Link',
    copyLink: 'Copy the link',
    qr: 'QR code with the link of this invitation',
    scan: 'To be scanned with the phone, or sent as a link.',
    message: 'Text to send',
    copyMessage: 'Copy the text',
    copied: 'Copied.',
    copyFailed: 'Copying was refused. Select the text and copy it by hand.',
    secret: 'Send it to the wearer only: who has the link can answer it.',
    another: 'Another invitation',
    languageMissing: 'The text in this language could not be loaded; it is in English.',
  },
  /** to the wearer, in the wearer's language */
  message: (practice: string, link: string, date: string): string =>
    [
      practice === ''
        ? 'Your optician asks you for a first estimate for your glasses.'
        : `${practice} asks you for a first estimate for your glasses.`,
      'Please open this link on your phone. You need a card of bank-card size, good light and about five minutes:',
      link,
      `The link is good until ${date}. At the end you get an encrypted file. Please send it back to us as an attachment.`,
    ].join('\n\n'),

  list: {
    heading: 'Invitations',
    none: 'No invitation was made yet.',
    noName: 'No name',
    status: {
      out: (date: string): string => `open until ${date}`,
      answered: (date: string): string => `answered on ${date}`,
      expired: (date: string): string => `expired on ${date}`,
      withdrawn: (date: string): string => `withdrawn on ${date}`,
    },
    made: (date: string): string => `made on ${date}`,
    show: (wearer: string): string => `Show the link for ${wearer}`,
    withdraw: (wearer: string): string => `Withdraw the invitation for ${wearer}`,
    remove: (wearer: string): string => `Remove the invitation for ${wearer}`,
    showShort: 'Show',
    withdrawShort: 'Withdraw',
    removeShort: 'Remove',
    withdrawn: 'The invitation was withdrawn: an answer to it is refused from now on.',
    removed: 'The invitation was removed.',
    bringIn: 'Take an answer in',
  },

  key: {
    heading: 'The key',
    what: 'Answers are encrypted to a key that lies only on this device. Whoever loses it cannot open them any more.',
    none: 'It is made with the first invitation.',
    inUse: (date: string): string => `In use since ${date}.`,
    older: (count: number): string =>
      count === 1
        ? 'One older key still opens answers to earlier invitations.'
        : `${count} older keys still open answers to earlier invitations.`,
    backUp: 'Back up',
    backUpWhat: 'A file with all keys, sealed with a passphrase. Keep it somewhere else than on this device.',
    backUpNow: 'Make the backup',
    backedUp: (name: string): string => `The backup was handed to the browser as ${name}.`,
    bringBack: 'Bring back',
    bringBackWhat: 'Keys of a backup are added to those that are here; none is lost.',
    chooseBackup: 'Choose the backup',
    chosen: (name: string): string => `File: ${name}`,
    bringBackNow: 'Bring the keys back',
    broughtBack: (count: number): string => (count === 1 ? 'One key is here now.' : `${count} keys are here now.`),
    replace: 'Replace',
    replaceWhat:
      'New invitations are made with a new key. The old one still opens answers to earlier invitations. Do this if somebody else may have got hold of the key; then withdraw the open invitations as well.',
    replaceNow: 'Make a new key',
    replaced: 'A new key is in use. Back it up.',
    cancel: 'Cancel',
    working: 'Working. This takes a few seconds on purpose.',
  },

  answer: {
    heading: 'Answer of a distant wearer',
    what: 'Choose the file that the wearer sent, or drop it here.',
    choose: 'Choose the file',
    chooseAnother: 'Choose another file',
    reading: 'Opening the answer.',
    file: (name: string): string => `File: ${name}`,
    withoutPictures: 'The answer was taken in, but its pictures could not be kept.',
    openSession: 'Open the session',
    close: 'Close',
  },

  /** marks each value of the camera that came from afar */
  aloneMark: 'alone',
  aloneMarkLong: 'taken without supervision',
  conditions: {
    glassesOn: 'The wearer kept glasses on.',
    unevenLight: 'The wearer had no even light from the front.',
    cardNotFlat: 'The wearer says that the card did not lie flat.',
    remark: (sentences: readonly string[]): string => `Distant answer. ${sentences.join(' ')}`,
  },

  failure: {
    notLoadable: { what: 'What opens answers could not be loaded.', next: 'Go online and try again.' },
    unsupported: {
      what: 'This browser cannot make or use keys here.',
      next: 'Use a newer browser, and open Glabella over https.',
    },
    noAnswer: {
      what: 'This file is no answer of a distant wearer.',
      next: 'Choose the file that the wearer sent; its name begins with glabella-answer.',
    },
    noAnswerPassphrase: {
      what: 'This file is sealed with a passphrase, so it is no answer of a distant wearer.',
      next: 'Bring it in as a backup, or choose the file that the wearer sent.',
    },
    tooLarge: (megabytes: string, limit: string): Saying => ({
      what: `This file is too large for an answer: ${megabytes} MB, and ${limit} MB is the most.`,
      next: 'Choose the file that the wearer sent; its name begins with glabella-answer.',
    }),
    fileGone: { what: 'The file cannot be read.', next: 'It may have been moved or changed. Choose it again.' },
    truncated: {
      what: 'The file ends too early: it was cut off on its way.',
      next: 'Ask the wearer to send it once more, as an attachment.',
    },
    altered: {
      what: 'The file is not as it was encrypted: something changed it on its way.',
      next: 'Ask the wearer to send it once more, as an attachment.',
    },
    forAnotherKey: {
      what: 'No key of this device opens the file.',
      next: 'If the invitation was made on another device, open the answer there, or bring the keys back from its backup. Otherwise it is for another practice.',
    },
    noSuchInvitation: {
      what: 'The file answers no invitation that is in your list.',
      next: 'It may have been removed, or made on another device. Invite the wearer once more.',
    },
    replayed: (when: string): Saying => ({
      what: `This very answer was taken in before, on ${when}.`,
      next: 'Its session is in the list. Nothing was changed.',
    }),
    invitationAnswered: (when: string): Saying => ({
      what: `Another answer to the same invitation was taken in on ${when}.`,
      next: 'Only the first counts. To let the wearer take pictures again, make a new invitation.',
    }),
    invitationWithdrawn: (when: string): Saying => ({
      what: `The invitation was withdrawn on ${when}.`,
      next: 'If you want an answer all the same, make a new invitation.',
    }),
    expired: (date: string): Saying => ({
      what: `The invitation expired on ${date}, and the answer is too late.`,
      next: 'Make a new invitation.',
    }),
    newerVersion: {
      what: 'The answer was written by a newer version of Glabella.',
      next: 'Load this page again while online, so that the newer version comes.',
    },
    unreadable: {
      what: 'The file opens, but what is in it cannot be right.',
      next: 'Ask the wearer to open the invitation again, and to send a new answer.',
    },
    linkTooLong: (letters: number, limit: number): Saying => ({
      what: `The link would have ${letters} letters, and a QR code for phones holds ${limit}.`,
      next: 'Shorten the name of the practice or the address.',
    }),
    keysDamaged: {
      what: 'The keys on this device cannot be read any more.',
      next: 'Bring them back from their backup.',
    },
    noBackup: {
      what: 'This file is no backup of keys.',
      next: 'Choose the file that was made here as a backup; its name begins with glabella-keys.',
    },
    backupNewer: {
      what: 'The backup was written by a newer version of Glabella.',
      next: 'Load this page again while online, so that the newer version comes.',
    },
    badRecipient: {
      what: 'The key of this device does not work.',
      next: 'Replace it, and make the invitation once more.',
    },
  },
};
