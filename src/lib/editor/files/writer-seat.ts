// One window writes a chassis, the others follow. The seat is a lock of the browser (Web Locks API, W3C): it
// falls free by itself when a window is closed or dies. Windows talk over a channel; a window that asks for
// the seat waits until the writer has put its last edit away, or for a while only.

export type SeatMessage =
  | { readonly kind: 'saved'; readonly id: string }
  | { readonly kind: 'hand over'; readonly id: string; readonly from: string }
  | { readonly kind: 'handed over'; readonly id: string; readonly to: string };

/** What is used of `navigator.locks`. */
export interface SeatLocks {
  readonly request: (
    name: string,
    options: {
      readonly ifAvailable?: boolean;
      readonly steal?: boolean;
      readonly signal?: AbortSignal;
    },
    held: (lock: unknown) => Promise<void> | undefined
  ) => Promise<unknown>;
  readonly query: () => Promise<{
    readonly held?: readonly { readonly name?: string }[];
    readonly pending?: readonly { readonly name?: string }[];
  }>;
}

/** What is used of a BroadcastChannel. */
export interface SeatChannel {
  readonly postMessage: (message: SeatMessage) => void;
  onmessage: ((event: { readonly data: unknown }) => unknown) | null;
}

export interface SeatHost {
  readonly locks: SeatLocks;
  readonly channel: SeatChannel;
  /** This window's own name. */
  readonly self: string;
  /** Resolves after so many milliseconds. */
  readonly wait: (ms: number) => Promise<void>;
}

export interface SeatEvents {
  /** This window follows another, from now on. */
  readonly onFollow: () => void;
  /** The seat came to this window after it followed another. */
  readonly onSeat: () => void;
  /** The window that writes has kept something. */
  readonly onSaved: () => void;
  /** Another window asks for the seat: resolves when the last edit is put away. */
  readonly onAsked: () => Promise<void>;
}

/** How long a window that does not answer is waited for. */
export const handOverMs = 2000;

const lockStart = 'underchassis chassis ';
const lockName = (id: string): string => lockStart + id;
const isMessage = (data: unknown): data is SeatMessage =>
  typeof data === 'object' && data !== null && 'kind' in data && 'id' in data;

export class WriterSeat {
  readonly #host: SeatHost;
  readonly #events: SeatEvents;
  #id: string | null = null;
  #isSeated = false;
  /** Ends what this window holds or waits for. */
  #letGo: () => void = () => undefined;
  #onHanded: (() => void) | null = null;

  constructor(host: SeatHost, events: SeatEvents) {
    this.#host = host;
    this.#events = events;
    host.channel.onmessage = ({ data }) => {
      if (isMessage(data) && data.id === this.#id) this.#hear(data);
    };
  }

  /** Takes the seat of a chassis and lets go of the one before. False where another window has it: then
   *  this one follows, and the seat comes to it when the other is closed. */
  async take(id: string): Promise<boolean> {
    if (id === this.#id) return this.#isSeated;
    this.leave();
    this.#id = id;
    if (await this.#ask({ ifAvailable: true })) return true;
    if (this.#id === id) this.#becomeFollower();
    return false;
  }

  leave(): void {
    this.#letGo();
    this.#letGo = () => undefined;
    this.#id = null;
    this.#isSeated = false;
  }

  /** Takes the seat from the window that has it, once that has put its last edit away. */
  async takeOver(): Promise<void> {
    const id = this.#id;
    if (id === null || this.#isSeated) return;
    const handed = new Promise<void>((resolve) => (this.#onHanded = resolve));
    this.#host.channel.postMessage({ kind: 'hand over', id, from: this.#host.self });
    await Promise.race([handed, this.#host.wait(handOverMs)]);
    if (this.#id !== id || this.#isSeated) return;
    this.#letGo();
    if (await this.#ask({ steal: true })) this.#events.onSeat();
  }

  /** Tells the windows that follow. */
  tellSaved(): void {
    if (this.#id !== null && this.#isSeated) {
      this.#host.channel.postMessage({ kind: 'saved', id: this.#id });
    }
  }

  /** Does something to a chassis that is not open here, unless it is open in another window.
   *  @returns false where it is */
  async whileFree(id: string, work: () => Promise<void>): Promise<boolean> {
    if (id === this.#id) {
      if (this.#isSeated) await work();
      return this.#isSeated;
    }
    let isFree = false;
    await this.#host.locks.request(lockName(id), { ifAvailable: true }, async (lock) => {
      if (lock === null) return;
      isFree = true;
      await work();
    });
    return isFree;
  }

  /** Whether no other window has a chassis open. */
  async isAlone(): Promise<boolean> {
    const { held = [], pending = [] } = await this.#host.locks.query();
    const seats = [...held, ...pending].filter(({ name }) => name?.startsWith(lockStart));
    return seats.length <= (this.#isSeated ? 1 : 0);
  }

  #becomeFollower(): void {
    this.#isSeated = false;
    this.#events.onFollow();
    void this.#ask({}).then((isSeated) => {
      if (isSeated) this.#events.onSeat();
    });
  }

  /** True once the lock is held; false where it is not to be had, or was let go of before. */
  #ask(options: { readonly ifAvailable?: boolean; readonly steal?: boolean }): Promise<boolean> {
    const id = this.#id ?? '';
    const stop = new AbortController();
    return new Promise((resolve) => {
      // A request that may wait can be called off; the others are answered at once.
      const mayWait = options.ifAvailable !== true && options.steal !== true;
      this.#letGo = () => stop.abort();
      const held = (lock: unknown): Promise<void> | undefined => {
        if (lock === null || this.#id !== id || stop.signal.aborted) {
          resolve(false);
          return undefined;
        }
        this.#isSeated = true;
        resolve(true);
        return new Promise((release) => (this.#letGo = release));
      };
      const request = this.#host.locks.request(
        lockName(id),
        mayWait ? { signal: stop.signal } : options,
        held
      );
      request.catch(() => {
        resolve(false);
        // Taken away by another window, unless it was given up here.
        if (this.#id === id && this.#isSeated && !stop.signal.aborted) this.#becomeFollower();
      });
    });
  }

  #hear(message: SeatMessage): void {
    const { id } = message;
    if (message.kind === 'saved' && !this.#isSeated) this.#events.onSaved();
    if (message.kind === 'handed over' && message.to === this.#host.self) this.#onHanded?.();
    if (message.kind !== 'hand over' || !this.#isSeated) return;
    void this.#events.onAsked().then(() => {
      this.#host.channel.postMessage({ kind: 'handed over', id, to: message.from });
    });
  }
}

/** The seat of this browser, or null where it cannot tell windows apart: then the store's own check holds. */
export const browserSeatHost = (self: string): SeatHost | null => {
  const { navigator, BroadcastChannel: Channel } = globalThis as {
    navigator?: { locks?: LockManager };
    BroadcastChannel?: typeof BroadcastChannel;
  };
  const locks = navigator?.locks;
  if (!locks || !Channel) return null;
  return {
    locks: {
      request: (name, options, held) => locks.request(name, options, held),
      query: () => locks.query()
    },
    channel: new Channel('underchassis') as SeatChannel,
    self,
    wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms))
  };
};
