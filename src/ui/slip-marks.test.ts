import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { Explanation } from '../core/crosscheck/reconciliation.js';
import { SLIP_KINDS } from '../core/crosscheck/slip.js';
import type { Misfit } from '../session/misfits.js';
import { offerPlaceWords, offerWords, probableExplanation, rowMark } from './slip-marks.js';
import { words } from './language.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function tenOff(probability: number, restored = 71): Explanation {
  return { slips: [{ kind: 'ten-off', restorations: [{ name: 'pdFar', written: 61, restored }] }], probability };
}

function swapped(probability: number): Explanation {
  const restorations = [
    { name: 'crestHeightR', written: 5, restored: 3 },
    { name: 'crestHeightL', written: 3, restored: 5 },
  ] as const;
  return { slips: [{ kind: 'sides-swapped', restorations }], probability };
}

function suspected(names: Misfit['names'], ...explanations: readonly Explanation[]): Misfit {
  return {
    kind: 'suspected',
    names,
    suspicion: { names, probability: 0.9, explanations, conflict: null, expected: null },
  };
}

const RANGE = { low: 40, high: 100 };
const OTHERS: readonly Misfit[] = [
  {
    kind: 'refused',
    names: ['pdNear'],
    failure: { kind: 'impossible', value: 5, scale: 5, range: RANGE, place: null },
    explanations: [],
  },
  {
    kind: 'refused',
    names: ['apicalRadius'],
    failure: {
      kind: 'trials-contradict',
      smaller: { size: 8, verdict: 'loose' },
      larger: { size: 10, verdict: 'tight' },
    },
    explanations: [],
  },
  {
    kind: 'refused',
    names: ['templeWidth'],
    failure: { kind: 'not-a-number', typed: '1S2', place: null },
    explanations: [],
  },
  {
    kind: 'refused',
    names: ['frontalAngleR'],
    failure: { kind: 'too-many-repeats', count: 25, limit: 20 },
    explanations: [],
  },
  {
    kind: 'refused',
    names: ['frontalAngleL'],
    failure: { kind: 'not-a-trial', typed: 'x', place: 1 },
    explanations: [],
  },
  {
    kind: 'does-not-add-up',
    names: ['pdFar', 'monoPdR', 'monoPdL'],
    isNear: false,
    sum: 64,
    whole: 66,
    limit: 1.5,
  },
  { kind: 'readers-differ', names: ['headWidth'], value: 155, otherReader: '', otherValue: 148 },
  { kind: 'far-off-repeat', names: ['splayAngleR'], farOff: [36], others: [31, 31.5] },
  { kind: 'unusual', names: ['splayAngleL'], value: 170, usual: RANGE },
];

describe('the mark beside a field', () => {
  it('says the number that a probable slip would restore, at each place that it would change', () => {
    const misfits = [suspected(['pdFar', 'monoPdR'], tenOff(0.86)), suspected(['crestHeightR'], swapped(0.7))];
    expect(rowMark('pdFar', { misfits })).toBe('probably 71: wrong ten');
    expect(rowMark('monoPdR', { misfits })).toBe('in doubt');
    expect(rowMark('crestHeightL', { misfits })).toBe('probably 5: right and left swapped');
    expect(rowMark('pdNear', { misfits })).toBeNull();
  });

  it('says no number where several are as good, and no slip where none is probable', () => {
    const [one, other] = [tenOff(0.35), tenOff(0.3, 51)];
    expect(rowMark('pdFar', { misfits: [suspected(['pdFar'], one, other)] })).toBe('probably wrong ten');
    expect(rowMark('pdFar', { misfits: [suspected(['pdFar'], one)] })).toBe('does not fit');
    expect(rowMark('pdFar', { misfits: [suspected(['pdFar'])] })).toBe('does not fit');
  });

  it.each([
    ['pdNear', 'cannot be'],
    ['apicalRadius', 'the trials contradict each other'],
    ['headWidth', 'the readers differ'],
    ['splayAngleR', 'a repeat far from the others'],
    ['splayAngleL', 'unusual: look again'],
    ['templeWidth', 'not a number'],
    ['frontalAngleR', 'too many numbers'],
    ['frontalAngleL', 'not a trial'],
    ['monoPdL', 'R and L do not make the whole'],
  ] as const)('says of %s: %s', (name, said) => {
    expect(rowMark(name, { misfits: OTHERS })).toBe(said);
  });

  it('leaves it to the finding to say that the camera disagrees', () => {
    const finding = { kind: 'disagrees' } as Extract<Misfit, { kind: 'disagrees' }>['finding'];
    expect(rowMark('pdFar', { misfits: [{ kind: 'disagrees', names: ['pdFar'], value: 61, finding }] })).toBeNull();
  });

  it('is short, and another for each slip', () => {
    const all = SLIP_KINDS.map((kind) => words.slipsInShort[kind]);
    expect(new Set(all).size).toBe(SLIP_KINDS.length);
    for (const words of all) expect(words).toMatch(/^[a-z ]{4,30}$/);
  });
});

describe('what is offered', () => {
  it('is only what is more probable than all else', () => {
    expect(probableExplanation(suspected(['pdFar'], tenOff(0.5)))).toEqual(tenOff(0.5));
    expect(probableExplanation(suspected(['pdFar'], tenOff(0.49), tenOff(0.3, 51)))).toBeNull();
    expect(probableExplanation(suspected(['pdFar']))).toBeNull();
    for (const misfit of OTHERS) expect(probableExplanation(misfit)).toBeNull();
  });

  it('is nothing where two causes are as probable as one another', () => {
    const tied = suspected(['pdFar', 'crestHeightR'], tenOff(0.5003), swapped(0.4994));
    expect(probableExplanation(tied)).toBeNull();
    expect(rowMark('pdFar', { misfits: [tied] })).toBe('does not fit');
  });

  it('says what is used and what is kept, and the place where there are several', () => {
    expect(offerWords(tenOff(0.9), catalogue)).toBe('Use 71, keep 61 on record');
    expect(offerPlaceWords(tenOff(0.9), catalogue)).toBe(' (PD, distance)');
    expect(offerWords(swapped(0.9), catalogue)).toBe(
      'Use 3 for crest height R and 5 for crest height L, keep 5 and 3 on record',
    );
    expect(offerPlaceWords(swapped(0.9), catalogue)).toBe('');
    const exchanged: Explanation = {
      slips: [
        {
          kind: 'rows-swapped',
          restorations: [
            { name: 'frontalAngleR', written: 24, restored: 18 },
            { name: 'splayAngleR', written: 18, restored: 24 },
            { name: 'frontalAngleL', written: 25, restored: 19.5 },
            { name: 'splayAngleL', written: 19.5, restored: 25 },
          ],
        },
      ],
      probability: 0.9,
    };
    expect(offerWords(exchanged, catalogue)).toBe(
      'Use 18 and 19.5 for frontal angle R and L, 24 and 25 for splay angle R and L, keep 24, 25, 18 and 19.5 on record',
    );
    expect(offerPlaceWords(exchanged, catalogue)).toBe('');
    const both: Explanation = { slips: [tenOff(1).slips[0], swapped(1).slips[0]], probability: 0.6 };
    expect(offerWords(both, catalogue)).toBe(
      'Use 71 for PD, distance, 3 for crest height R and 5 for crest height L, keep 61, 5 and 3 on record',
    );
  });
});
