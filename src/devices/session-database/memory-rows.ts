import type { Result } from '../../core/result.js';
import { succeed } from '../../core/result.js';
import type { PictureIndex, Row, Rows, RowsReading, RowsWriting, Table } from './rows.js';
import { TABLES } from './rows.js';

type Tables = Readonly<Record<Table, ReadonlyMap<string, Row>>>;

/** Tables that last as long as the page. */
export function createMemoryRows(): Rows {
  let tables = Object.fromEntries(TABLES.map((table) => [table, new Map<string, Row>()])) as unknown as Tables;
  let turn: Promise<unknown> = Promise.resolve();

  return {
    read: async (work) => succeed(await work(readingOf(() => tables))),
    write: <Value, Failure>(work: (rows: RowsWriting) => Promise<Result<Value, Failure>>) => {
      const outcome = turn.then(async () => {
        const changed = Object.fromEntries(TABLES.map((table) => [table, new Map(tables[table])])) as Record<
          Table,
          Map<string, Row>
        >;
        const done = await work({
          ...readingOf(() => changed),
          put: (table, row) => void changed[table].set(row.id, structuredClone(row)),
          remove: (table, id) => void changed[table].delete(id),
        });
        if (done.ok) tables = changed;
        return done;
      });
      // one that threw must not keep the next ones from their turn
      turn = outcome.catch(() => null);
      return outcome;
    },
    close: () => undefined,
  };
}

function readingOf(tables: () => Tables): RowsReading {
  const pictureIds = (isMeant: (picture: Row) => boolean): Promise<readonly string[]> =>
    Promise.resolve([...tables().pictures.values()].filter(isMeant).map(({ id }) => id));
  return {
    one: (table, id) => Promise.resolve(structuredClone(tables()[table].get(id))),
    all: (table) => Promise.resolve([...tables()[table].values()].map((row) => structuredClone(row))),
    ids: (table) => Promise.resolve([...tables()[table].keys()]),
    pictureIds: (index, value) => pictureIds((picture) => valueAt(picture, index) === value),
    pictureIdsBelow: (index, value) =>
      pictureIds((picture) => {
        const own = valueAt(picture, index);
        return typeof own === 'string' && own < value;
      }),
  };
}

function valueAt(picture: Row, index: PictureIndex): unknown {
  return (picture as Partial<Record<PictureIndex, unknown>>)[index];
}
