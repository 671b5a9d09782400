// Keeps chassis in the browser between visits, as the text that a file would have, so that a later version
// of this program opens what an earlier one kept. Everything rejects with a StoreFailure in plain words.
import {
  changeInWords,
  formatProblem,
  hashOfText,
  openDocument,
  saveDocument,
  wireStates,
  type ChassisDocument,
  type WireState
} from '#document/index.ts';
import { Connection, databaseName, type KeptEntry, type StoreSchema } from './database.ts';
import { StoreFailure } from './store-failure.ts';
import { revisionPauseMs, revisionsToDrop } from './thin-revisions.ts';
import type { IDBPDatabase, IDBPTransaction } from 'idb';

/** A state of a chassis that can be gone back to, or the present one. */
export interface KeptState {
  readonly savedAt: number;
  /** What is different from the state before it, a phrase each; empty for the first that is kept. */
  readonly changes: readonly string[];
}

export interface BrowserStore {
  /** Keeps the document in place of what was kept under its id; now and then the former text is put
   *  aside as a revision. Rejects as "changed elsewhere" where another window kept something since
   *  this one last loaded or saved the document.
   *  @param time milliseconds since 1970
   *  @param options.setAside puts the former text aside in any case */
  readonly save: (
    document: ChassisDocument,
    time: number,
    options?: { readonly setAside?: boolean }
  ) => Promise<void>;
  /** Null where nothing is kept under the id. Rejects as "unreadable" where the text does not open. */
  readonly load: (id: string) => Promise<ChassisDocument | null>;
  /** What is kept, the latest first. */
  readonly list: () => Promise<KeptEntry[]>;
  /** What was taken off the list and can be put back, the latest first. */
  readonly removed: () => Promise<KeptEntry[]>;
  /** Takes a document off the list. Nothing of it is lost before it is forgotten. */
  readonly remove: (id: string, time: number) => Promise<void>;
  readonly putBack: (id: string) => Promise<void>;
  /** Forgets a document, its revisions and what was kept beside it, for good. */
  readonly forget: (id: string) => Promise<void>;
  /** The present state of a document and its earlier ones, the latest first. */
  readonly states: (id: string) => Promise<KeptState[]>;
  readonly loadRevision: (id: string, savedAt: number) => Promise<ChassisDocument | null>;
  /** The hashes of all pictures that a kept document or one of its earlier states shows, or more. */
  readonly picturesInUse: () => Promise<Set<string>>;
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

const entryOf = (document: ChassisDocument, savedAt: number, revision: string): Entry => {
  const states = Object.fromEntries(wireStates.map((state) => [state, 0])) as Record<
    WireState,
    number
  >;
  for (const { state } of Object.values(document.wires)) states[state] += 1;
  return { id: document.id, title: document.identity.title, savedAt, states, revision };
};

const listed = ({ id, title, savedAt, states }: Entry): KeptEntry => ({
  id,
  title,
  savedAt,
  ...(states ? { states } : {})
});

/** Undefined where a text is damaged: its neighbours are still told. */
const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

/** The hashes of the pictures that a document names, from its text; perhaps others that look like one. */
export const hashesInText = (text: string): Set<string> =>
  new Set([...text.matchAll(/"([0-9a-f]{64})"/g)].map(([, hash = '']) => hash));
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
  // Strict: on the disk, not only on its way there, when this ends.
  const transaction = database.transaction(['entries', 'texts', 'revisions'], 'readwrite', {
    durability: 'strict'
  });
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
  known: string | undefined,
  setAside: boolean
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
  if (former) await putAside(transaction, former, entry.savedAt, setAside || known === undefined);
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
  // Times that lie ahead were put down before the clock was set back: they say nothing of the pause.
  const latest = Math.max(-Infinity, ...times.filter((time) => time <= now));
  if (!always && now - latest < revisionPauseMs) return;
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

  const attempt: Connection['attempt'] = (work) => connection.attempt(work);

  const change = (id: string, make: (entry: Entry) => Entry): Promise<void> =>
    attempt(async (database) => {
      const transaction = database.transaction('entries', 'readwrite');
      const entry = await transaction.store.get(id);
      if (entry) await transaction.store.put(make(entry));
      await transaction.done;
    });
  const entries = (isWanted: (entry: Entry) => boolean): Promise<KeptEntry[]> =>
    attempt(async (database) =>
      (await database.getAll('entries'))
        .filter(isWanted)
        .map(listed)
        .sort((a, b) => b.savedAt - a.savedAt)
    );

  return {
    save: (document, time, { setAside = false } = {}) =>
      attempt(async (database) => {
        const text = saveDocument(document);
        const revision = hashOfText(text);
        const entry = entryOf(document, time, revision);
        await allOrNothing(database, (transaction) =>
          write(transaction, entry, text, known.get(document.id), setAside)
        );
        known.set(document.id, revision);
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
    list: () => entries(({ removedAt }) => removedAt === undefined),
    removed: () => entries(({ removedAt }) => removedAt !== undefined),
    remove: (id, time) => change(id, (entry) => ({ ...entry, removedAt: time })),
    putBack: (id) => change(id, ({ removedAt: _, ...entry }) => entry),
    forget: (id) =>
      attempt(async (database) => {
        await allOrNothing(database, async (transaction) => {
          await Promise.all([
            transaction.objectStore('entries').delete(id),
            transaction.objectStore('texts').delete(id),
            transaction.objectStore('revisions').delete(revisionsOf(id))
          ]);
        });
        await Promise.all(
          (['previews', 'layouts', 'places', 'typed'] as const).map((store) =>
            database.delete(store, id)
          )
        );
        known.delete(id);
      }),
    states: (id) =>
      attempt(async (database) => {
        const transaction = database.transaction(['entries', 'texts', 'revisions']);
        const [earlier, entry, text] = await Promise.all([
          transaction.objectStore('revisions').getAll(revisionsOf(id)),
          transaction.objectStore('entries').get(id),
          transaction.objectStore('texts').get(id)
        ]);
        const present = entry && text !== undefined ? [{ savedAt: entry.savedAt, text }] : [];
        let before: unknown;
        const states: KeptState[] = [];
        for (const { savedAt, text: own } of [...earlier, ...present]) {
          const after = parsed(own);
          states.unshift({
            savedAt,
            changes: before === undefined || after === undefined ? [] : changeInWords(before, after)
          });
          before = after;
        }
        return states;
      }),
    loadRevision: (id, savedAt) =>
      attempt(async (database) => {
        const revision = await database.get('revisions', [id, savedAt]);
        return revision ? openText(revision.text, id) : null;
      }),
    picturesInUse: () =>
      attempt(async (database) => {
        const transaction = database.transaction(['texts', 'revisions']);
        const used = new Set<string>();
        const look = (text: string): void => {
          for (const hash of hashesInText(text)) used.add(hash);
        };
        for await (const { value } of transaction.objectStore('texts')) look(value);
        for await (const { value } of transaction.objectStore('revisions')) look(value.text);
        return used;
      }),
    close: () => connection.close()
  };
};
