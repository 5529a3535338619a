import type { Grouping } from '../session/agreement-over-sessions.js';

/** A mean or a difference of means: what way it goes, its size with its unit, and both ends of its 95 % interval in that way. */
export interface DeviationFacts {
  readonly way: 'more' | 'less' | 'none';
  readonly amount: string;
  readonly low: string;
  readonly high: string;
}

const visits = (count: number): string => (count === 1 ? '1 visit' : `${count} visits`);

const IT: Readonly<Record<Grouping, string>> = { gauge: 'this gauge', reader: 'this reader' };

/** What gauges and readers do over many sessions. */
export const overSessionsWords = {
  open: 'Gauges and readers',
  heading: 'Gauges and readers',
  actions: 'Gauges and readers',
  back: 'Back to the sessions',
  intro:
    'Hand minus camera, over all kept sessions. Each point is one hand reading beside what the camera said of the same place.',
  caution:
    'What all of them do alike may be the camera’s own deviation. What one does unlike the others is hardly the camera’s.',
  reading: 'Reading the kept sessions.',
  workingOut: 'Working it out.',
  none: 'Nothing to compare yet: it needs kept sessions in which something was read by hand that the camera measured too.',
  measurement: 'Measurement',
  option: (name: string, sessions: number): string =>
    `${name} (${sessions === 1 ? '1 session' : `${sessions} sessions`})`,
  by: 'Apart by',
  bys: { gauge: 'gauge', reader: 'reader' },
  camera: 'Camera values from',
  cameras: { any: 'pictures and sweeps', picture: 'pictures', sweep: 'sweeps' },
  countFarOff: 'Count what stands far off',
  plainScale: 'Plain scale',
  noName: 'No name typed',
  summary: (name: string, camera: string, pairs: number, sessions: number): string =>
    `${name}, from ${camera}: ${pairs === 1 ? '1 reading' : `${pairs} readings`} from ${sessions === 1 ? '1 session' : `${sessions} sessions`}.`,
  covered: (count: number): string =>
    count === 1
      ? '1 reading is left out: the camera’s value beside it is still covered.'
      : `${count} readings are left out: the camera’s values beside them are still covered.`,
  print: 'Print',

  overview: {
    gauge: 'All gauges',
    reader: 'All readers',
    note: 'The thick bar is where the mean lies (95\u00a0%), the thin one where 19 of 20 differences lie. The middle line is the camera.',
    lane: (name: string, mean: string, limits: string | null): string =>
      `${name}: mean ${mean}${limits === null ? '' : `; limits of agreement ${limits}`}.`,
    count: visits,
    tooFew: (names: readonly string[]): string => `Too few visits to say anything: ${names.join(', ')}.`,
    nameAndVisits: (name: string, count: number): string => `${name} (${visits(count)})`,
  },

  bias: (by: Grouping, count: number, { way, amount, low, high }: DeviationFacts): string =>
    way === 'none'
      ? `Over ${visits(count)} ${IT[by]} reads as the camera does: ${amount} on average (95\u00a0%: ${low} to ${high}).`
      : `Over ${visits(count)} ${IT[by]} reads ${amount} ${way} than the camera (95\u00a0%: ${low} to ${high}).`,
  /** `only` is what the single other one is called; null where there are several */
  others: (_by: Grouping, only: string | null, { way, amount, low, high }: DeviationFacts): string =>
    way === 'none'
      ? `From ${only ?? 'all the others'} it does not differ visibly: ${amount} (95\u00a0%: ${low} to ${high}).`
      : `It reads ${amount} ${way} than ${only ?? 'all the others'} (95\u00a0%: ${low} to ${high}). What the camera does alike for all does not explain that.`,
  limits: (low: string, high: string, known: string): string =>
    `19 of 20 differences lie between ${low} and ${high}; each end is known to ±\u00a0${known}.`,
  beyond: (count: number, all: number, tolerance: string): string =>
    count === 0
      ? `None of ${all} lies beyond the tolerance of ±\u00a0${tolerance}.`
      : `${count} of ${all} ${count === 1 ? 'lies' : 'lie'} beyond the tolerance of ±\u00a0${tolerance}.`,
  drift: ({ way, amount, low, high }: DeviationFacts, days: number): string =>
    way === 'none'
      ? `No drift shows over ${days} days: ${amount} in 30 days (95\u00a0%: ${low} to ${high}).`
      : `It drifts: ${amount} ${way} with every 30 days (95\u00a0%: ${low} to ${high}), over ${days} days.`,
  scatter: (seen: string, expected: string): string =>
    `Differences scatter by ${seen} (one standard deviation); the doubts of hand and camera account for ${expected}.`,
  farOff: (count: number): string =>
    count === 1
      ? '1 reading stands far off, as slips do, and is not counted.'
      : `${count} readings stand far off, as slips do, and are not counted.`,
  tooFewForLimits: (needed: number): string => `Limits of agreement take ${needed} visits.`,
  tooFewForDrift: (needed: number, days: number): string => `Drift takes ${needed} visits, over at least ${days} days.`,
  check: {
    gauge: 'Hold it against something of known size before you change anything.',
    reader: 'Compare how each holds the gauge before you change anything.',
  },

  againstMean: 'By size',
  overTime: 'Over time',
  difference: (unit: string): string => `hand − camera, ${unit}`,
  mean: (unit: string): string => `mean of hand and camera, ${unit}`,
  day: 'day of the visit',
  points: (name: string): string => `Differences of ${name}, one after another by day`,
  point: (facts: {
    readonly day: string;
    readonly wearer: string;
    readonly side: 'R' | 'L' | null;
    readonly hand: string;
    readonly camera: string;
    readonly difference: string;
    readonly isFarOff: boolean;
  }): string =>
    `${facts.day}, ${facts.wearer}${facts.side === null ? '' : facts.side === 'R' ? ', right' : ', left'}: hand ${facts.hand}, camera ${facts.camera}, difference ${facts.difference}${facts.isFarOff ? ', far off' : ''}`,
  noWearer: 'no name',
  pointHint: 'Point at the drawing, or go through it with the arrow keys; Enter opens the session.',
  openSession: 'Open this session',

  key: {
    heading: 'What is drawn',
    right: 'right',
    left: 'left',
    reading: 'one reading',
    farOff: 'far off, not counted',
    mean: 'mean, with its 95\u00a0%',
    limits: 'limits of agreement, with their 95\u00a0%',
    drift: 'drift, with its 95\u00a0%',
    tolerance: 'tolerance',
  },

  table: 'The same as a table',
  columns: {
    gauge: 'Gauge',
    reader: 'Reader',
    visits: 'Visits',
    readings: 'Readings',
    mean: 'Mean (95\u00a0%)',
    lower: 'Lower limit (95\u00a0%)',
    upper: 'Upper limit (95\u00a0%)',
    others: 'Against the others (95\u00a0%)',
    drift: 'In 30 days (95\u00a0%)',
    farOff: 'Far off',
  },
  withInterval: (value: string, low: string, high: string): string => `${value} (${low} to ${high})`,
  fromTo: (low: string, high: string): string => `${low} to ${high}`,
  method:
    'Limits of agreement after Bland and Altman (1986, 1999, 2007); right and left, and both readers, of one visit count as one where intervals are worked out. Drift after Theil and Sen (1968).',
};
