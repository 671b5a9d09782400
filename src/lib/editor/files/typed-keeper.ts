// Keeps what is typed and not taken yet, a quarter of a second behind the hand: a browser that is killed takes
// no more than that with it.

export interface TypedKeeperParts {
  readonly store: {
    readonly keepTyped: (id: string, typed: unknown) => Promise<void>;
    readonly typed: (id: string) => Promise<unknown>;
  };
  /** Calls back later; returns what calls it off. */
  readonly later: (run: () => void, ms: number) => () => void;
}

/** Letters that follow each other within this time are written once. */
export const typedPauseMs = 250;

export class TypedKeeper {
  readonly #parts: TypedKeeperParts;
  /** The chassis whose typing is kept; null until what was typed before has been handed out. */
  #id: string | null = null;
  #waiting: { readonly typed: unknown } | null = null;
  #isEmpty = true;
  #callOff: (() => void) | null = null;
  #writing: Promise<void> = Promise.resolve();

  constructor(parts: TypedKeeperParts) {
    this.#parts = parts;
  }

  /** Another chassis is in the hand: what was typed into it the last time, or null. Never rejects. */
  async open(id: string): Promise<unknown> {
    await this.flush();
    this.#id = null;
    const typed = await this.#parts.store.typed(id).catch(() => null);
    this.#id = id;
    this.#isEmpty = typed === null;
    return typed;
  }

  /** What stands typed in a chassis now; null where nothing does. */
  keep(id: string, typed: unknown): void {
    if (id !== this.#id || (typed === null && this.#isEmpty && this.#waiting === null)) return;
    this.#waiting = { typed };
    this.#callOff ??= this.#parts.later(() => void this.flush(), typedPauseMs);
  }

  /** Writes at once what waits to be written. Never rejects: the next letter tries again. */
  flush(): Promise<void> {
    this.#callOff?.();
    this.#callOff = null;
    const { 0: waiting, 1: id } = [this.#waiting, this.#id] as const;
    this.#waiting = null;
    if (waiting === null || id === null) return this.#writing;
    this.#isEmpty = waiting.typed === null;
    this.#writing = this.#writing.then(() =>
      this.#parts.store.keepTyped(id, waiting.typed).catch(() => undefined)
    );
    return this.#writing;
  }
}
