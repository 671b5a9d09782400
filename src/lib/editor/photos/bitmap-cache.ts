// Bitmaps by key, the ones that were looked at last. Plain, since nothing is drawn of it by itself.

/** What can be let go: an ImageBitmap, or a stand-in. */
export interface Closable {
  readonly close: () => void;
}

export class BitmapCache<T extends Closable> {
  readonly #held = new Map<string, T>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  /** What is held under a key; it is now the last to be let go. */
  find(key: string): T | undefined {
    const known = this.#held.get(key);
    if (known === undefined) return undefined;
    this.#held.delete(key);
    this.#held.set(key, known);
    return known;
  }

  /** Holds one more, and lets go of those that were not looked at for the longest time. */
  hold(key: string, bitmap: T): void {
    this.#held.get(key)?.close();
    this.#held.delete(key);
    this.#held.set(key, bitmap);
    for (const [old, unused] of this.#held) {
      if (this.#held.size <= this.#most) return;
      unused.close();
      this.#held.delete(old);
    }
  }
}
