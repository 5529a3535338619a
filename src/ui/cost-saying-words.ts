import type { Cost } from '../core/lenses/cost-of-difference.js';

/** What a prism against its limit is said from. Amounts carry their sign; `interval` and `rule` are empty or begin with a gap. */
export interface PrismFacts {
  readonly amount: string;
  readonly way: string;
  readonly interval: string;
  readonly allowed: string;
  readonly rule: string;
}

/** What a difference between two values does through the lenses. Lengths in mm without a unit, powers in D. */
export const costSayingWords = {
  where: (places: string, source: string): string => `${places}, ${source}`,
  /** before the verdict */
  whereHead: (where: string): string => `${where}:`,
  numbers: (apart: string, numbers: string): string => `${apart}: ${numbers}`,
  handLessCamera: 'hand less camera',
  handLessSweep: 'hand less sweep',
  /** an empty name where none was typed */
  readerLess: (other: string): string => (other === '' ? 'this reader less the other' : `this reader less ${other}`),
  writtenLessMeant: 'written less what was probably meant',
  withoutPrism: 'no prism, as these lenses have no power that way.',
  inPlane: {
    distance: (what: string): string => `${what}.`,
    near: (what: string): string => `in lenses made for near ${what}.`,
    segments: (what: string): string => `through the segments ${what}.`,
  },
  /** a 95 % interval */
  interval: (low: string, high: string): string => ` (${low} to ${high})`,
  bases: { in: 'base in', out: 'base out', up: 'base up', down: 'base down' },
  beforeRight: (base: string): string => `${base} before R`,
  /** where nobody knows which way the base points */
  directions: { horizontal: 'horizontal', vertical: 'vertical' },
  prism: ({ amount, way, interval, allowed, rule }: PrismFacts): string =>
    `${amount} ${way}${interval} against ${allowed} allowed${rule}`,
  ruleOfShift: (mm: string, power: string): string => ` (${mm} mm at ${power} D)`,
  position: {
    betweenSegments: (amount: string, interval: string, allowed: string): string =>
      `the distance between the segments is ${amount} mm${interval} off (${allowed} mm allowed)`,
    fittingPoint: {
      horizontal: (side: string, amount: string, interval: string, allowed: string): string =>
        `the ${side} fitting point lies ${amount} mm${interval} off sideways (${allowed} mm allowed)`,
      vertical: (side: string, amount: string, interval: string, allowed: string): string =>
        `the ${side} fitting point lies ${amount} mm${interval} off in height (${allowed} mm allowed)`,
    },
    segment: {
      horizontal: (side: string, amount: string, interval: string, allowed: string): string =>
        `the ${side} segment lies ${amount} mm${interval} off sideways (${allowed} mm allowed)`,
      vertical: (side: string, amount: string, interval: string, allowed: string): string =>
        `the ${side} segment lies ${amount} mm${interval} off in height (${allowed} mm allowed)`,
    },
  },
  acts: {
    stronger: (side: string, power: string, change: string, interval: string): string =>
      `${side} ${power} acts ${change} D stronger${interval}`,
    weaker: (side: string, power: string, change: string, interval: string): string =>
      `${side} ${power} acts ${change} D weaker${interval}`,
  },
  powers: (acts: string, halfStep: string): string => `${acts}. Half a step of prescribing is ${halfStep} D.`,
  noPrism: 'none',
  through: (eyes: string): string => `With the prescribed prism: ${eyes}.`,
  without: {
    'not-through-lenses': (what: string): string => `${what}: no effect through the lenses.`,
    'inset-of-design': (what: string): string => `${what}: progressive lenses bring their own near inset.`,
    'tilt-not-worked-out': (what: string): string =>
      `${what}: tilt changes strong lenses a little; that is not worked out here.`,
  } satisfies Record<Extract<Cost, { kind: 'none' }>['reason'], (what: string) => string>,
  vertex: {
    asTested: 'as tested',
    farther: (mm: string): string => `${mm} mm farther than tested`,
    nearer: (mm: string): string => `${mm} mm nearer than tested`,
    matters: (where: string, actsAs: string, compensated: string): string =>
      `${where}: acts as about ${actsAs}; ${compensated} would act as prescribed`,
    doesNotMatter: (where: string): string => `${where}: does not matter`,
  },
};
