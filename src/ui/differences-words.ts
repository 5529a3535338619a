/** The drawing of one session's differences, repeats and doubts. */
export const differencesWords = {
  heading: 'Hand against camera',
  close: 'Close',
  print: 'Print',
  intro:
    'The camera’s value is the middle line. The nearer a hand reading lies to it, the better the two agree; what lies inside the shaded band does not matter.',
  none: 'Nothing stands against the camera yet: it needs a measured picture, and hand readings of what it shows.',
  noneCovered: 'Nothing stands against the camera yet: its values stay covered until your readings are in.',
  stillCovered: (count: number): string =>
    count === 1
      ? '1 row is left out: its camera value is covered until your reading is in.'
      : `${count} rows are left out: their camera values are covered until your readings are in.`,
  scale: 'Scale',
  scales: { unit: 'as measured', tolerance: 'in tolerances' },
  scaleNote: {
    unit: 'Hand minus camera',
    tolerance: 'Hand minus camera, in tolerances of the row',
  },
  lessByHand: 'less by hand',
  moreByHand: 'more by hand',
  lengths: 'Lengths, mm',
  angles: 'Angles, degrees',
  key: {
    heading: 'What is drawn',
    camera: 'camera, 95 %',
    hand: 'hand, 95 %',
    off: 'hand, disagrees',
    repeat: 'one repeat',
    tolerance: 'tolerance',
    beyond: 'goes on beyond the scale',
  },
  goTo: (name: string): string => `${name}: go to its row`,
  /** what a lane shows, for whoever hears it; `hand` and `camera` are half widths */
  lane: (facts: {
    readonly name: string;
    readonly difference: string;
    readonly hand: string;
    readonly camera: string;
    readonly tolerance: string;
    readonly finding: string;
    readonly repeats: readonly string[];
  }): string =>
    `${facts.name}: hand minus camera ${facts.difference}, hand plus or minus ${facts.hand}, camera plus or minus ${facts.camera}, tolerance plus or minus ${facts.tolerance}: ${facts.finding}.${
      facts.repeats.length > 1 ? ` Repeats: ${facts.repeats.join(', ')}.` : ''
    }`,
  table: 'The same as a table',
  columns: {
    measurement: 'Measurement',
    hand: 'Hand ± 95 %',
    camera: 'Camera ± 95 %',
    difference: 'Hand − camera',
    interval: '95 % interval',
    tolerance: 'Tolerance',
    finding: 'Finding',
  },
  fromTo: (low: string, high: string): string => `${low} to ${high}`,
  repeats: {
    heading: 'Repeats',
    intro:
      'Each reading of the same place, around their mean. The bracket is the room that a trained reader’s repeats keep to in 19 of 20 cases.',
    said: (range: string, allowed: string): string => `range ${range}, room ${allowed}`,
    beyond: 'wider than the room: read again',
    farOff: (value: string): string => `${value} stands far off`,
    lane: (name: string, reader: string, values: readonly string[], said: string): string =>
      `${name}, ${reader}: ${values.join(', ')}; ${said}.`,
    keys: { value: 'one reading', farOff: 'far from the others', room: 'room for repeats' },
    columns: { place: 'Place', reader: 'Reader', values: 'Readings', range: 'Range', room: 'Room', mean: 'Mean' },
  },
  doubts: {
    heading: 'What the camera’s doubt is made of',
    intro:
      'The widest doubts first, as 95 % half widths in tolerances. A bar that ends left of the line is sure enough to decide its row.',
    sure: 'sure enough',
    tooWide: 'too wide to say that it agrees',
    halfWidth: (text: string): string => `± ${text}`,
    mostly: (source: string, share: string): string => `mostly ${source} (${share})`,
    then: (source: string, share: string): string => `then ${source} (${share})`,
    lane: (name: string, halfWidth: string, tolerance: string, made: string): string =>
      `${name}: camera plus or minus ${halfWidth}, tolerance plus or minus ${tolerance}; ${made}.`,
    line: '1 tolerance',
    more: (count: number): string => (count === 1 ? 'and 1 surer one' : `and ${count} surer ones`),
  },
  of: (wearer: string): string => (wearer === '' ? 'No name' : wearer),
  printedOn: (day: string): string => `Printed ${day}.`,
};
