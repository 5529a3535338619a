import { expect, it } from 'vitest';
import { EMPTY_READER_SHEET } from '../core/record/reader-sheet.js';
import type { ReadingEntry } from '../core/record/reading-history.js';
import { historyLines } from './history-lines.js';

// Expected values follow from the definitions beside the code.

function entry(name: ReadingEntry['name'], text: string, at: string | null): ReadingEntry {
  return { name, text, by: 'A', at };
}

const first = {
  ...EMPTY_READER_SHEET,
  history: [
    entry('headWidth', '150', null),
    entry('pdFar', '62', '2026-11-25T10:00:00.000Z'),
    entry('pdFar', '62 62.5', '2026-11-25T10:01:00.000Z'),
    entry('pdFar', '63', '2026-11-25T10:05:00.000Z'),
    entry('monoPdR', '31', '2026-11-25T10:06:00.000Z'),
    entry('monoPdR', '', '2026-11-25T10:07:00.000Z'),
  ],
};
const second = { ...EMPTY_READER_SHEET, history: [entry('pdFar', '62.5', '2026-11-25T10:03:00.000Z')] };

it('puts the entries of both readers in the order of their time', () => {
  const lines = historyLines({ first, second }, 'first');
  expect(lines.map(({ reader, entry: { text } }) => `${reader} ${text}`)).toEqual([
    'first 150',
    'first 62',
    'first 62 62.5',
    'second 62.5',
    'first 63',
    'first 31',
    'first ',
  ]);
});

it('says which entries were replaced, and which were only added to', () => {
  const lines = historyLines({ first, second }, 'first');
  expect(lines.map(({ standing }) => standing)).toEqual([
    'stands',
    'continued',
    'replaced',
    'stands',
    'stands',
    'replaced',
    'stands',
  ]);
});

it('covers what the other reader found where the open one has read nothing yet', () => {
  const covered = historyLines({ first, second }, 'second').filter(({ isCovered }) => isCovered);
  expect(covered.map(({ entry: { name } }) => name)).toEqual(['headWidth', 'monoPdR', 'monoPdR']);
  expect(historyLines({ first, second }, 'first').some(({ isCovered }) => isCovered)).toBe(false);
});
