// What was typed into a chassis and is not in it yet, beside it: one piece for each, the last one wins.
import { Connection, databaseName } from './database.ts';

export interface TypedStore {
  /** @param typed plain data; null where nothing waits any more */
  readonly keepTyped: (id: string, typed: unknown) => Promise<void>;
  /** Null where nothing waits. What comes back was written by some version of this program. */
  readonly typed: (id: string) => Promise<unknown>;
}

/** Rejects with a StoreFailure in plain words.
 *  @param name of the database; tests use their own */
export const createTypedStore = (name = databaseName): TypedStore => {
  const connection = new Connection(name);
  return {
    keepTyped: (id, typed) =>
      connection.attempt(async (database) => {
        // Strict, as a save is: on the disk when this ends.
        const transaction = database.transaction('typed', 'readwrite', { durability: 'strict' });
        if (typed === null) await transaction.store.delete(id);
        else await transaction.store.put(typed, id);
        await transaction.done;
      }),
    typed: (id) => connection.attempt(async (database) => (await database.get('typed', id)) ?? null)
  };
};
