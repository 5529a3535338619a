/** The nearest multiple of `step`, halves up; both in the same unit. */
export function roundToStep(value: number, step: number): number {
  return Math.round(value / step) * step;
}
