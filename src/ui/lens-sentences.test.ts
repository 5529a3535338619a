import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { PrescriptionQuestion } from '../core/lenses/question-prescription.js';
import type { EntryFailure } from '../session/prescription-entry.js';
import {
  cautionSentence,
  entryFailureSentence,
  lensText,
  otherFormText,
  powerText,
  questionSentence,
} from './lens-sentences.js';

describe('a lens', () => {
  it('is written with signs and two decimals, the axis in whole degrees', () => {
    expect(lensText({ sphereD: -2, cylinderD: -1, axisDeg: 90 })).toBe('−2.00 / −1.00 × 90');
    expect(lensText({ sphereD: 0.5, cylinderD: 0, axisDeg: 180 })).toBe('+0.50');
    expect(powerText(-0.001)).toBe('0.00');
  });

  it('is shown with the other sign of cylinder', () => {
    expect(otherFormText({ sphereD: 2, cylinderD: -1, axisDeg: 180 })).toBe('+1.00 / +1.00 × 90');
    expect(otherFormText({ sphereD: 2, cylinderD: 0, axisDeg: 180 })).toBeNull();
  });
});

describe('what is wrong with a field', () => {
  const all: readonly EntryFailure[] = [
    { kind: 'missing' },
    { kind: 'not-a-number', typed: ' 1x ' },
    { kind: 'sign-missing', value: 4.25 },
    { kind: 'negative', value: -2 },
    { kind: 'no-step', value: -1.3 },
    { kind: 'beyond-limits', value: -35, lowest: -30, highest: 30 },
    { kind: 'no-axis', value: 181 },
    { kind: 'axis-without-cylinder' },
  ];

  it('is said for every kind, with what to type', () => {
    expect(all.map((failure) => entryFailureSentence(failure, 'sphere'))).toEqual([
      'Still to be typed.',
      '“1x” is not a number: type digits with at most one point or comma.',
      'Plus or minus? Type +4.25 or −4.25.',
      'A prism is never negative: choose the opposite base instead.',
      '−1.3 is no quarter of a dioptre. Look at the prescription again.',
      '−35 lies outside of −30 to 30 dioptres.',
      '181 is no axis: type a whole number from 1 to 180.',
      'An axis, but no cylinder: one of both is wrong.',
    ]);
    expect(entryFailureSentence({ kind: 'no-axis', value: 0 }, 'axis')).toBe('An axis of 0 is written as 180.');
  });
});

describe('what is asked', () => {
  const all: readonly PrescriptionQuestion[] = [
    { kind: 'sign-perhaps-lost', sphereD: { R: -4.25, L: 4 } },
    { kind: 'eyes-differ', differenceD: 3.5 },
    { kind: 'cylinder-signs-mixed' },
    { kind: 'cylinder-large', side: 'L', cylinderD: -11 },
    { kind: 'additions-differ', addD: { R: 2, L: 2.25 } },
    { kind: 'prism-large', side: 'R', amount: 12 },
    { kind: 'prisms-cancel', direction: 'vertical' },
    { kind: 'vertex-distance-missing', powerD: -6 },
  ];

  it('is said for every kind in a sentence of its own', () => {
    const sentences = all.map(questionSentence);
    expect(new Set(sentences).size).toBe(all.length);
    expect(sentences[0]).toBe('R −4.25 and L +4.00: was a sign lost?');
    for (const sentence of sentences) expect(sentence).toMatch(/[.?]$/);
  });
});

describe('what to mind', () => {
  it('names what is missing in the words of the sheet', () => {
    const catalogue = assembleCatalogue(OUTSIDE_TABLES);
    expect(cautionSentence({ kind: 'strong', powerD: -7.5, missing: ['fittingHeightR'] }, catalogue)).toBe(
      'Strong lenses (−7.50): one millimetre is 0.8 \u0394. Order by the PD of each eye, heights and vertex distance. Still missing: fitting height R.',
    );
    expect(cautionSentence({ kind: 'progressive', missing: [] }, catalogue)).toMatch(/adjusted on the face\.$/);
  });
});
