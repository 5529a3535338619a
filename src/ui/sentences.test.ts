import { describe, expect, it } from 'vitest';
import type { CannotTellReason, Finding } from '../core/crosscheck/finding.js';
import type { BudgetSource } from '../core/estimate/estimate.js';
import { findingReason, findingWord, sourceWords } from './sentences.js';

const SOURCES: Readonly<Record<BudgetSource, true>> = {
  'card-size': true,
  'card-edges': true,
  'iris-edges': true,
  'lid-edges': true,
  'contact-depth': true,
  camera: true,
  'head-pose': true,
  'iris-size': true,
  gaze: true,
  midline: true,
  'head-shape': true,
  'between-frames': true,
};

describe('sources of doubt', () => {
  it.each(Object.keys(SOURCES) as BudgetSource[])('put the source of doubt %s into words', (source) => {
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
    expect(findingReason({ kind: 'cannot-tell', reason, comparison }, false, 'sweep')).toContain('from one sweep');
  });
});
