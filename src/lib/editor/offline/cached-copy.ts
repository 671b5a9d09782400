// The whole editor, kept in the browser's caches by version. The worker that stands between pages and network
// asks here; what is needed of the browser comes in, so that it can be tried without one.

export interface CopyHost {
  readonly caches: Pick<CacheStorage, 'open' | 'keys' | 'delete' | 'match'>;
  readonly fetch: (request: Request) => Promise<Response>;
}

const prefix = 'underchassis-';

export class CachedCopy {
  readonly #host: CopyHost;
  readonly #name: string;
  readonly #paths: readonly string[];

  /** @param version later ones sort behind earlier ones
   *  @param paths of all that the editor is made of */
  constructor(host: CopyHost, version: string, paths: readonly string[]) {
    this.#host = host;
    this.#name = `${prefix}${version}`;
    this.#paths = paths;
  }

  /** Fetches all of it, or rejects with nothing kept: half an editor would break in the middle of work. */
  async install(): Promise<void> {
    const cache = await this.#host.caches.open(this.#name);
    await cache.addAll([...this.#paths]);
  }

  /** Drops what no window can need. The version before this one stays: one may still be at work with it. */
  async dropOld(): Promise<void> {
    const { caches } = this.#host;
    const names = (await caches.keys()).filter((name) => name.startsWith(prefix)).sort();
    const before = names.filter((name) => name < this.#name).at(-1);
    const old = names.filter((name) => name !== this.#name && name !== before);
    await Promise.all(old.map((name) => caches.delete(name)));
  }

  /** What a request is answered with: out of this version, else out of the one before, else by the network. */
  async answer(request: Request): Promise<Response> {
    const { caches, fetch } = this.#host;
    const options = { ignoreSearch: request.mode === 'navigate' };
    const own = await caches.open(this.#name);
    return (
      (await own.match(request, options)) ??
      (await caches.match(request, options)) ??
      (await fetch(request))
    );
  }
}
