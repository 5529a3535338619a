export const deskWords = {
  opening: 'Opening the sessions that are kept here …',
  sessions: 'Sessions',
  nextWearer: 'Next wearer',
  help: 'Help',
  history: 'All entries',
  before: 'The session before is kept in the list.',
  backToBefore: 'Back to it',
  dismiss: 'Dismiss',
  notKept: 'What is typed now stands on this screen only.',
  tryAgain: 'Try to keep it again',
  saveAsFile: 'Save it as a file',
  leaveAllTheSame: 'Leave it all the same',
  leaving: 'It would be gone. Save it as a file first, or leave it all the same.',
  contested: 'This session was changed in another window.',
  removedElsewhere: 'This session was removed in another window.',
  contestedMore: 'What you type here is not kept until you choose.',
  showOther: 'Show what stands there',
  keepMine: 'Keep mine as a session of its own',
  recorded: {
    picture: (when: string): string => `What the camera said on ${when} is kept with the session; its picture is not.`,
    sweep: (when: string): string => `What the sweep of ${when} said is kept with the session; its frames are not.`,
    alone: (when: string): string =>
      `Pre-fitting estimates: the wearer took the pictures alone on ${when}, without supervision.`,
    aloneMore:
      'Nobody saw whether the card lay flat and where the eyes looked. Measure by hand before anything is made.',
    frames: (used: number, taken: number): string => `${used} of ${taken} frames used.`,
  },
};
