// Code that comes after the page: the schedule can be read and typed in before the drawing, the walk and the
// dialogs are fetched. Whatever shows what it makes shows nothing until it is there, and then by itself.

export class Late<T> {
  #value = $state.raw<T | null>(null);
  #coming: Promise<T> | null = null;
  readonly #bring: () => Promise<T>;

  /** @param bring fetches it; called again only where it failed */
  constructor(bring: () => Promise<T>) {
    this.#bring = bring;
  }

  /** Null until it is there. */
  get value(): T | null {
    return this.#value;
  }

  /** Fetches it, once. Rejects where it cannot be had; the next call tries again. */
  load(): Promise<T> {
    this.#coming ??= this.#bring().then(
      (value) => (this.#value = value),
      (error: unknown) => {
        this.#coming = null;
        throw error;
      }
    );
    return this.#coming;
  }
}
