// Keeps chassis in the browser between visits, as the text that a file would have, so that a later version
// of this program opens what an earlier one kept. Everything rejects with a StoreFailure in plain words.
import {
  formatProblem,
  hashOfText,
  openDocument,
  saveDocument,
  type ChassisDocument
} from '#document/index.ts';
import { Connection, databaseName, type KeptEntry, type StoreSchema } from './database.ts';
import { StoreFailure, toStoreFailure } from './store-failure.ts';
import { revisionPauseMs, revisionsToDrop } from './thin-revisions.ts';
import type { IDBPDatabase, IDBPTransaction } from 'idb';

export interface KeptRevision {
  readonly savedAt: number;
}

export interface BrowserStore {
  /** Keeps the document in place of what was kept under its id; now and then the former text is put
   *  aside as a revision. Rejects as "changed elsewhere" where another window kept something since
   *  this one last loaded or saved the document.
   *  @param time milliseconds since 1970 */
  readonly save: (document: ChassisDocument, time: number) => Promise<void>;
  /** Null where nothing is kept under the id. Rejects as "unreadable" where the text does not open. */
  readonly load: (id: string) => Promise<ChassisDocument | null>;
  /** What is kept, the latest first. */
  readonly list: () => Promise<KeptEntry[]>;
  /** Forgets a document and its revisions. */
  readonly remove: (id: string) => Promise<void>;
  /** Earlier states of a document, the latest first. */
  readonly revisions: (id: string) => Promise<KeptRevision[]>;
  readonly loadRevision: (id: string, savedAt: number) => Promise<ChassisDocument | null>;
  /** Ends the connection; the next call makes another. */
  readonly close: () => void;
}

const revisionsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, -Infinity], [id, Infinity]);

const openText = (text: string, title: string): ChassisDocument => {
  const opened = openDocument(text, title);
  if (opened.ok) return opened.document;
  const [first] = opened.problems;
  throw new StoreFailure(
    'unreadable',
    `what the browser kept does not open: ${first ? formatProblem(first) : title}`
  );
};

type Entry = StoreSchema['entries']['value'];
type WriteTransaction = IDBPTransaction<
  StoreSchema,
  ['entries', 'texts', 'revisions'],
  'readwrite'
>;

/** Runs `work` so that either all of it is kept or nothing is. */
const allOrNothing = async (
  database: IDBPDatabase<StoreSchema>,
  work: (transaction: WriteTransaction) => Promise<void>
): Promise<void> => {
  const transaction = database.transaction(['entries', 'texts', 'revisions'], 'readwrite');
  const done = transaction.done.catch((error: unknown) => {
    throw transaction.error ?? error;
  });
  try {
    await Promise.all([work(transaction), done]);
  } catch (error) {
    // A request that failed has ended the transaction by itself; anything else has not.
    if (transaction.error === null) {
      try {
        transaction.abort();
      } catch {
        // It has ended.
      }
    }
    throw error;
  }
};

/** @param known the revision that this window knows of, if any */
const write = async (
  transaction: WriteTransaction,
  entry: Entry,
  text: string,
  known: string | undefined
): Promise<void> => {
  const entries = transaction.objectStore('entries');
  const texts = transaction.objectStore('texts');
  const { id, revision } = entry;
  const former = await entries.get(id);
  if (former?.revision === revision) {
    await entries.put(entry);
    return;
  }
  if (former && known !== undefined && former.revision !== known) {
    throw new StoreFailure(
      'changed elsewhere',
      'this chassis was changed in another window: go on there, or save this state as a file'
    );
  }
  if (former) await putAside(transaction, former, entry.savedAt, known === undefined);
  await entries.put(entry);
  await texts.put(text, id);
};

/** Makes a revision of what is kept, where the last one is old enough or `always`. */
const putAside = async (
  transaction: WriteTransaction,
  former: Entry,
  now: number,
  always: boolean
): Promise<void> => {
  const { id, savedAt } = former;
  const revisions = transaction.objectStore('revisions');
  const times = (await revisions.getAllKeys(revisionsOf(id))).map(([, time]) => time);
  if (!always && now - Math.max(-Infinity, ...times) < revisionPauseMs) return;
  const text = await transaction.objectStore('texts').get(id);
  if (text === undefined) return;
  await revisions.put({ id, savedAt, text });
  const all = [...new Set([...times, savedAt])];
  await Promise.all(revisionsToDrop(all, now).map((time) => revisions.delete([id, time])));
};

/** The store of this browser. Nothing is opened before the first call.
 *  @param name of the database; tests use their own */
export const createBrowserStore = (name = databaseName): BrowserStore => {
  const connection = new Connection(name);
  /** By document: the revision that this window last loaded or saved. */
  const known = new Map<string, string>();

  const attempt = async <T>(
    work: (database: IDBPDatabase<StoreSchema>) => Promise<T>
  ): Promise<T> => {
    try {
      return await work(await connection.open());
    } catch (error) {
      throw toStoreFailure(error);
    }
  };

  return {
    save: (document, time) =>
      attempt(async (database) => {
        const text = saveDocument(document);
        const revision = hashOfText(text);
        const { id, identity } = document;
        const entry = { id, title: identity.title, savedAt: time, revision };
        await allOrNothing(database, (transaction) =>
          write(transaction, entry, text, known.get(id))
        );
        known.set(id, revision);
      }),
    load: (id) =>
      attempt(async (database) => {
        const transaction = database.transaction(['entries', 'texts']);
        const [entry, text] = await Promise.all([
          transaction.objectStore('entries').get(id),
          transaction.objectStore('texts').get(id)
        ]);
        if (!entry || text === undefined) return null;
        const document = openText(text, entry.title);
        known.set(id, entry.revision);
        return document;
      }),
    list: () =>
      attempt(async (database) => {
        const entries = await database.getAll('entries');
        return entries
          .map(({ id, title, savedAt }) => ({ id, title, savedAt }))
          .sort((a, b) => b.savedAt - a.savedAt);
      }),
    remove: (id) =>
      attempt(async (database) => {
        await allOrNothing(database, async (transaction) => {
          await Promise.all([
            transaction.objectStore('entries').delete(id),
            transaction.objectStore('texts').delete(id),
            transaction.objectStore('revisions').delete(revisionsOf(id))
          ]);
        });
        known.delete(id);
      }),
    revisions: (id) =>
      attempt(async (database) => {
        const keys = await database.getAllKeys('revisions', revisionsOf(id));
        return keys.map(([, savedAt]) => ({ savedAt })).reverse();
      }),
    loadRevision: (id, savedAt) =>
      attempt(async (database) => {
        const revision = await database.get('revisions', [id, savedAt]);
        return revision ? openText(revision.text, id) : null;
      }),
    close: () => connection.close()
  };
};
