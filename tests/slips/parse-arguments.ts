export const USAGE = [
  'npm run slips -- [--json FILE] FILE.csv                                       what does not fit in each record of FILE.csv',
  'npm run slips -- [--seed N] [--count N] [--workers N] [--json FILE] [--write FILE.csv]   how well slips are found in simulated fittings',
].join('\n');

/** What the command was asked for. */
export type Asked =
  | {
      readonly kind: 'records';
      readonly file: string;
      readonly jsonFile: string | null;
      /** null: as many as there are cores */
      readonly workers: number | null;
    }
  | {
      readonly kind: 'simulation';
      readonly seed: number;
      readonly count: number;
      readonly jsonFile: string | null;
      /** where the simulated sheets are written as a table of records */
      readonly recordsFile: string | null;
      readonly workers: number | null;
    };

/** The number of simulated fittings. */
export const DEFAULT_COUNT = 20_000;
export const DEFAULT_SEED = 1;

/** Chosen: so that no two fittings of any two seeds are drawn from the same stream. */
const LARGEST_SEED = 99_999;
const MOST_FITTINGS = 500_000;

const FILE_SWITCHES = ['--json', '--write'] as const;
const NUMBER_SWITCHES = ['--seed', '--count', '--workers'] as const;

/** Null where the words are not as in `USAGE`. A lone `--` parts words as elsewhere and means nothing more. */
export function parseArguments(words: readonly string[]): Asked | null {
  const files = new Map<string, string>();
  const numbers = new Map<string, number>();
  let file: string | null = null;
  for (let index = 0; index < words.length; index += 1) {
    const word = words[index] ?? '';
    if (word === '--') continue;
    if (!word.startsWith('--')) {
      if (file !== null) return null;
      file = word;
      continue;
    }
    index += 1;
    const value = words[index];
    if (value === undefined || value.startsWith('--')) return null;
    if (FILE_SWITCHES.some((one) => one === word)) files.set(word, value);
    else if (NUMBER_SWITCHES.some((one) => one === word) && /^\d{1,9}$/.test(value)) numbers.set(word, Number(value));
    else return null;
  }
  const jsonFile = files.get('--json') ?? null;
  const workers = numbers.get('--workers') ?? null;
  const count = numbers.get('--count') ?? DEFAULT_COUNT;
  const seed = numbers.get('--seed') ?? DEFAULT_SEED;
  if (workers === 0 || count === 0 || count > MOST_FITTINGS || seed > LARGEST_SEED) return null;
  if (file === null) {
    return { kind: 'simulation', seed, count, jsonFile, recordsFile: files.get('--write') ?? null, workers };
  }
  if (files.has('--write') || numbers.has('--seed') || numbers.has('--count')) return null;
  return { kind: 'records', file, jsonFile, workers };
}
