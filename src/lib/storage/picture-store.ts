// Pictures beside the documents, each once, by the hash of its bytes. Where the browser keeps nothing they
// stay in the page's memory and the store says so.
import { hashOfPicture, type Picture } from '#document/index.ts';
import { Connection, databaseName } from './database.ts';
import { StoreFailure, toStoreFailure } from './store-failure.ts';

export interface StoredPicture {
  readonly bytes: Uint8Array;
  readonly type: Picture['type'];
}

export interface PictureStore {
  /** Keeps a picture and gives its hash; one that is there already is not written again. */
  readonly keep: (bytes: Uint8Array, type: Picture['type']) => Promise<string>;
  /** Null where no picture of this hash is kept. */
  readonly read: (hash: string) => Promise<StoredPicture | null>;
  readonly has: (hash: string) => Promise<boolean>;
  /** Lets go of the pictures that are not among `hashesInUse`, and says how many. What was kept within
   *  the last day stays: the document that shows it may not have been written yet. */
  readonly forgetUnused: (hashesInUse: Iterable<string>) => Promise<number>;
}

/** The largest picture that is taken, bytes. */
export const largestPictureBytes = 32 * 1024 * 1024;
const graceMs = 24 * 60 * 60_000;

const checkSize = ({ length }: Uint8Array): void => {
  if (length > 0 && length <= largestPictureBytes) return;
  throw new StoreFailure(
    'failed',
    length === 0
      ? 'the picture is empty: choose another'
      : `the picture has ${Math.ceil(length / 1024 / 1024)} MB and the most is ${largestPictureBytes / 1024 / 1024} MB: scale it down first`
  );
};

/** The pictures in this browser's database. Rejects with a StoreFailure in plain words.
 *  @param now milliseconds since 1970
 *  @param name of the database; tests use their own */
export const createBrowserPictures = (now: () => number, name = databaseName): PictureStore => {
  const connection = new Connection(name);
  return {
    keep: (bytes, type) =>
      connection.attempt(async (database) => {
        checkSize(bytes);
        const hash = hashOfPicture(bytes);
        // Written even where it is there: the day of grace begins anew.
        await database.put('pictures', { type, bytes, keptAt: now() }, hash);
        return hash;
      }),
    read: (hash) =>
      connection.attempt(async (database) => {
        const found = await database.get('pictures', hash);
        return found ? { bytes: found.bytes, type: found.type } : null;
      }),
    has: (hash) =>
      connection.attempt(
        async (database) => (await database.getKey('pictures', hash)) !== undefined
      ),
    forgetUnused: (hashesInUse) =>
      connection.attempt(async (database) => {
        const used = new Set(hashesInUse);
        const transaction = database.transaction('pictures', 'readwrite');
        let count = 0;
        for (const hash of await transaction.store.getAllKeys()) {
          if (used.has(hash)) continue;
          const picture = await transaction.store.get(hash);
          if (picture && now() - picture.keptAt < graceMs) continue;
          await transaction.store.delete(hash);
          count += 1;
        }
        await transaction.done;
        return count;
      })
  };
};

/** Pictures in the memory of the page: gone when it is closed. */
export const createPagePictures = (): PictureStore => {
  const pictures = new Map<string, StoredPicture>();
  return {
    keep: async (bytes, type) => {
      checkSize(bytes);
      const hash = hashOfPicture(bytes);
      pictures.set(hash, { bytes, type });
      return hash;
    },
    read: async (hash) => pictures.get(hash) ?? null,
    has: async (hash) => pictures.has(hash),
    forgetUnused: async (hashesInUse) => {
      const used = new Set(hashesInUse);
      const unused = [...pictures.keys()].filter((hash) => !used.has(hash));
      for (const hash of unused) pictures.delete(hash);
      return unused.length;
    }
  };
};

/** Pictures that are never lost while the page is open: what `lasting` does not take stays in memory, and
 *  `onUnkept` is told why. A later `keep` of the same picture tries again. */
export const createSafePictures = (
  lasting: PictureStore,
  onUnkept: (failure: StoreFailure) => void
): PictureStore => {
  const page = createPagePictures();
  const orFromPage = async <T>(work: () => Promise<T>, instead: T): Promise<T> => {
    try {
      return await work();
    } catch {
      return instead;
    }
  };
  return {
    keep: async (bytes, type) => {
      checkSize(bytes);
      try {
        return await lasting.keep(bytes, type);
      } catch (error) {
        const hash = await page.keep(bytes, type);
        onUnkept(toStoreFailure(error));
        return hash;
      }
    },
    read: async (hash) =>
      (await page.read(hash)) ?? (await orFromPage(() => lasting.read(hash), null)),
    has: async (hash) =>
      (await page.has(hash)) || (await orFromPage(() => lasting.has(hash), false)),
    forgetUnused: async (hashesInUse) => {
      const used = new Set(hashesInUse);
      await page.forgetUnused(used);
      return lasting.forgetUnused(used);
    }
  };
};
