import { describe, expect, it } from 'vitest';
import { REMEDY_KINDS } from '../core/estimate/most-helpful.js';
import { remedySentence, shareWords } from './budget-sentences.js';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('the remedy in words', () => {
  it('says what the interval is and what it would be', () => {
    // The half width shrinks as the standard uncertainty does: 1.5 by 0.25 / 0.75.
    const sentence = remedySentence({ kind: 'take-sweep', standardUncertainty: 0.25 }, 1.5, 0.75, 'mm', false);
    expect(plain(sentence)).toBe('A sweep would bring this from ± 1.5 to about ± 0.5 mm.');
  });

  it('shows a second decimal where the first shows no difference', () => {
    const sentence = remedySentence({ kind: 'make-profile', standardUncertainty: 0.113 }, 0.26, 0.13, 'mm', true);
    expect(plain(sentence)).toBe('A profile of this camera would bring this from ± 0.3 to about ± 0.2 mm.');
    const closer = remedySentence({ kind: 'make-profile', standardUncertainty: 0.085 }, 0.2, 0.1, 'mm', true);
    expect(plain(closer)).toBe('A profile of this camera would bring this from ± 0.20 to about ± 0.17 mm.');
  });

  it.each(REMEDY_KINDS)('is a sentence of its own for %s', (kind) => {
    const sentence = plain(remedySentence({ kind, standardUncertainty: 0.5 }, 2, 1, 'mm', false));
    expect(sentence).toMatch(/^[A-Z].* would bring this from ± 2\.0 to about ± 1\.0 mm\.$/);
    const others = REMEDY_KINDS.filter((other) => other !== kind).map((other) =>
      plain(remedySentence({ kind: other, standardUncertainty: 0.5 }, 2, 1, 'mm', false)),
    );
    expect(others).not.toContain(sentence);
  });

  it('says so where nothing helps much', () => {
    expect(remedySentence(null, 2, 1, 'mm', false)).toBe('No single step would make this much surer.');
  });

  it('knows what would be done a second time', () => {
    const remedy = { kind: 'repeat', standardUncertainty: 0.5 } as const;
    expect(remedySentence(remedy, 2, 1, 'deg', true)).toMatch(/^A second sweep.*°\.$/);
    expect(remedySentence(remedy, 2, 1, 'deg', false)).toMatch(/^A second picture/);
  });
});

it('gives shares in whole percent', () => {
  expect(shareWords(0.256)).toBe('26 %');
  expect(shareWords(1)).toBe('100 %');
  expect(shareWords(0.004)).toBe('under 1 %');
});
