// The copy of the editor that works without a network, and a newer version that waits for a yes. Where the
// browser has no such thing, as in some private windows, the editor works as a page always did.

/** What the browser offers; a stand-in in tests. */
export type WorkerHost = Pick<
  ServiceWorkerContainer,
  'register' | 'addEventListener' | 'controller'
>;

export class OfflineCopy {
  /** A newer version lies ready. */
  isUpdateReady = $state(false);
  readonly #host: WorkerHost;
  readonly #reload: () => void;
  #settlers: readonly (() => Promise<void>)[] = [];
  #registration: ServiceWorkerRegistration | null = null;
  #isAskedFor = false;

  constructor(host: WorkerHost, reload: () => void) {
    this.#host = host;
    this.#reload = reload;
  }

  /** Begins to keep the copy. A failure is no concern of the work: it is tried again with the next visit. */
  async start(url: string): Promise<void> {
    const hadOne = this.#host.controller !== null;
    this.#host.addEventListener('controllerchange', () => {
      if (this.#isAskedFor) this.#reload();
      // Another window said yes: this one works on with what it has until it is reloaded.
      else if (hadOne) this.isUpdateReady = true;
    });
    try {
      const registration = await this.#host.register(url);
      this.#registration = registration;
      const look = (): void => {
        if (registration.waiting !== null && registration.active !== null)
          this.isUpdateReady = true;
      };
      look();
      registration.addEventListener('updatefound', () => {
        registration.installing?.addEventListener('statechange', look);
      });
    } catch {
      this.#registration = null;
    }
  }

  /** Adds what must be done before the page is loaded anew, such as keeping the work. Returns how to take it away. */
  settleFirst(settle: () => Promise<void>): () => unknown {
    this.#settlers = [...this.#settlers, settle];
    return () => (this.#settlers = this.#settlers.filter((one) => one !== settle));
  }

  /** Loads the page anew with the newer version, once all work is kept. */
  async takeOver(): Promise<void> {
    await Promise.all(this.#settlers.map((settle) => settle()));
    this.#isAskedFor = true;
    const waiting = this.#registration?.waiting ?? null;
    if (waiting === null) this.#reload();
    else waiting.postMessage('take over');
  }

  /** Until the next visit. */
  putOff(): void {
    this.isUpdateReady = false;
  }
}
