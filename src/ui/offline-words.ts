/** Use without a network, and newer versions. Amounts are whole megabytes, written as the language writes numbers. */
export const offlineWords = {
  part: 'Use without a network',
  complete: 'Ready for use without a network.',
  fetching: (kept: string, all: string) => `Getting ready for use without a network: ${kept} of ${all} MB`,
  incomplete: (kept: string, all: string) => `Not ready for use without a network: ${kept} of ${all} MB are here.`,
  why: {
    network: 'The line broke off. It goes on by itself when the line is back.',
    storage: 'This device keeps no more. Make room on it, then go on. With a network everything works as before.',
    'other-build': 'A newer version lies on the server. It will be offered here as soon as it has come.',
  },
  goOn: 'Go on now',
  partMissing: 'This part of Glabella could not be loaded. Nothing that was typed is lost.',
  loadAgain: 'Load it again',
  newer: {
    waiting: 'A newer Glabella is here.',
    taken: 'A newer Glabella was taken in another window.',
    whatGoes: 'The page is loaded again for it: what is typed stays, a picture or a sweep on the screen goes.',
    take: 'Take it now',
  },
};
