/** Pictures that are kept because the wearer agreed to it. */
export const keptPictureWords = {
  heading: 'Kept pictures',
  notByDefault: 'The picture is gone when this session is left, unless the wearer agrees that it is kept.',
  keep: 'Keep this picture',
  formHeading: 'Keep this picture?',
  cancel: 'Do not keep it',
  readOut: 'Read this to the wearer:',
  consent: (days: number): string =>
    `A part of your picture is kept on this device: your eyes, the bridge of your nose, the sides of your head, and the card, whose face is covered so that nothing on it can be read. It is kept so that the measurements can be looked at again if something does not fit. It never leaves this device. After ${days} days it is deleted by itself. You can have it deleted at any time before, and refusing changes nothing about your spectacles.`,
  howLong: 'Kept for',
  days: (days: number): string => `${days} days`,
  agrees: 'The wearer has heard this and agrees',
  agreeFirst: 'Tick that the wearer agrees, or do not keep it.',
  keepNow: 'Keep it',
  making: 'Covering the card and keeping the picture.',
  done: (day: string): string => `The picture is kept until ${day}.`,
  noCard: {
    what: 'The picture was not kept.',
    next: 'The corners of the card are not placed around it, so its face could not be covered. Place them first.',
  },

  takenOn: (when: string): string => `Picture of ${when}`,
  keptUntil: (day: string, days: number): string => {
    if (days < 0) return `kept until ${day}: it is deleted as soon as possible`;
    if (days === 0) return 'kept until today';
    return days === 1 ? `kept until ${day}, 1 more day` : `kept until ${day}, ${days} more days`;
  },
  agreed: (when: string): string => `The wearer agreed on ${when} to this:`,
  wording: 'What the wearer agreed to',
  remove: 'Delete now',
  removeOf: (when: string): string => `Delete the picture of ${when} now`,
  removed: 'The picture was deleted.',
};
