// What the browser keeps of the chassis in the hand: every edit is written within a second, the last state
// wins, one window writes and the others follow, and a failure is said in plain words.
import type { ChassisDocument } from '#document/index.ts';
import type { BrowserStore, StoreFailure } from '#storage/index.ts';
import { WriterSeat, type SeatHost } from './writer-seat.ts';

/** What is asked of the browser's store. Each may reject; the message says why in plain words. */
export type ChassisStore = Pick<BrowserStore, 'save' | 'load'>;

export interface KeptClock {
  readonly now: () => number;
  /** Calls back later; returns what calls it off. */
  readonly later: (run: () => void, ms: number) => () => void;
}

export interface KeptParts {
  readonly store: ChassisStore;
  readonly clock: KeptClock;
  /** Null where the browser cannot tell its windows apart. */
  readonly seatHost: SeatHost | null;
  /** Shows what another window kept, or what was kept when the seat came here. */
  readonly show: (document: ChassisDocument) => void;
  /** Called after the first save of a visit. */
  readonly askToPersist: () => Promise<boolean>;
}

/** Edits that follow each other within this time are written once. */
export const settleMs = 300;
/** However fast they follow each other, the first of them waits no longer than this. */
export const latestMs = 700;

export const wordsOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

export class KeptChassis {
  /** Why the last attempt to keep or read something failed, or null. */
  problem = $state<string | null>(null);
  /** True while another window writes this chassis and this one only shows it. */
  isFollowing = $state(false);
  /** Whether the browser promised not to clear what it keeps; null before it was asked. */
  isPromised = $state<boolean | null>(null);
  /** Edits since this chassis was last saved as a file in this visit. */
  editsSinceFile = $state(0);
  #state = $state<'untouched' | 'waiting' | 'kept'>('untouched');
  readonly #parts: KeptParts;
  readonly #seat: WriterSeat | null;
  #last: ChassisDocument | null = null;
  #waitsSince = 0;
  #callOff: (() => void) | null = null;
  #writing: Promise<void> = Promise.resolve();

  /** For the top of the book: whether what is seen is kept. */
  readonly words = $derived.by(() => {
    if (this.isFollowing) return 'open in another window';
    if (this.problem !== null) return 'not kept';
    return { untouched: '', waiting: 'keeping…', kept: 'kept in this browser' }[this.#state];
  });

  /** True where the state that is seen is written. */
  get isKept(): boolean {
    return this.#state === 'kept' && this.problem === null;
  }

  constructor(parts: KeptParts) {
    this.#parts = parts;
    this.#seat =
      parts.seatHost &&
      new WriterSeat(parts.seatHost, {
        onFollow: () => this.#follow(),
        onSeat: () => void this.#beSeated(),
        onSaved: () => void this.#showKept(),
        onAsked: () => this.flush()
      });
  }

  /** A document that was opened. A demonstration is not kept until it is changed. */
  follow(document: ChassisDocument, keepNow = true): void {
    void this.flush();
    this.#last = document;
    this.#state = 'untouched';
    this.isFollowing = false;
    this.editsSinceFile = 0;
    if (this.#seat) {
      const seat = this.#seat;
      this.#writing = this.#writing.then(() => seat.take(document.id)).then(() => undefined);
    }
    if (keepNow) this.#schedule();
  }

  /** The document as it is after an edit. */
  keep(document: ChassisDocument): void {
    if (document === this.#last) return;
    this.#last = document;
    if (this.isFollowing) return;
    this.editsSinceFile += 1;
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

  /** Tries again to keep what could not be kept. */
  async tryAgain(): Promise<void> {
    if (this.#last === null) return;
    this.#schedule();
    await this.flush();
  }

  /** A kept document, or null where it could not be read. */
  async read(id: string): Promise<ChassisDocument | null> {
    await this.flush();
    return this.#attempt(() => this.#parts.store.load(id));
  }

  /** Keeps the present among the earlier states, then another state of the same chassis in its place. */
  async keepInPlace(document: ChassisDocument): Promise<boolean> {
    const present = this.flush();
    this.#last = document;
    this.#state = 'waiting';
    const writing = present.then(() => this.#write(document, true));
    this.#writing = writing;
    await writing;
    return this.problem === null;
  }

  /** Lets go of the seat, as a window does that is closed. */
  leave(): void {
    this.#seat?.leave();
  }

  /** From the window that writes this chassis to this one. */
  async takeOver(): Promise<void> {
    await this.#seat?.takeOver();
  }

  /** Does something to a kept chassis, unless it is open in another window: then false. */
  async whileFree(id: string, work: () => Promise<void>): Promise<boolean> {
    await this.flush();
    if (this.#seat) return this.#seat.whileFree(id, work);
    await work();
    return true;
  }

  /** Whether this is the only window with a chassis in it; false where that cannot be told. */
  async isAlone(): Promise<boolean> {
    return (await this.#seat?.isAlone()) ?? false;
  }

  /** The chassis in the hand was saved as a file. */
  filed(): void {
    this.editsSinceFile = 0;
  }

  /** Something beside the document could not be kept. */
  complain(failure: StoreFailure): void {
    this.problem = failure.message;
  }

  #schedule(): void {
    const now = this.#parts.clock.now();
    if (this.#callOff === null) this.#waitsSince = now;
    this.#callOff?.();
    this.#state = 'waiting';
    const left = Math.max(0, this.#waitsSince + latestMs - now);
    this.#callOff = this.#parts.clock.later(() => void this.flush(), Math.min(settleMs, left));
  }

  async #write(document: ChassisDocument, setAside = false): Promise<void> {
    // Another window has the seat: what it writes holds.
    if (this.isFollowing) return;
    const done = await this.#attempt(async () => {
      await this.#parts.store.save(document, this.#parts.clock.now(), { setAside });
      return true;
    });
    if (done !== true) return;
    this.#seat?.tellSaved();
    if (this.#callOff === null && this.#last === document) this.#state = 'kept';
    this.isPromised ??= await this.#parts.askToPersist();
  }

  #follow(): void {
    this.#callOff?.();
    this.#callOff = null;
    this.isFollowing = true;
    this.problem = null;
  }

  async #beSeated(): Promise<void> {
    await this.#showKept();
    this.isFollowing = false;
    this.#state = 'kept';
  }

  async #showKept(): Promise<void> {
    const id = this.#last?.id;
    if (id === undefined) return;
    const document = await this.#attempt(() => this.#parts.store.load(id));
    if (document !== null && this.#last?.id === id) this.#parts.show(document);
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
