import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { expectSentence } from '../../tests/support/expect-sentence.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { Explanation } from '../core/crosscheck/reconciliation.js';
import { takeReading } from '../core/reading/reading.js';
import type { Misfit } from '../session/misfits.js';
import { misfitExplanations, misfitSentence } from './misfit-sentences.js';
import type { WrittenSheet } from './slip-sentences.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const SHEET: WrittenSheet = {
  readings: {
    pdFar: takeReading('pdFar', 61, catalogue),
    pdNear: takeReading('pdNear', 66, catalogue),
    monoNearR: takeReading('monoNearR', 32.5, catalogue),
    monoNearL: takeReading('monoNearL', 31.5, catalogue),
    headWidth: takeReading('headWidth', 146, catalogue),
  },
  catalogue,
  gauges: [],
};

const tenOff = (probability: number): Explanation => ({
  slips: [{ kind: 'ten-off', restorations: [{ name: 'pdFar', written: 61, restored: 71 }] }],
  probability,
});

const SUSPICION = { names: ['pdFar'], probability: 0.9, explanations: [], conflict: null, expected: null } as const;

// One of every kind, what is said of it, and what to do.
const MISFITS: {
  readonly [Kind in Misfit['kind']]: readonly [Extract<Misfit, { kind: Kind }>, string, readonly string[]];
} = {
  refused: [
    {
      kind: 'refused',
      names: ['frontalAngleR'],
      failure: { kind: 'impossible', value: 95, scale: 95, range: { low: 0, high: 60 }, place: null },
      explanations: [],
    },
    'Frontal angle R: 95° cannot be: such a reading lies between 0 and 60°. Look at the gauge again.',
    [],
  ],
  suspected: [
    { kind: 'suspected', names: ['pdFar'], suspicion: { ...SUSPICION, explanations: [tenOff(0.86)] } },
    'PD, distance: 61 mm does not fit the rest.',
    ['PD, distance was probably read at the wrong ten: 61 instead of 71 mm (86 %).'],
  ],
  'does-not-add-up': [
    {
      kind: 'does-not-add-up',
      names: ['pdNear', 'monoNearR', 'monoNearL'],
      isNear: true,
      sum: 64,
      whole: 66,
      limit: 1.5,
    },
    'Near, R 32.5 and L 31.5 make 64 mm; 66 is written: read all three again.',
    [],
  ],
  disagrees: [
    {
      kind: 'disagrees',
      names: ['headWidth'],
      value: 146,
      finding: {
        kind: 'disagrees',
        comparison: {
          name: 'headWidth',
          difference: -18.26,
          differenceLow: -24,
          differenceHigh: -12,
          handExpanded: 3,
          cameraExpanded: 5.02,
          enNumber: -3,
          tolerance: { value: 3, source: 'chosen', status: 'chosen' },
        },
      },
    },
    'Head width: 146 mm by hand, 164.3 ± 5.0 mm by the camera.',
    ['Read it again, or look at the points in the picture.'],
  ],
  'readers-differ': [
    { kind: 'readers-differ', names: ['headWidth'], value: 146, otherReader: 'A. B.', otherValue: 155.5 },
    'Head width: 146 mm on this sheet, 155.5 mm by A. B. That is more than two readers should differ.',
    ['Both read it again, each without the other’s number.'],
  ],
  'far-off-repeat': [
    { kind: 'far-off-repeat', names: ['pdFar'], farOff: [71], others: [61, 61.5, 61] },
    'PD, distance: 71 stands far from the other repeats (61, 61.5 and 61).',
    ['Read it again, and take out the number that was misread.'],
  ],
  unusual: [
    { kind: 'unusual', names: ['crestHeightR'], value: -4.5, usual: { low: -3, high: 12 } },
    'Crest height R: \u22124.5 mm is unusual (most adults: \u22123 to 12 mm).',
    ['Nothing contradicts it, and unusual faces exist: look again.'],
  ],
};

describe('what does not fit', () => {
  it.each(Object.values(MISFITS))('is said with its numbers, and what to do: $kind', (misfit, said, explained) => {
    expect(misfitSentence(misfit, SHEET)).toBe(said);
    expectSentence(said);
    expect(misfitExplanations(misfit, SHEET)).toEqual(explained);
    explained.forEach(expectSentence);
  });

  it('asks to read again where nothing explains it, or nothing does surely', () => {
    const suspected = (explanations: readonly Explanation[]): Misfit => ({
      kind: 'suspected',
      names: ['pdFar'],
      suspicion: { ...SUSPICION, explanations },
    });
    expect(misfitExplanations(suspected([]), SHEET)).toEqual(['No usual slip explains it: read it again.']);
    expect(misfitExplanations(suspected([tenOff(0.3)]), SHEET)).toEqual([
      'PD, distance was perhaps read at the wrong ten: 61 instead of 71 mm (30 %).',
      'It may be something else: read it again.',
    ]);
  });

  it('says what a refused number probably was', () => {
    const [refused] = MISFITS.refused;
    expect(misfitExplanations({ ...refused, names: ['pdFar'], explanations: [tenOff(0.995)] }, SHEET)).toEqual([
      'PD, distance was probably read at the wrong ten: 61 instead of 71 mm (over 99 %).',
    ]);
  });

  it('says of an entry that cannot be read what stands there', () => {
    const failure = { kind: 'not-a-number', typed: '1S2', place: null } as const;
    const refused: Misfit = { kind: 'refused', names: ['headWidth'], failure, explanations: [] };
    expect(misfitSentence(refused, SHEET)).toMatch(/^Head width: “1S2” is not a number\. Type digits/);
  });

  it('says of what two readers read together that it is their mean', () => {
    const [sum] = MISFITS['does-not-add-up'];
    expect(misfitSentence(sum, { ...SHEET, joined: new Set(['pdNear']) })).toBe(
      'Near, R 32.5 and L 31.5 make 64 mm; 66 (mean of both readers) is written: read all three again.',
    );
  });

  it('holds against the camera what this reader read, not the mean of both', () => {
    const [disagreeing, said] = MISFITS.disagrees;
    const readings = { ...SHEET.readings, headWidth: takeReading('headWidth', 147, catalogue) };
    const sheet: WrittenSheet = { ...SHEET, readings, joined: new Set(['headWidth']) };
    expect(misfitSentence(disagreeing, sheet)).toBe(said);
  });

  it('calls a reader without a name the other reader', () => {
    const [differing] = MISFITS['readers-differ'];
    expect(misfitSentence({ ...differing, otherReader: '' }, SHEET)).toContain('155.5 mm by the other reader. That');
  });
});
