import { describe, expect, it, vi } from 'vitest';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import type { SessionRecord } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import { NEW_DESK, newSession } from './new-session.js';
import type { SessionKeeper } from './session-keeper.js';
import { createSessionKeeper } from './session-keeper.js';
import type { SessionStore, StoreFailure } from './session-store.js';

const AT = '2026-11-25T10:00:00.000Z';

const blank = newSession('a', AT, NEW_DESK);

function typed(pdFar: string, from: SessionRecord = blank): SessionRecord {
  return { ...from, sheet: filledSheet({ pdFar }) };
}

/** A store whose writes end when the test says so. */
function slowStore() {
  const asked: { readonly text: string; readonly id: string; readonly revision: number | null }[] = [];
  const ends: ((result: Result<number, StoreFailure>) => void)[] = [];
  const store = {
    save: (record: SessionRecord, revision: number | null) => {
      asked.push({ id: record.id, text: record.sheet.readers.first.readings.pdFar, revision });
      return new Promise<Result<number, StoreFailure>>((resolve) => ends.push(resolve));
    },
  } as Partial<SessionStore> as SessionStore;
  const end = async (result: Result<number, StoreFailure>): Promise<void> => {
    ends.shift()?.(result);
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { asked, end, store };
}

const onFault = vi.fn();

function keeperOf(store: SessionStore): SessionKeeper {
  return createSessionKeeper(store, { onWritten: () => undefined, onFault });
}

describe('a session keeper', () => {
  it('writes at once, then the newest state of what came meanwhile, under the revision it was given', async () => {
    const { asked, end, store } = slowStore();
    const keeper = keeperOf(store);
    keeper.open({ record: blank, revision: null });
    for (const text of ['6', '63', '63.', '63.5']) keeper.take(typed(text));
    expect(asked).toEqual([{ id: 'a', text: '6', revision: null }]);
    expect(keeper.keeping()).toEqual({ kind: 'keeping' });
    await end(succeed(1));
    expect(asked.at(-1)).toEqual({ id: 'a', text: '63.5', revision: 1 });
    await end(succeed(2));
    expect(asked).toHaveLength(2);
    expect(keeper.keeping()).toEqual({ kind: 'kept', revision: 2 });
    await keeper.settled();
  });

  it('keeps no blank session, but one that was kept before and is blank now', async () => {
    const { asked, end, store } = slowStore();
    const keeper = keeperOf(store);
    keeper.open({ record: blank, revision: null });
    keeper.take({ ...blank });
    expect(asked).toEqual([]);
    keeper.take(typed('6'));
    await end(succeed(1));
    keeper.take({ ...blank });
    expect(asked.at(-1)).toEqual({ id: 'a', text: '', revision: 1 });
  });

  it('writes the end of a session after the next one was opened, and says what is so of the open one', async () => {
    const { asked, end, store } = slowStore();
    const keeper = keeperOf(store);
    keeper.open({ record: blank, revision: null });
    keeper.take(typed('6'));
    keeper.take(typed('63'));
    const next = newSession('b', AT, NEW_DESK);
    keeper.open({ record: next, revision: null });
    expect(keeper.keeping()).toEqual({ kind: 'kept', revision: null });
    // a late effect of the screen before
    keeper.take(typed('64'));
    await end(succeed(1));
    await end(succeed(2));
    expect(asked.map(({ text }) => text)).toEqual(['6', '63']);
    keeper.take(typed('58', next));
    await end(succeed(1));
    expect(asked.at(-1)).toEqual({ id: 'b', text: '58', revision: null });
    expect(keeper.record()?.id).toBe('b');
  });

  it('says what could not be kept, and tries again with the next change or when asked', async () => {
    const { asked, end, store } = slowStore();
    const keeper = keeperOf(store);
    const changed = vi.fn();
    keeper.subscribe(changed);
    keeper.open({ record: blank, revision: null });
    keeper.take(typed('6'));
    keeper.take(typed('63'));
    await end(fail({ kind: 'storage-full' }));
    expect(keeper.keeping()).toEqual({ kind: 'not-kept', failure: { kind: 'storage-full' } });
    expect(keeper.record()?.sheet.readers.first.readings.pdFar).toBe('63');
    keeper.tryAgain();
    await end(fail({ kind: 'storage-full' }));
    keeper.take(typed('63.5'));
    await end(succeed(1));
    expect(asked.map(({ text }) => text)).toEqual(['6', '63', '63.5']);
    expect(keeper.keeping().kind).toBe('kept');
    expect(changed).toHaveBeenCalled();
  });

  it('does not write over what another window wrote', async () => {
    const { asked, end, store } = slowStore();
    const keeper = keeperOf(store);
    keeper.open({ record: typed('61'), revision: 4 });
    keeper.take(typed('62'));
    await end(fail({ kind: 'changed-elsewhere', id: 'a' }));
    keeper.take(typed('63'));
    keeper.tryAgain();
    expect(asked).toHaveLength(1);
    expect(keeper.keeping().kind).toBe('not-kept');
    expect(keeper.record()?.sheet.readers.first.readings.pdFar).toBe('63');
  });

  it('goes on where the store broke down once, and passes the reason on', async () => {
    const save = vi.fn<SessionStore['save']>().mockRejectedValueOnce(new Error('a bug')).mockResolvedValue(succeed(1));
    const keeper = keeperOf({ save } as Partial<SessionStore> as SessionStore);
    keeper.open({ record: blank, revision: null });
    keeper.take(typed('6'));
    await keeper.settled();
    expect(keeper.keeping()).toEqual({ kind: 'not-kept', failure: { kind: 'storage-broken' } });
    expect(onFault).toHaveBeenCalledWith(new Error('a bug'));
    keeper.take(typed('63'));
    await keeper.settled();
    expect(keeper.keeping()).toEqual({ kind: 'kept', revision: 1 });
  });
});
