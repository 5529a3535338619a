import { expect, it } from 'vitest';
import { decimalsOf } from './decimals-of.js';

it.each([
  [0, 0],
  [2, 0],
  [0.5, 1],
  [-0.25, 2],
  [0.05, 2],
  // 0.30000000000000004
  [0.1 + 0.2, 1],
  [1 / 3, 3],
])('%d needs %d decimals', (value, decimals) => {
  expect(decimalsOf(value)).toBe(decimals);
});
