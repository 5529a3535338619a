/**
 * Derivatives of each output by central differences: a row for each output, a column for each parameter.
 *
 * @param steps of each parameter, in its unit: small against its doubt, large against rounding
 * @param columns derive by the first so many parameters only; the columns of the others stay zero
 */
export function derivatives(
  outputs: (parameters: readonly number[]) => readonly number[],
  at: readonly number[],
  steps: readonly number[],
  columns = at.length,
): Float64Array[] {
  const shifted = [...at];
  let rows: Float64Array[] = [];
  for (let i = 0; i < columns; i++) {
    const value = at[i]!;
    const step = steps[i]!;
    shifted[i] = value + step;
    const ahead = outputs(shifted);
    shifted[i] = value - step;
    const behind = outputs(shifted);
    shifted[i] = value;
    if (i === 0) rows = ahead.map(() => new Float64Array(at.length));
    rows.forEach((row, k) => (row[i] = (ahead[k]! - behind[k]!) / (2 * step)));
  }
  return rows;
}
