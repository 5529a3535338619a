import { completeEnglish, ENGLISH_TAG, type Words } from './language.js';

/** A language that the screen can speak. */
export interface AvailableLanguage {
  /** BCP-47 */
  readonly tag: string;
  /** as its speakers call it, such as `Deutsch` */
  readonly name: string;
  /** Loads its words; rejects where its file cannot be fetched. */
  readonly load: () => Promise<Words>;
}

/** One file is one language: its name is the BCP-47 tag, its `words` all that is said. Each is loaded when it is first spoken. */
const FILES = import.meta.glob<Words>(['./languages/*.ts', '!./languages/en.ts', '!./languages/*.test.ts'], {
  import: 'words',
});

/** English, and every language that has a file in `languages`, in the order of their names. */
export const AVAILABLE_LANGUAGES: readonly AvailableLanguage[] = [
  { tag: ENGLISH_TAG, name: ownNameOf('en'), load: completeEnglish },
  ...Object.entries(FILES).map(([path, load]): AvailableLanguage => {
    const tag = path.replace(/^.*\/|\.ts$/g, '');
    return { tag, name: ownNameOf(tag), load };
  }),
].toSorted((one, other) => one.name.localeCompare(other.name));

/** The first of the wanted languages that is there, whatever its country; English where none is. */
export function firstAvailable(wanted: readonly string[]): string {
  for (const tag of wanted) {
    const found =
      AVAILABLE_LANGUAGES.find((one) => one.tag === tag) ??
      AVAILABLE_LANGUAGES.find((one) => languageOf(one.tag) === languageOf(tag));
    if (found !== undefined) return found.tag;
  }
  return ENGLISH_TAG;
}

/** All words of an available language; null where it is not there, or its file cannot be fetched. */
export async function loadWords(tag: string): Promise<Words | null> {
  try {
    return (await AVAILABLE_LANGUAGES.find((one) => one.tag === tag)?.load()) ?? null;
  } catch {
    return null;
  }
}

/** The tag without country and script. */
function languageOf(tag: string): string {
  return tag.split('-', 1).join('').toLowerCase();
}

/** The browser knows each language's own name; it begins like a name. */
function ownNameOf(tag: string): string {
  const name = new Intl.DisplayNames([tag], { type: 'language' }).of(tag) ?? tag;
  return name.charAt(0).toLocaleUpperCase(tag) + name.slice(1);
}
