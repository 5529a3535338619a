import { describe, expect, it } from 'vitest';
import { adjust, type Knowledge } from './adjustment.js';

/**
 * Problems of NIST's Statistical Reference Datasets, nonlinear regression, all of the level `higher` (Misra1a, of the level `lower`,
 * stands in adjustment.test.ts). Data and certified values are typed in from memory; what bears the memory out is that parameters,
 * their standard deviations and the residual sum of squares follow from the data to the digits compared below: one wrong digit
 * of the data shows in all of them.
 */
interface ReferenceProblem {
  readonly name: string;
  readonly model: (b: readonly number[], x: number) => number;
  /** x and y of each observation */
  readonly data: readonly (readonly [x: number, y: number])[];
  /** starts of the dataset */
  readonly starts: { readonly far?: readonly number[]; readonly near: readonly number[] };
  readonly certified: readonly number[];
  readonly standardDeviations: readonly number[];
  readonly residualSquares: number;
}

const THURBER: ReferenceProblem = {
  name: 'Thurber',
  model: ([b1, b2, b3, b4, b5, b6, b7], x) =>
    (b1! + x * (b2! + x * (b3! + x * b4!))) / (1 + x * (b5! + x * (b6! + x * b7!))),
  data: [
    [-3.067, 80.574],
    [-2.981, 84.248],
    [-2.921, 87.264],
    [-2.912, 87.195],
    [-2.84, 89.076],
    [-2.797, 89.608],
    [-2.702, 89.868],
    [-2.699, 90.101],
    [-2.633, 92.405],
    [-2.481, 95.854],
    [-2.363, 100.696],
    [-2.322, 101.06],
    [-1.501, 401.672],
    [-1.46, 390.724],
    [-1.274, 567.534],
    [-1.212, 635.316],
    [-1.1, 733.054],
    [-1.046, 759.087],
    [-0.915, 894.206],
    [-0.714, 990.785],
    [-0.566, 1090.109],
    [-0.545, 1080.914],
    [-0.4, 1122.643],
    [-0.309, 1178.351],
    [-0.109, 1260.531],
    [-0.103, 1273.514],
    [0.01, 1288.339],
    [0.119, 1327.543],
    [0.377, 1353.863],
    [0.79, 1414.509],
    [0.963, 1425.208],
    [1.006, 1421.384],
    [1.115, 1442.962],
    [1.572, 1464.35],
    [1.841, 1468.705],
    [2.047, 1447.894],
    [2.2, 1457.628],
  ],
  starts: { far: [1000, 1000, 400, 40, 0.7, 0.3, 0.03], near: [1300, 1500, 500, 75, 1, 0.4, 0.05] },
  certified: [
    1.28813968e3, 1.4910792535e3, 5.8323836877e2, 7.5416644291e1, 9.6629502864e-1, 3.9797285797e-1, 4.9727297349e-2,
  ],
  standardDeviations: [
    4.6647963344, 3.9571156086e1, 2.8698696102e1, 5.567537027, 3.1333340687e-2, 1.4984928198e-2, 6.5842344623e-3,
  ],
  residualSquares: 5.6427082397e3,
};

const MGH09: ReferenceProblem = {
  name: 'MGH09',
  model: ([b1, b2, b3, b4], x) => (b1! * (x * x + x * b2!)) / (x * x + x * b3! + b4!),
  data: [
    [4, 0.1957],
    [2, 0.1947],
    [1, 0.1735],
    [0.5, 0.16],
    [0.25, 0.0844],
    [0.167, 0.0627],
    [0.125, 0.0456],
    [0.1, 0.0342],
    [0.0833, 0.0323],
    [0.0714, 0.0235],
    [0.0625, 0.0246],
  ],
  starts: { far: [25, 39, 41.5, 39], near: [0.25, 0.39, 0.415, 0.39] },
  certified: [1.9280693458e-1, 1.9128232873e-1, 1.2305650693e-1, 1.3606233068e-1],
  standardDeviations: [1.1435312227e-2, 1.9633220911e-1, 8.0842031232e-2, 9.0025542308e-2],
  residualSquares: 3.0750560385e-4,
};

const ECKERLE4: ReferenceProblem = {
  name: 'Eckerle4',
  model: ([b1, b2, b3], x) => (b1! / b2!) * Math.exp(-0.5 * ((x - b3!) / b2!) ** 2),
  data: [
    [400, 0.0001575],
    [405, 0.0001699],
    [410, 0.000235],
    [415, 0.0003102],
    [420, 0.0004917],
    [425, 0.000871],
    [430, 0.0017418],
    [435, 0.00464],
    [436.5, 0.0065895],
    [438, 0.0097302],
    [439.5, 0.0149002],
    [441, 0.023731],
    [442.5, 0.0401683],
    [444, 0.0712559],
    [445.5, 0.1264458],
    [447, 0.2073413],
    [448.5, 0.2902366],
    [450, 0.3445623],
    [451.5, 0.3698049],
    [453, 0.3668534],
    [454.5, 0.3106727],
    [456, 0.2078154],
    [457.5, 0.1164354],
    [459, 0.0616764],
    [460.5, 0.03372],
    [462, 0.0194023],
    [463.5, 0.0117831],
    [465, 0.0074357],
    [470, 0.0022732],
    [475, 0.00088],
    [480, 0.0004579],
    [485, 0.0002345],
    [490, 0.0001586],
    [495, 0.0001143],
    [500, 0.000071],
  ],
  // From the far start, with the peak 49 nm off where the data are nearly nought, the cost leads away from the solution: the descent ends
  // in another minimum. Only the near one is asked for.
  starts: { near: [1.5, 5, 450] },
  certified: [1.5543827178, 4.0888321754, 4.5154121844e2],
  standardDeviations: [1.5408051163e-2, 4.6803020753e-2, 4.6800518816e-2],
  residualSquares: 1.4635887487e-3,
};

const RAT42: ReferenceProblem = {
  name: 'Rat42',
  model: ([b1, b2, b3], x) => b1! / (1 + Math.exp(b2! - b3! * x)),
  data: [
    [9, 8.93],
    [14, 10.8],
    [21, 18.59],
    [28, 22.33],
    [42, 39.35],
    [57, 56.11],
    [63, 61.73],
    [70, 64.62],
    [79, 67.08],
  ],
  starts: { far: [100, 1, 0.1], near: [75, 2.5, 0.07] },
  certified: [7.2462237576e1, 2.6180768402, 6.7359200066e-2],
  standardDeviations: [1.7340283401, 8.8295217536e-2, 3.4465663377e-3],
  residualSquares: 8.0565229338,
};

function fitted(problem: ReferenceProblem, start: readonly number[]) {
  const knowledge: Knowledge<'datum'> = {
    sources: problem.data.map(() => 'datum'),
    robust: () => false,
    residuals: (b) => problem.data.map(([x, y]) => problem.model(b, x) - y),
  };
  const steps = problem.certified.map((value) => 1e-6 * Math.abs(value));
  const outcome = adjust(knowledge, start, steps, 500);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

/**
 * The descent ends where the cost falls by less than a part in 10^9. The cost rises above its minimum by s² (distance / doubt)², and is
 * s² times the degrees of freedom (up to 30 here): parameters lie within about sqrt(30e-9) = 2e-4 of their own doubt, and what
 * follows from them within as many parts.
 */
const PARAMETER_TOLERANCE_SD = 2e-4;
const DEVIATION_TOLERANCE = 2e-4;
const SQUARES_TOLERANCE = 1e-8;

function expectCertified(problem: ReferenceProblem, start: readonly number[]): void {
  const outcome = fitted(problem, start);
  const squares = outcome.residuals.reduce((sum, r) => sum + r * r, 0);
  expect(Math.abs(squares / problem.residualSquares - 1)).toBeLessThan(SQUARES_TOLERANCE);
  problem.certified.forEach((value, i) => {
    const offSd = Math.abs(outcome.parameters[i]! - value) / problem.standardDeviations[i]!;
    expect(offSd).toBeLessThan(PARAMETER_TOLERANCE_SD);
  });
  // The certified standard deviations count the residual variance, which `adjust` takes as one.
  const residualSd = Math.sqrt(squares / (problem.data.length - problem.certified.length));
  problem.standardDeviations.forEach((value, i) => {
    const found = residualSd * Math.sqrt(outcome.covariance[i]![i]!);
    expect(Math.abs(found / value - 1)).toBeLessThan(DEVIATION_TOLERANCE);
  });
}

const PROBLEMS = [THURBER, MGH09, ECKERLE4, RAT42];

describe('adjust on problems of NIST', () => {
  it.each(PROBLEMS)('reaches the certified values of $name from the near start', (problem) => {
    expectCertified(problem, problem.starts.near);
  });

  it.each(
    PROBLEMS.flatMap((problem) => (problem.starts.far === undefined ? [] : [{ ...problem, far: problem.starts.far }])),
  )('reaches the certified values of $name from the far start', (problem) => {
    expectCertified(problem, problem.far);
  });
});
