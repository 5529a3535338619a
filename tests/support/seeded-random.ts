/** A stream of pseudo-random numbers that a seed decides. */
export interface SeededRandom {
  /** evenly from 0 up to, not including, 1 */
  readonly uniform: () => number;
  /** from the normal distribution */
  readonly normal: (mean: number, standardDeviation: number) => number;
}

/** Mulberry32 (T. Ettinger, public domain; from memory) with the normal deviates of Box and Muller 1958. */
export function seededRandom(seed: number): SeededRandom {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const normal = (mean: number, standardDeviation: number): number =>
    mean + standardDeviation * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
