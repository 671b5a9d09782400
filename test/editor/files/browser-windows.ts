// Locks and a channel as the browser's windows share them: Web Locks API (W3C), as far as a seat needs it. Messages
// arrive a turn later.
import type { SeatChannel, SeatHost, SeatMessage } from '#editor/files/writer-seat.ts';

interface Waiting {
  readonly held: (lock: unknown) => Promise<void> | undefined;
  readonly resolve: (value: unknown) => void;
  readonly reject: (error: unknown) => void;
}

export class BrowserWindows {
  readonly #holders = new Map<string, { reject: (error: unknown) => void }>();
  readonly #queues = new Map<string, Waiting[]>();
  readonly #channels: SeatChannel[] = [];

  /** A window of its own. `isDeaf`: it answers nobody, as a frozen one. */
  open(self: string, isDeaf = false): SeatHost {
    const channel: SeatChannel = {
      postMessage: (message: SeatMessage) => {
        for (const other of this.#channels) {
          if (other !== channel) queueMicrotask(() => other.onmessage?.({ data: message }));
        }
      },
      onmessage: null
    };
    if (!isDeaf) this.#channels.push(channel);
    return {
      self,
      channel,
      wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms / 100)),
      locks: {
        query: async () => ({
          held: [...this.#holders.keys()].map((name) => ({ name })),
          pending: [...this.#queues].flatMap(([name, queue]) => queue.map(() => ({ name })))
        }),
        request: (name, { ifAvailable, steal, signal }, held) =>
          new Promise((resolve, reject) => {
            const waiting = { held, resolve, reject };
            if (steal === true) {
              this.#holders.get(name)?.reject(new DOMException('stolen', 'AbortError'));
              this.#holders.delete(name);
              this.#grant(name, waiting);
            } else if (!this.#holders.has(name)) this.#grant(name, waiting);
            else if (ifAvailable === true) {
              void Promise.resolve(held(null)).then(resolve);
            } else {
              const queue = this.#queues.get(name) ?? [];
              this.#queues.set(name, [...queue, waiting]);
              signal?.addEventListener('abort', () => {
                const left = (this.#queues.get(name) ?? []).filter((other) => other !== waiting);
                this.#queues.set(name, left);
                reject(new DOMException('aborted', 'AbortError'));
              });
            }
          })
      }
    };
  }

  #grant(name: string, waiting: Waiting): void {
    const holder = { reject: waiting.reject };
    this.#holders.set(name, holder);
    void Promise.resolve(waiting.held({})).then((value) => {
      waiting.resolve(value);
      if (this.#holders.get(name) !== holder) return;
      this.#holders.delete(name);
      const [next, ...rest] = this.#queues.get(name) ?? [];
      this.#queues.set(name, rest);
      if (next) this.#grant(name, next);
    });
  }
}
