import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import type { ReadingName } from '../../src/core/catalogue/measurement.js';
import { READING_NAMES } from '../../src/core/catalogue/measurement.js';
import type { SeededRandom } from '../support/seeded-random.js';
import { SheetPage } from '../support/sheet-page.js';
import { startKillableBrowser } from './killed-browser.js';

/** What stands at each place of the first reader, and how often the session was written. */
interface StoredState {
  readonly id: string;
  readonly revision: number;
  readonly readings: Readonly<Record<string, string>>;
}

/** What became of one kill. */
export interface Kill {
  readonly number: number;
  /** from the first keystroke to the kill */
  readonly afterMs: number;
  /** keystrokes that had been made */
  readonly keystrokes: number;
  /** times that the page had said that all is saved */
  readonly acknowledgements: number;
  /** keystrokes at the end that were not said to be saved */
  readonly inFlight: number;
  /** keystrokes at the end that are not there after the new start */
  readonly lost: number;
  /** what had been said to be saved and is not there; empty is the only right answer */
  readonly broken: readonly string[];
}

export interface KillingOptions {
  /** of the built app, with a slash at its end */
  readonly address: string;
  readonly count: number;
  readonly random: SeededRandom;
  readonly onKill?: (kill: Kill) => void;
}

/** Chosen: long enough for some dozens of keystrokes, short enough to come to fifty kills. */
const LONGEST_MS = 2500;

/** Chosen: as quick as a person types on a block of digits, and quicker. */
const LONGEST_BETWEEN_KEYS_MS = 60;

/** Chosen: fields take 200 letters. */
const LONGEST_TEXT = 150;

/**
 * Types into the app and kills the browser, over and over with the same profile, and looks each time whether all is there that
 * had been said to be saved. The page says so by `glabella-saved` at its window, with id and revision of the session.
 */
export async function killWhileTyping({ address, count, random, onKill }: KillingOptions): Promise<readonly Kill[]> {
  const folder = mkdtempSync(join(tmpdir(), 'glabella-kills-'));
  const kills: Kill[] = [];
  /** what was there at the last look, or was said to be saved since */
  let promised: StoredState | null = null;
  let typed: { readonly name: ReadingName; readonly text: string } | null = null;
  let ongoing: Omit<Kill, 'lost' | 'broken'> | null = null;
  try {
    for (let number = 0; number <= count; number += 1) {
      const { context, page, kill } = await startKillableBrowser(folder);
      try {
        const acknowledged: StoredState[] = [];
        await context.exposeBinding('glabellaKept', (_source, state: StoredState) => void acknowledged.push(state));
        await page.addInitScript(listenForSaves);
        await page.goto(address);
        const sheet = new SheetPage(page);
        await sheet.field('pdFar').waitFor();
        const found: readonly StoredState[] = await page.evaluate(storedStates);
        if (ongoing !== null) {
          const shown: string = typed === null ? '' : await sheet.field(typed.name).inputValue();
          const done: Kill = {
            ...ongoing,
            lost: typed === null ? 0 : typed.text.length - shown.length,
            broken: brokenPromises(promised, typed, { found, shown }),
          };
          kills.push(done);
          onKill?.(done);
        }
        if (number === count) break;
        const last: StoredState | undefined = found.find(({ id }) => id === promised?.id) ?? found[0];
        const name = placeWithRoom(last, random);
        const before = last?.readings[name] ?? '';
        const afterMs = random.uniform() * LONGEST_MS;
        const text = await typeUntilKilled(page, { name, before, afterMs, random, kill });
        typed = { name, text };
        promised = acknowledged.at(-1) ?? last ?? null;
        const saved = promised?.readings[name] ?? '';
        ongoing = {
          number: number + 1,
          afterMs: Math.round(afterMs),
          keystrokes: text.length - before.length,
          acknowledgements: acknowledged.length,
          inFlight: text.length - saved.length,
        };
      } finally {
        await kill();
      }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
  return kills;
}

function placeWithRoom(state: StoredState | undefined, random: SeededRandom): ReadingName {
  const free = READING_NAMES.filter((name) => (state?.readings[name] ?? '').length < LONGEST_TEXT);
  return free[Math.floor(random.uniform() * free.length)] ?? 'pdFar';
}

interface Typing {
  readonly name: ReadingName;
  readonly before: string;
  readonly afterMs: number;
  readonly random: SeededRandom;
  readonly kill: () => Promise<void>;
}

/** Types digits behind what stands there until the browser is killed; gives all that had been typed then. */
async function typeUntilKilled(page: Page, { name, before, afterMs, random, kill }: Typing): Promise<string> {
  const field = new SheetPage(page).field(name);
  await field.focus();
  await field.press('End');
  let text = before;
  let isOver = false;
  const typing = (async () => {
    while (!isOver && text.length < LONGEST_TEXT + 50) {
      const digit = String(Math.floor(random.uniform() * 10));
      // counted before it is pressed: one that was down when the browser died may or may not have come in
      text += digit;
      await page.keyboard.press(digit);
      await pause(random.uniform() * LONGEST_BETWEEN_KEYS_MS);
    }
  })().catch((error: unknown) => {
    if (!isOver) throw error;
  });
  await pause(afterMs);
  isOver = true;
  await kill();
  await typing;
  return text;
}

interface Outcome {
  readonly found: readonly StoredState[];
  /** what the screen shows at the place where was typed */
  readonly shown: string;
}

function brokenPromises(
  promised: StoredState | null,
  typed: { readonly name: ReadingName; readonly text: string } | null,
  { found, shown }: Outcome,
): readonly string[] {
  if (promised === null) return [];
  const { id, revision, readings } = promised;
  const state = found.find((one) => one.id === id);
  if (state === undefined) return ['the session is gone'];
  const broken: string[] = [];
  if (state.revision < revision) broken.push(`revision ${state.revision} in place of ${revision}`);
  for (const [name, text] of Object.entries(readings)) {
    // digits were only added
    if (state.readings[name]?.startsWith(text) !== true) broken.push(`${name}: ${state.readings[name] ?? 'nothing'}`);
  }
  if (typed !== null) {
    const { name } = typed;
    const stored = state.readings[name] ?? '';
    if (shown !== stored) broken.push(`the screen shows ${shown} where ${stored} is stored`);
    if (!typed.text.startsWith(stored)) broken.push(`${stored} was never typed`);
  }
  return broken;
}

/** Runs in the page: reports what stands in the database whenever the app says that it saved. */
function listenForSaves(): void {
  const page = window as unknown as { glabellaKept: (state: StoredState) => Promise<void> };
  window.addEventListener('glabella-saved', (event) => {
    const { id, revision } = (event as CustomEvent<{ id: string; revision: number }>).detail;
    const opening = indexedDB.open('glabella');
    opening.addEventListener('success', () => {
      const database = opening.result;
      const reading = database.transaction('sessions').objectStore('sessions').get(id);
      reading.addEventListener('success', () => {
        database.close();
        const row = reading.result as StoredRow;
        // what was written since is still to be promised
        if (row.revision !== revision) return;
        const { readings } = (JSON.parse(row.content.json) as StoredRecord).sheet.readers.first;
        void page.glabellaKept({ id, revision, readings });
      });
    });
  });
}

/** A session as it stands in the database; see the store of sessions. */
interface StoredRow {
  readonly id: string;
  readonly revision: number;
  readonly content: { readonly json: string };
}

/** What is of interest in that JSON. */
interface StoredRecord {
  readonly sheet: { readonly readers: { readonly first: { readonly readings: Readonly<Record<string, string>> } } };
}

/** Runs in the page: all that stands in the database. */
function storedStates(): Promise<StoredState[]> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('glabella');
    opening.addEventListener('error', () => reject(new Error('The database cannot be opened.')));
    opening.addEventListener('success', () => {
      const database = opening.result;
      const reading = database.transaction('sessions').objectStore('sessions').getAll();
      reading.addEventListener('success', () => {
        database.close();
        resolve(
          (reading.result as StoredRow[]).map(({ id, revision, content }) => ({
            id,
            revision,
            readings: (JSON.parse(content.json) as StoredRecord).sheet.readers.first.readings,
          })),
        );
      });
    });
  });
}
