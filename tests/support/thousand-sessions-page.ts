import { parseSessionFile, writeSessionFile } from '../../src/core/record/session-file.js';
import type { SessionRecord } from '../../src/core/record/session-record.js';
import { createSealing } from '../../src/devices/sealing.js';
import type { OpenedSessionDatabase } from '../../src/devices/session-database/session-database.js';
import { openSessionDatabase } from '../../src/devices/session-database/session-database.js';
import { sampleSessions } from './sample-sessions.js';

// Runs in a page of a real browser: how long a store takes for a thousand sessions.

/** In milliseconds. */
export interface ThousandSessionsTimes {
  readonly list: number;
  readonly export: number;
  readonly import: number;
  readonly lock: number;
  readonly listLocked: number;
  readonly fileBytes: number;
  /** sessions that came back otherwise than they went in */
  readonly unequal: number;
}

async function measureThousandSessions(): Promise<ThousandSessionsTimes> {
  const sessions = sampleSessions(1000);
  const database = await openStore();
  expectDone(await database.sessions.bring(sessions));

  const [list] = await timed(() => database.sessions.summaries());
  const [exporting, text] = await timed(async () => {
    const all = expectDone(await database.sessions.all());
    return writeSessionFile(all.records, { writtenAt: '2026-11-25T10:00:00Z' });
  });
  expectDone(await database.sessions.remove(sessions.map(({ id }) => id)));
  const [importing] = await timed(async () => {
    const read = expectDone(parseSessionFile(text, { id: 'x', at: '2026-11-25T10:00:00Z' }));
    expectDone(await database.sessions.bring(read));
  });
  const unequal = unequalTo(sessions, expectDone(await database.sessions.all()).records);

  const [lock] = await timed(async () => expectDone(await database.lock.set('correct horse battery staple')));
  const [listLocked] = await timed(async () => expectDone(await database.sessions.summaries()));
  database.close();
  const fileBytes = new TextEncoder().encode(text).length;
  return { list, export: exporting, import: importing, lock, listLocked, fileBytes, unequal };
}

async function openStore(): Promise<OpenedSessionDatabase> {
  return expectDone(
    await openSessionDatabase({
      // what scrypt takes on purpose is not measured
      sealing: createSealing({ scryptWorkFactor: 10 }),
      keptSheet: null,
      newId: () => crypto.randomUUID(),
      now: () => new Date(),
    }),
  );
}

function unequalTo(sessions: readonly SessionRecord[], found: readonly SessionRecord[]): number {
  const byId = new Map(found.map((one) => [one.id, JSON.stringify(one)]));
  return sessions.filter((one) => byId.get(one.id) !== JSON.stringify(one)).length + found.length - sessions.length;
}

async function timed<Value>(work: () => Promise<Value>): Promise<readonly [ms: number, value: Value]> {
  const startedMs = performance.now();
  const value = await work();
  return [performance.now() - startedMs, value];
}

function expectDone<Value>(
  result: { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly failure: unknown },
): Value {
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value;
}

Object.assign(window, { measureThousandSessions });
