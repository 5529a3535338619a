import { describe, expect, it } from 'vitest';
import { expectSentence } from '../../tests/support/expect-sentence.js';
import type { CannotTellReason, Finding } from '../core/crosscheck/finding.js';
import { BUDGET_SOURCES } from '../core/estimate/estimate.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import { findingReason, findingWord, readingFailureSentence, sourceWords } from './sentences.js';

describe('sources of doubt', () => {
  it.each(BUDGET_SOURCES)('put the source of doubt %s into words', (source) => {
    expect(sourceWords(source)).toMatch(/^[a-z]/);
  });
});

describe('a finding that cannot tell', () => {
  const finding = (reason: CannotTellReason, cameraExpanded: number): Finding => ({
    kind: 'cannot-tell',
    reason,
    comparison: {
      name: 'apertureR',
      difference: 0.4,
      differenceLow: -2,
      differenceHigh: 2.8,
      handExpanded: 0.5,
      cameraExpanded,
      enNumber: 0.2,
      tolerance: { value: 1, status: 'chosen', source: 'chosen' },
    },
  });
  const tooUncertain: CannotTellReason = { kind: 'camera-too-uncertain', neededCameraExpanded: 1 };

  it('says how wide the picture’s doubt is, and asks for the lid marks only where they help', () => {
    const words = '±\u00a01.9 mm from one picture is too wide for ±\u00a01.0';
    expect(findingReason(finding(tooUncertain, 1.91), false)).toBe(words);
    expect(findingReason(finding(tooUncertain, 1.91), true)).toBe(`${words}; set the lid marks under the loupe`);
  });

  it('never calls a number too wide for the same number', () => {
    expect(findingReason(finding(tooUncertain, 1.04), false)).toContain(
      '±\u00a01.04 mm from one picture is too wide for ±\u00a01.00',
    );
  });

  it.each([
    [1.49, '1.4'],
    [0.3, '0.3'],
    [0.067, '0.06'],
  ])('rounds the deciding doubt %s down, so that it decides as written', (neededCameraExpanded, written) => {
    const words = findingReason(finding({ kind: 'between', neededCameraExpanded }, 0.9), true);
    expect(words).toBe(`too close to call: ±\u00a0${written} mm would decide`);
  });

  it('is said of R and L in the plural', () => {
    const { comparison } = finding(tooUncertain, 2);
    expect(findingWord({ kind: 'disagrees', comparison }, true)).toBe('disagree');
    expect(findingWord({ kind: 'agrees', comparison }, true)).toBe('agree');
    expect(findingWord({ kind: 'disagrees', comparison })).toBe('disagrees');
  });

  it('says “sweep” where the numbers come from one', () => {
    const comparison = {
      name: 'pdFar',
      difference: 0.4,
      differenceLow: -2,
      differenceHigh: 2.8,
      handExpanded: 0.5,
      cameraExpanded: 1.9,
      enNumber: 0.2,
      tolerance: { value: 1, status: 'chosen', source: 'chosen' },
    } as const;
    const reason = { kind: 'camera-too-uncertain', neededCameraExpanded: 1 } as const;
    const said = findingReason({ kind: 'cannot-tell', reason, comparison }, false, 'sweep', 'deg');
    expect(said).toBe('±\u00a01.9° from one sweep is too wide for ±\u00a01.0');
  });
});

describe('what was typed and is no reading', () => {
  const RANGE = { low: 40, high: 90 };
  // One of every kind. The record does not compile where one is missing.
  const FAILURES: {
    readonly [Kind in ReadingFailure['kind']]: readonly [Extract<ReadingFailure, { kind: Kind }>, string | null];
  } = {
    empty: [{ kind: 'empty' }, null],
    'not-a-number': [
      { kind: 'not-a-number', typed: ' 6x ', place: 2 },
      '“6x” is not a number. Type digits with at most one decimal point or comma, such as 63.5.',
    ],
    'not-positive': [
      { kind: 'not-positive', value: 0, scale: 0, place: null },
      'A reading must be above zero. Type the number that the gauge shows.',
    ],
    impossible: [
      { kind: 'impossible', value: 6.35, scale: 6.35, range: RANGE, place: null },
      '6.35 mm cannot be: such a reading lies between 40 and 90 mm. Look at the gauge again.',
    ],
    'not-a-trial': [
      { kind: 'not-a-trial', typed: '9 fine', place: 2 },
      '“9 fine” is no trial. Type each size with loose, fits or tight behind it, such as 10 loose 9 fits 8 tight.',
    ],
    'too-many-repeats': [
      { kind: 'too-many-repeats', count: 25, limit: 20 },
      '25 numbers stand here, and at most 20 are taken. Leave out those that do not belong here.',
    ],
    'trials-contradict': [
      {
        kind: 'trials-contradict',
        smaller: { size: 8, verdict: 'loose' },
        larger: { size: 9.5, verdict: 'fits' },
      },
      '8 mm is written as “loose” and 9.5 mm as “fits”, but a smaller size cannot be looser. Try both again.',
    ],
    'trials-one-sided': [
      { kind: 'trials-one-sided', verdict: 'loose', tryNext: 7 },
      'All sizes were loose so far. Try 7 mm next.',
    ],
  };

  it.each(Object.values(FAILURES))('is told with the way out: $0.kind', (failure, said) => {
    expect(readingFailureSentence(failure, 'mm')).toBe(said);
    if (said !== null) expectSentence(said.replace(/^[\d“]/, 'A'));
  });

  it.each([
    ['64,64,65', 'Put a space between repeats, such as 63 63.5 62.5.'],
    ['63.5,64', 'Put a space between repeats, such as 63 63.5 62.5.'],
    ['64/65', 'Put a space between repeats, such as 63 63.5 62.5.'],
    ['152mm', 'Leave the unit out: 152.'],
    ['63,5mm.', 'Leave the unit out: 63,5.'],
    ['mm', 'Leave the unit out.'],
    ['15.2cm', 'Type it in mm, and leave the unit out.'],
    ['6in', 'Type it in mm, and leave the unit out.'],
    ['1S2', 'Type digits with at most one decimal point or comma, such as 63.5.'],
    ['1.5.2', 'Type digits with at most one decimal point or comma, such as 63.5.'],
  ])('is told what to type instead: %s', (typed, said) => {
    expect(readingFailureSentence({ kind: 'not-a-number', typed, place: null }, 'mm')).toBe(
      `“${typed}” is not a number. ${said}`,
    );
  });

  it('is told to leave the unit out where sizes are tried, and where an angle is read', () => {
    expect(readingFailureSentence({ kind: 'not-a-trial', typed: 'mm', place: 1 }, 'mm')).toMatch(
      /^“mm” is no trial\. Leave the unit out\. Type each size/,
    );
    expect(readingFailureSentence({ kind: 'not-a-number', typed: '12°', place: null }, 'deg')).toBe(
      '“12°” is not a number. Leave the unit out: 12.',
    );
    expect(readingFailureSentence({ kind: 'not-a-number', typed: '12mm', place: null }, 'deg')).toContain(
      'Type it in degrees, and leave the unit out.',
    );
  });

  it('is told in degrees where the measurement is an angle', () => {
    const said = readingFailureSentence(FAILURES.impossible[0], 'deg');
    expect(said).toBe('6.35° cannot be: such a reading lies between 40 and 90°. Look at the gauge again.');
  });

  it('is told with both numbers where a gauge adds something', () => {
    expect(readingFailureSentence({ ...FAILURES.impossible[0], scale: 2.35 }, 'mm')).toMatch(
      /^2.35 on the scale stands for 6.35 mm. 6.35 mm cannot be/,
    );
  });

  it('is told of one size that was found to be two things', () => {
    const twice = {
      kind: 'trials-contradict',
      smaller: { size: 8, verdict: 'loose' },
      larger: { size: 8, verdict: 'tight' },
    };
    expect(readingFailureSentence(twice as ReadingFailure, 'mm')).toBe(
      '8 mm is written as “loose” and as “tight”. Try it again.',
    );
  });
});
