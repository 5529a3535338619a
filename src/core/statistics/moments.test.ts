import * as oracle from 'simple-statistics';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mean, standardDeviation } from './moments.js';

// Bland and Altman 1986, Lancet 327:307-310, data of 17 subjects (first readings of both methods); seen in a public repository
const METHOD_A = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const METHOD_B = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

it('gives the published mean and spread of the differences', () => {
  const differences = METHOD_A.map((value, i) => value - METHOD_B[i]!);
  expect(Math.abs(mean(differences) - -2.1176)).toBeLessThan(0.0001);
  expect(Math.abs(standardDeviation(differences) - 38.7651)).toBeLessThan(0.0001);
});

it('agrees with simple-statistics on any list', () => {
  const lists = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 2, maxLength: 30 });
  fc.assert(
    fc.property(lists, (values) => {
      expect(mean(values)).toBeCloseTo(oracle.mean(values), 8);
      expect(standardDeviation(values)).toBeCloseTo(oracle.sampleStandardDeviation(values), 8);
    }),
  );
});
