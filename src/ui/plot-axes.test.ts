import { describe, expect, it } from 'vitest';
import { timeTicks, valueAxis } from './plot-axes.js';

describe('an axis of values', () => {
  const text = (value: number, decimals: number) => value.toFixed(decimals);

  it('is widened to whole steps, and written with as many decimals as they need', () => {
    expect(valueAxis(57.3, 68.9, 4, text)).toEqual({
      low: 55,
      high: 70,
      ticks: [
        { at: 55, text: '55' },
        { at: 60, text: '60' },
        { at: 65, text: '65' },
        { at: 70, text: '70' },
      ],
    });
    const fine = valueAxis(9.82, 10.31, 4, text);
    expect(fine.ticks.map((tick) => tick.text)).toEqual(['9.8', '10.0', '10.2', '10.4']);
    [9.8, 10, 10.2, 10.4].forEach((at, place) => expect(fine.ticks[place]?.at).toBeCloseTo(at, 9));
  });

  it('has two ends where all values are equal', () => {
    expect(valueAxis(12, 12, 4, text).ticks).toHaveLength(2);
  });
});

describe('an axis of time', () => {
  const at = (...date: readonly [number, number, number]) => new Date(...date).getTime();
  const shown = (from: number, to: number) =>
    timeTicks(from, to, 6).map(({ atMs, by }) => `${by} ${new Date(atMs).toLocaleDateString('sv-SE')}`);

  it('counts days', () => {
    expect(shown(at(2026, 1, 25) + 3.6e6, at(2026, 2, 1))).toEqual([
      'day 2026-02-26',
      'day 2026-02-27',
      'day 2026-02-28',
      'day 2026-03-01',
    ]);
  });

  it('counts months, the first of the year among them', () => {
    expect(shown(at(2025, 9, 20), at(2026, 8, 3))).toEqual([
      'month 2025-11-01',
      'month 2026-01-01',
      'month 2026-03-01',
      'month 2026-05-01',
      'month 2026-07-01',
      'month 2026-09-01',
    ]);
  });

  it('counts years', () => {
    expect(shown(at(2016, 5, 1), at(2026, 5, 1))).toEqual([
      'year 2017-01-01',
      'year 2019-01-01',
      'year 2021-01-01',
      'year 2023-01-01',
      'year 2025-01-01',
    ]);
  });
});
