import { describe, expect, it } from 'vitest';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { words } from './language.js';
import type { Stroke } from './shortcuts.js';
import { isPressed, isSign, SHORTCUT_GROUPS, SHORTCUT_IDS, SHORTCUTS } from './shortcuts.js';

function pressed(stroke: Stroke, more: Partial<Parameters<typeof isPressed>[1]> = {}): Parameters<typeof isPressed>[1] {
  return {
    key: stroke.key,
    ctrlKey: stroke.command === true,
    metaKey: false,
    altKey: false,
    shiftKey: stroke.shift === true,
    ...more,
  };
}

const ALL: readonly (readonly [(typeof SHORTCUT_IDS)[number], Stroke])[] = SHORTCUT_IDS.flatMap((id) =>
  SHORTCUTS[id].strokes.map((stroke) => [id, stroke] as const),
);

describe('every shortcut', () => {
  it('is pressed by its own strokes and by no others of its group', () => {
    for (const [id, stroke] of ALL) {
      const those = SHORTCUT_IDS.filter(
        (other) => SHORTCUTS[other].group === SHORTCUTS[id].group && isPressed(other, pressed(stroke)),
      );
      // from the search into the list, and on in the list, are one key at two places
      expect(those.filter((other) => other !== 'intoSessions' || id === 'intoSessions')).toContain(id);
      expect(those.length).toBeLessThanOrEqual(
        stroke.key === 'arrowdown' && SHORTCUTS[id].group === 'sessions' ? 2 : 1,
      );
    }
  });

  it('is not pressed with Alt, which belongs to menus and screen readers, nor while a character is composed', () => {
    for (const [id, stroke] of ALL) {
      expect(isPressed(id, pressed(stroke, { altKey: true }))).toBe(false);
      expect(isPressed(id, pressed(stroke, { isComposing: true }))).toBe(false);
      expect(isPressed(id, pressed(stroke, { nativeEvent: { isComposing: true } }))).toBe(false);
    }
  });

  it('has a name, and its keys have names', () => {
    for (const [id, { key }] of ALL) {
      expect(words.shortcut.does[id]).not.toBe('');
      if (key.length > 1 && !/^f\d+$/.test(key)) expect(Object.keys(words.shortcut.keys)).toContain(key);
    }
    for (const group of SHORTCUT_GROUPS) expect(words.shortcut.groups[group]).not.toBe('');
  });

  it('is asked for somewhere on the screen', () => {
    const folder = fileURLToPath(new URL('.', import.meta.url));
    const screens = readdirSync(folder)
      .filter(
        (file) => /\.tsx?$/.test(file) && !/(\.test|-words|^shortcuts)\.tsx?$/.test(file) && file !== 'shortcuts.ts',
      )
      .map((file) => readFileSync(join(folder, file), 'utf8'))
      .join('\n');
    for (const id of SHORTCUT_IDS) expect(screens, id).toMatch(new RegExp(`'${id}'`));
  });
});

it('takes Command for Ctrl, and a sign however it is typed', () => {
  expect(isPressed('undo', pressed({ key: 'z' }, { metaKey: true }))).toBe(true);
  expect(isPressed('undo', pressed({ key: 'Z' }, { ctrlKey: true, shiftKey: true }))).toBe(false);
  expect(isPressed('redo', pressed({ key: 'Z' }, { ctrlKey: true, shiftKey: true }))).toBe(true);
  expect(isPressed('list', pressed({ key: '?' }, { shiftKey: true }))).toBe(true);
  expect(isPressed('search', pressed({ key: '/' }, { shiftKey: true }))).toBe(true);
  expect(isPressed('search', pressed({ key: '/' }, { ctrlKey: true }))).toBe(false);
});

it('leaves no single character but those that can be switched off', () => {
  expect(ALL.filter(([, stroke]) => isSign(stroke)).map(([id]) => id)).toEqual(['list', 'search']);
});
