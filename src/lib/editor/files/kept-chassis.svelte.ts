// What the browser keeps between visits: every edit is written a moment after it was made, the last
// state wins, and a failure is said in plain words.
import type { ChassisDocument } from '#document/index.ts';
import { type BrowserStore, type KeptEntry, type StoreFailure } from '#storage/index.ts';

/** What is asked of the browser's store. Each may reject; the message says why in plain words. */
export type ChassisStore = Pick<BrowserStore, 'save' | 'load' | 'list' | 'remove'>;

export interface KeptClock {
  readonly now: () => number;
  /** Calls back later; returns what calls it off. */
  readonly later: (run: () => void, ms: number) => () => void;
}

/** Edits that follow each other within this time are written once. */
export const settleMs = 300;

const wordsOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

export class KeptChassis {
  list = $state.raw<readonly KeptEntry[]>([]);
  /** Why the last attempt to keep or read something failed, or null. */
  problem = $state<string | null>(null);
  #state = $state<'untouched' | 'waiting' | 'kept'>('untouched');
  readonly #store: ChassisStore;
  readonly #clock: KeptClock;
  #last: ChassisDocument | null = null;
  #callOff: (() => void) | null = null;
  #writing: Promise<void> = Promise.resolve();

  /** For the top of the book: whether what is seen is kept. */
  readonly words = $derived.by(() => {
    if (this.problem !== null) return `not kept: ${this.problem}`;
    return { untouched: '', waiting: 'keeping…', kept: 'kept in this browser' }[this.#state];
  });

  constructor(store: ChassisStore, clock: KeptClock) {
    this.#store = store;
    this.#clock = clock;
  }

  /** A document that was opened. A demonstration is not kept until it is changed. */
  follow(document: ChassisDocument, keepNow = true): void {
    void this.flush();
    this.#last = document;
    this.#state = 'untouched';
    if (keepNow) this.#schedule();
  }

  /** The document as it is after an edit. */
  keep(document: ChassisDocument): void {
    if (document === this.#last) return;
    this.#last = document;
    this.#schedule();
  }

  /** Writes at once what waits to be written. */
  flush(): Promise<void> {
    if (this.#callOff === null) return this.#writing;
    this.#callOff();
    this.#callOff = null;
    const document = this.#last;
    if (document === null) return this.#writing;
    this.#writing = this.#writing.then(() => this.#write(document));
    return this.#writing;
  }

  /** The list of what is kept, newest first. */
  async refresh(): Promise<void> {
    const list = await this.#attempt(() => this.#store.list());
    if (list !== null) this.list = list;
  }

  /** A kept document, or null where it could not be read. */
  async read(id: string): Promise<ChassisDocument | null> {
    await this.flush();
    return this.#attempt(() => this.#store.load(id));
  }

  async remove(id: string): Promise<void> {
    await this.#attempt(() => this.#store.remove(id));
    await this.refresh();
  }

  /** Something beside the document could not be kept. */
  complain(failure: StoreFailure): void {
    this.problem = failure.message;
  }

  /** Keeps chassis that came in together, and says how many were kept. */
  async takeIn(documents: readonly ChassisDocument[]): Promise<number> {
    await this.flush();
    let count = 0;
    for (const document of documents) {
      const done = await this.#attempt(async () => {
        await this.#store.save(document, this.#clock.now());
        return true;
      });
      if (done === true) count += 1;
    }
    await this.refresh();
    return count;
  }

  #schedule(): void {
    this.#callOff?.();
    this.#state = 'waiting';
    this.#callOff = this.#clock.later(() => void this.flush(), settleMs);
  }

  async #write(document: ChassisDocument): Promise<void> {
    const done = await this.#attempt(async () => {
      await this.#store.save(document, this.#clock.now());
      return true;
    });
    if (done === true && this.#callOff === null && this.#last === document) this.#state = 'kept';
  }

  async #attempt<T>(work: () => Promise<T>): Promise<T | null> {
    try {
      const result = await work();
      this.problem = null;
      return result;
    } catch (error) {
      this.problem = wordsOf(error);
      return null;
    }
  }
}
