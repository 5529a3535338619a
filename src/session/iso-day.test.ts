import { expect, it } from 'vitest';
import { isoDay } from './iso-day.js';

it('a day is the one of the clock on the wall', () => {
  expect(isoDay(new Date(2024, 1, 3, 23, 59))).toBe('2024-02-03');
});
