export const USAGE = 'npm run accuracy -- DIR [--profile | --both] [--json FILE] [--plot FILE.svg]';

/** What the accuracy command was asked for. */
export interface Asked {
  readonly folder: string;
  /** which ways to measure, in order: files are written from the first */
  readonly runs: readonly ('no-profile' | 'profile')[];
  readonly jsonFile: string | null;
  /** beside the file of `--json` where none is named */
  readonly plotFile: string | null;
}

/** Null where the words are not as in `USAGE`. */
export function parseArguments(words: readonly string[]): Asked | null {
  let folder: string | null = null;
  let switches: readonly string[] = [];
  const files: { '--json': string | null; '--plot': string | null } = { '--json': null, '--plot': null };
  for (let index = 0; index < words.length; index++) {
    const word = words[index] ?? '';
    if (word === '--profile' || word === '--both') switches = [...switches, word];
    else if (word === '--json' || word === '--plot') {
      index += 1;
      const file = words[index];
      if (file === undefined || file.startsWith('--')) return null;
      files[word] = file;
    } else if (word.startsWith('--') || folder !== null) return null;
    else folder = word;
  }
  if (folder === null) return null;
  const jsonFile = files['--json'];
  const beside = jsonFile === null ? null : `${jsonFile.replace(/\.json$/, '')}.svg`;
  return {
    folder,
    runs: switches.includes('--both')
      ? ['no-profile', 'profile']
      : [switches.includes('--profile') ? 'profile' : 'no-profile'],
    jsonFile,
    plotFile: files['--plot'] ?? beside,
  };
}

/** The picture of the second way to measure lies beside that of the first. */
export function plotFileOf(plotFile: string, run: 'no-profile' | 'profile', isFirst: boolean): string {
  return isFirst ? plotFile : `${plotFile.replace(/\.svg$/, '')}-${run}.svg`;
}
