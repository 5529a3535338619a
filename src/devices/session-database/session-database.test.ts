import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sampleSession } from '../../../tests/support/sample-sessions.js';
import { summaryOf } from '../../core/record/session-record.js';
import type { Result } from '../../core/result.js';
import { createSealing } from '../sealing.js';
import type { SessionDatabase, SessionDatabaseOptions } from './session-database.js';
import { createMemoryDatabase, openSessionDatabase } from './session-database.js';

let count = 0;
const options: SessionDatabaseOptions = {
  sealing: createSealing({ scryptWorkFactor: 4 }),
  keptSheet: null,
  newId: () => `made-${(count += 1)}`,
  now: () => new Date('2026-11-25T10:00:00Z'),
};

const opened: SessionDatabase[] = [];

async function open(changes: Partial<SessionDatabaseOptions> = {}): Promise<SessionDatabase> {
  const database = valueOf(await openSessionDatabase({ ...options, ...changes }));
  opened.push(database);
  return database;
}

function valueOf<Value>(result: Result<Value, unknown>): Value {
  if (!result.ok) throw new Error(`expected a value, got ${JSON.stringify(result.failure)}`);
  return result.value;
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

afterEach(() => {
  for (const database of opened.splice(0)) database.close();
});

describe.each([
  ['in the browser', () => open()],
  ['in memory', () => createMemoryDatabase(options)],
])('a store of sessions %s', (_where, make) => {
  it('gives back what it was given', async () => {
    const { sessions } = await make();
    const record = sampleSession(1);
    expect(await sessions.save(record, null)).toEqual({ ok: true, value: 1 });
    expect(await sessions.load(record.id)).toEqual({ ok: true, value: { record, revision: 1 } });
    expect(valueOf(await sessions.summaries())).toEqual({ summaries: [summaryOf(record)], unreadable: 0 });
  });
});
