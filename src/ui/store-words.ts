/** Why something was not kept, or not read back, and what to do next. */
export const storeWords = {
  refused: {
    what: 'This browser does not let the page keep anything.',
    next: 'Private windows often do so. What is typed lasts until this page is closed: save it as a file, or open Glabella in an ordinary window.',
  },
  full: {
    what: 'There is no room left on this device.',
    next: 'Save the sessions as a file and delete old ones, or make room on the device.',
  },
  broken: {
    what: 'The kept sessions cannot be reached.',
    next: 'What is typed is only on the screen: save it as a file. Then load this page again.',
  },
  newer: {
    what: 'The sessions here were kept by a newer version of Glabella.',
    next: 'Load this page again while online, so that the newer version comes. Nothing was changed.',
  },
  locked: {
    what: 'The kept sessions are locked.',
    next: 'Unlock them with the passphrase.',
  },
  missing: {
    what: 'This session is not here any more.',
    next: 'It was deleted, perhaps in another window.',
  },
  unreadable: {
    what: 'This session cannot be read any more.',
    next: 'What is left of it can be saved as a file. The other sessions are not touched.',
  },
  changedElsewhere: {
    what: 'This session was changed in another window since it was opened here.',
    next: 'Nothing was overwritten.',
  },
};
