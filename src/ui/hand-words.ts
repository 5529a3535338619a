/** What stands beside a hand reading. */
export const handWords = {
  another: (name: string): string => `Another reading of ${name}`,
  tried: (name: string): string => `${name}: the size typed last`,
  verdicts: { loose: 'loose', fits: 'fits', tight: 'tight' },
  /** scale readings, and what is added to each; empty where nothing is */
  several: (scales: readonly string[], steps: string): string =>
    `${scales.join(', ')}${steps === '' ? '' : `, each ${steps}`}`,
  repeats: (several: string, mean: string, range: string, deviation: string): string =>
    `${several}: mean ${mean}, range ${range}, sd ${deviation}`,
  farOff: (values: readonly string[]): string =>
    `${values.join(' and ')} ${values.length === 1 ? 'stands' : 'stand'} far from the others: read again`,
  scattered: 'further apart than one reader usually is: read once more',
  trials: (value: string, low: string, high: string): string => `${value}, between ${low} and ${high}`,
  untried: (low: string, high: string, size: string): string => `between ${low} and ${high}, ${size} was not tried`,
  earlier: 'earlier entry',
  andEarlier: (count: number): string => `and ${count} earlier`,
  earlierBy: (by: string, when: string): string => (by === '' ? when : `${by}, ${when}`),
  otherRead: (reader: string, value: string): string => `${reader}: ${value}`,
  differBy: (difference: string): string => `readers differ by ${difference}`,
  confirmed: (by: string): string => (by === '' ? 'confirmed' : `confirmed by ${by}`),
};
