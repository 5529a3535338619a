import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tolerance } from '../catalogue/measurement.js';
import type { Estimate } from '../estimate/estimate.js';
import type { Reading } from '../reading/reading.js';
import { compareReading } from './compare-reading.js';

/** Two-sided 95 % of the normal distribution: from any table. */
const K = 1.959963984540054;

const tolerance = (value: number): Tolerance => ({ value, source: 'invented for the test', status: 'chosen' });

/** `expanded` is the half width of the 95 % interval. */
function reading(value: number, expanded: number): Reading {
  return { name: 'pdFar', value, standardUncertainty: expanded / K, origin: null };
}

function estimate(value: number, expanded: number): Estimate {
  const standardUncertainty = expanded / K;
  return {
    value,
    standardUncertainty,
    low: value - expanded,
    high: value + expanded,
    unit: 'mm',
    budget: [{ source: 'contact-depth', standardUncertainty }],
  };
}

describe('comparing a hand reading with the camera', () => {
  it.each([
    { why: 'close, and both sure', hand: [63.5, 0.8], camera: [63, 1], t: 2, kind: 'agrees' },
    { why: 'exactly the tolerance', hand: [63.1, 0.8], camera: [62.1, 0.9], t: 1, kind: 'agrees' },
    { why: 'significant, but it does not matter', hand: [152, 1], camera: [148, 1], t: 5, kind: 'agrees' },
    { why: 'far apart', hand: [57, 0.84], camera: [54.2, 1], t: 2, kind: 'disagrees' },
    { why: 'far apart even for a coarse picture', hand: [36.5, 0.84], camera: [63.4, 6], t: 2, kind: 'disagrees' },
    { why: 'close, but the camera knows too little', hand: [152, 3], camera: [148, 6], t: 5, kind: 'cannot-tell' },
    { why: 'equal, but the camera knows too little', hand: [63, 0.8], camera: [63, 2.5], t: 2, kind: 'cannot-tell' },
    { why: 'equal, but the hand knows too little', hand: [63, 2.5], camera: [63, 1], t: 2, kind: 'cannot-tell' },
    { why: 'beyond, but within the doubts', hand: [65.1, 1.5], camera: [63, 1.9], t: 2, kind: 'cannot-tell' },
  ] as const)('$why: $kind', ({ hand, camera, t, kind }) => {
    const finding = compareReading(reading(hand[0], hand[1]), estimate(camera[0], camera[1]), tolerance(t));
    expect(finding.kind).toBe(kind);
  });

  it('gives the numbers behind the word', () => {
    // ISO 13528 E_n of 63.0 ± 1.0 and 60.5 ± 1.5: 1.3868; interval 2.5 ± sqrt(1² + 1.5²)
    const { kind, comparison } = compareReading(reading(63, 1), estimate(60.5, 1.5), tolerance(2));
    expect(kind).toBe('disagrees');
    expect(comparison.difference).toBe(2.5);
    expect(comparison.enNumber).toBeCloseTo(1.3868, 4);
    expect(comparison.handExpanded).toBeCloseTo(1, 12);
    expect(comparison.cameraExpanded).toBeCloseTo(1.5, 12);
    expect(comparison.differenceLow).toBeCloseTo(2.5 - Math.sqrt(3.25), 12);
    expect(comparison.differenceHigh).toBeCloseTo(2.5 + Math.sqrt(3.25), 12);
    expect(comparison.tolerance.value).toBe(2);
  });

  it('says which doubt is too large and what would do', () => {
    const reason = (hand: readonly [number, number], camera: readonly [number, number], t: number) => {
      const finding = compareReading(reading(...hand), estimate(...camera), tolerance(t));
      return finding.kind === 'cannot-tell' ? finding.reason : finding.kind;
    };
    expect(reason([63, 0.8], [63, 2.5], 2)).toEqual({ kind: 'camera-too-uncertain', neededCameraExpanded: 2 });
    expect(reason([63, 2.5], [63, 1], 2)).toEqual({ kind: 'hand-too-uncertain', neededHandExpanded: 2 });
    // no picture could decide: the hand's doubt alone spans the difference
    expect(reason([65.5, 3], [63, 1], 2)).toEqual({ kind: 'hand-too-uncertain', neededHandExpanded: 2 });
    // 3-4-5: beyond, E_n = 1 at a camera of ± 4 when the hand has ± 3
    expect(reason([68, 3], [63, 4.5], 4.8)).toEqual({
      kind: 'between',
      neededCameraExpanded: expect.closeTo(4, 12) as number,
    });
    expect(reason([68, 3], [63, 4.9], 3.5)).toEqual({ kind: 'camera-too-uncertain', neededCameraExpanded: 3.5 });
  });

  const numbers = fc.record({
    hand: fc.double({ min: 40, max: 80, noNaN: true }),
    camera: fc.double({ min: 40, max: 80, noNaN: true }),
    handExpanded: fc.double({ min: 0.1, max: 8, noNaN: true }),
    cameraExpanded: fc.double({ min: 0.1, max: 8, noNaN: true }),
    t: fc.double({ min: 0.5, max: 6, noNaN: true }),
  });

  it('says agrees and disagrees exactly where the numbers carry it', () => {
    fc.assert(
      fc.property(numbers, ({ hand, camera, handExpanded, cameraExpanded, t }) => {
        const { kind } = compareReading(reading(hand, handExpanded), estimate(camera, cameraExpanded), tolerance(t));
        const gap = Math.abs(hand - camera);
        const carriesAgrees = Math.max(gap, handExpanded, cameraExpanded) <= t;
        const carriesDisagrees = gap > Math.max(t, Math.hypot(handExpanded, cameraExpanded));
        expect(kind).toBe(carriesAgrees ? 'agrees' : carriesDisagrees ? 'disagrees' : 'cannot-tell');
      }),
    );
  });

  it('decides once the needed uncertainty is reached', () => {
    fc.assert(
      fc.property(numbers, ({ hand, camera, handExpanded, cameraExpanded, t }) => {
        const finding = compareReading(reading(hand, handExpanded), estimate(camera, cameraExpanded), tolerance(t));
        if (finding.kind !== 'cannot-tell' || finding.reason.kind === 'hand-too-uncertain') return;
        const needed = finding.reason.neededCameraExpanded;
        expect(needed).toBeLessThanOrEqual(cameraExpanded + 1e-9);
        const better = compareReading(reading(hand, handExpanded), estimate(camera, needed * 0.999), tolerance(t));
        // what the picture can do is done; only the hand may still be in doubt
        if (better.kind === 'cannot-tell') expect(better.reason.kind).toBe('hand-too-uncertain');
      }),
    );
  });

  it('is the same for numbers mirrored about the camera, with the sign turned', () => {
    fc.assert(
      fc.property(numbers, ({ hand, camera, handExpanded, cameraExpanded, t }) => {
        const one = compareReading(reading(hand, handExpanded), estimate(camera, cameraExpanded), tolerance(t));
        const other = compareReading(reading(camera, handExpanded), estimate(hand, cameraExpanded), tolerance(t));
        expect(other.kind).toBe(one.kind);
        expect(other.comparison.enNumber).toBeCloseTo(-one.comparison.enNumber, 12);
      }),
    );
  });
});
