// What is kept beside a chassis and can be made again: its small preview for the list, the last layout of its
// drawing, the file that it is saved back to. Losing it costs time, never work.
import { Connection, databaseName } from './database.ts';

export interface BesideStore {
  readonly keepPreview: (id: string, preview: unknown) => Promise<void>;
  /** By the id of the document. What comes back was written by some version of this program. */
  readonly previews: () => Promise<Map<string, unknown>>;
  /** @param key what the layout was made from; another key means that it does not fit any more */
  readonly keepLayout: (id: string, key: string, layout: unknown) => Promise<void>;
  /** Null where no layout is kept, or one that was made from something else. */
  readonly layout: (id: string, key: string) => Promise<unknown>;
  /** @param handle of a file, as the browser gave it */
  readonly keepPlace: (id: string, handle: unknown) => Promise<void>;
  /** Null where no file is known. */
  readonly place: (id: string) => Promise<unknown>;
}

/** Rejects with a StoreFailure in plain words.
 *  @param name of the database; tests use their own */
export const createBesideStore = (name = databaseName): BesideStore => {
  const connection = new Connection(name);
  return {
    keepPreview: (id, preview) =>
      connection.attempt(async (database) => {
        await database.put('previews', preview, id);
      }),
    previews: () =>
      connection.attempt(async (database) => {
        const transaction = database.transaction('previews');
        const [keys, values] = await Promise.all([
          transaction.store.getAllKeys(),
          transaction.store.getAll()
        ]);
        return new Map(keys.map((key, index) => [key, values[index]]));
      }),
    keepLayout: (id, key, layout) =>
      connection.attempt(async (database) => {
        await database.put('layouts', { key, layout }, id);
      }),
    layout: (id, key) =>
      connection.attempt(async (database) => {
        const kept = await database.get('layouts', id);
        return kept?.key === key ? kept.layout : null;
      }),
    keepPlace: (id, handle) =>
      connection.attempt(async (database) => {
        await database.put('places', handle, id);
      }),
    place: (id) =>
      connection.attempt(async (database) => (await database.get('places', id)) ?? null)
  };
};
