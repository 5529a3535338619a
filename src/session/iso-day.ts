/** The day of the calendar here, ISO 8601, such as `2026-11-25`. */
export function isoDay(moment: Date): string {
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}
