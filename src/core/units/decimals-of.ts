const MOST_DECIMALS = 3;

/** How many decimals a number needs to be written out, such as 2 for 0.25; at most 3. */
export function decimalsOf(value: number): number {
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals += 1) {
    const scaled = value * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-6) return decimals;
  }
  return MOST_DECIMALS;
}
