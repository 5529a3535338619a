import { completeEnglish, type Words } from '../../src/ui/language.js';

const OPEN = '\u27e6';
const CLOSE = '\u27e7';

/** English with every text in brackets, also what its functions make: what stands without them on the screen is no word of a language. */
export async function bracketedEnglish(): Promise<Words> {
  return wrapped(await completeEnglish()) as Words;
}

function wrapped(value: unknown): unknown {
  if (typeof value === 'string') return value === '' ? '' : OPEN + value + CLOSE;
  if (typeof value === 'function') return (...facts: unknown[]) => wrapped(Reflect.apply(value, undefined, facts));
  if (Array.isArray(value)) return value.map(wrapped);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, wrapped(part)]));
}

/** What is seen or heard of a piece of markup and is no word of the language: what stands outside of all brackets. */
export function strangeTexts(markup: string): readonly string[] {
  const attributes = [...markup.matchAll(SPOKEN)].map(([, text]) => text ?? '');
  // Brackets may close behind a tag that they were opened before: a sign within a sentence has tags of its own.
  const seen = outsideBrackets(markup.replaceAll(/<[^>]*>/g, '\n'));
  return [...seen.split('\n'), ...attributes.map(outsideBrackets)]
    .map((text) => text.trim())
    .filter((text) => text !== '');
}

const SPOKEN =
  /\s(?:aria-label|aria-valuetext|aria-description|aria-roledescription|title|placeholder|alt|label)="([^"]*)"/g;

function outsideBrackets(text: string): string {
  let depth = 0;
  let outside = '';
  for (const letter of text) {
    if (letter === OPEN) depth += 1;
    else if (letter === CLOSE) depth -= 1;
    else if (depth === 0 || letter === '\n') outside += letter;
  }
  return outside;
}
