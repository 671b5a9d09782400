// The browser's database: what is kept of each chassis, its text, earlier texts of it, and pictures. Texts lie
// apart from the list, so that the list is read without them.
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Picture, WireState } from '#document/index.ts';
import { StoreFailure, toStoreFailure } from './store-failure.ts';

export interface KeptEntry {
  readonly id: string;
  readonly title: string;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
  /** How many wires are in which state; not there for what an early version of this program kept. */
  readonly states?: Readonly<Record<WireState, number>>;
}

export interface StoreSchema extends DBSchema {
  entries: {
    key: string;
    /** `revision` is the hash of the text; `removedAt` stands where the chassis was taken off the list. */
    value: KeptEntry & { readonly revision: string; readonly removedAt?: number };
  };
  /** By the id of the document. */
  texts: { key: string; value: string };
  revisions: {
    key: [id: string, savedAt: number];
    value: { readonly id: string; readonly savedAt: number; readonly text: string };
  };
  /** What can be made again and is kept so as not to be: by the id of the document. */
  previews: { key: string; value: unknown };
  layouts: { key: string; value: { readonly key: string; readonly layout: unknown } };
  /** The file that a chassis is saved back to, as the browser's own handle. */
  places: { key: string; value: unknown };
  /** What was typed and is not in the document yet: by the id of the document. */
  typed: { key: string; value: unknown };
  /** By hash. */
  pictures: {
    key: string;
    value: {
      readonly type: Picture['type'];
      readonly bytes: Uint8Array;
      /** Milliseconds since 1970. */
      readonly keptAt: number;
    };
  };
}

export const databaseName = 'underchassis';

/** What each version of the database added, oldest first: a store of any age is brought up step by step. */
const steps: readonly ((database: IDBPDatabase<StoreSchema>) => void)[] = [
  (database) => {
    database.createObjectStore('entries', { keyPath: 'id' });
    database.createObjectStore('texts');
    database.createObjectStore('revisions', { keyPath: ['id', 'savedAt'] });
  },
  (database) => {
    database.createObjectStore('pictures');
  },
  (database) => {
    database.createObjectStore('previews');
    database.createObjectStore('layouts');
  },
  (database) => {
    database.createObjectStore('places');
  },
  (database) => {
    database.createObjectStore('typed');
  }
];

/** A connection that is made when it is first needed and again when the browser took it away. */
export class Connection {
  private readonly name: string;
  private current: Promise<IDBPDatabase<StoreSchema>> | undefined;

  constructor(name: string) {
    this.name = name;
  }

  private open(): Promise<IDBPDatabase<StoreSchema>> {
    this.current ??= this.connect().catch((error: unknown) => {
      this.current = undefined;
      throw error;
    });
    return this.current;
  }

  /** Runs `work` on the database. Rejects with a StoreFailure and nothing else. */
  async attempt<T>(work: (database: IDBPDatabase<StoreSchema>) => Promise<T>): Promise<T> {
    try {
      return await work(await this.open());
    } catch (error) {
      throw toStoreFailure(error);
    }
  }

  close(): void {
    void this.current?.then((database) => database.close()).catch(() => undefined);
    this.current = undefined;
  }

  private async connect(): Promise<IDBPDatabase<StoreSchema>> {
    if (!('indexedDB' in globalThis)) {
      throw new StoreFailure(
        'not allowed',
        'this browser has no store for pages: save the chassis as a file'
      );
    }
    return openDB<StoreSchema>(this.name, steps.length, {
      upgrade: (database, from) => {
        for (const step of steps.slice(from)) step(database);
      },
      // Another window wants to bring the store to a newer version.
      blocking: () => this.close(),
      terminated: () => {
        this.current = undefined;
      }
    });
  }
}
