import { describe, expect, it } from 'vitest';
import { CachedCopy } from '#editor/offline/cached-copy.ts';
import { OfflineCopy, type WorkerHost } from '#editor/offline/offline-copy.svelte.ts';

/** Caches as a browser has them, in memory: the path of a request leads to a text. */
class Caches {
  readonly all = new Map<string, Map<string, string>>();
  readonly #site: ReadonlyMap<string, string>;
  constructor(site: ReadonlyMap<string, string>) {
    this.#site = site;
  }
  open = async (name: string): Promise<Cache> => {
    const held = this.all.get(name) ?? new Map<string, string>();
    this.all.set(name, held);
    return {
      addAll: async (paths: string[]) => {
        const found = paths.map((path) => {
          const text = this.#site.get(path);
          if (text === undefined) throw new TypeError(`${path} could not be fetched`);
          return [path, text] as const;
        });
        for (const [path, text] of found) held.set(path, text);
      },
      match: async (request: Request) => this.#answer(held, request)
    } as unknown as Cache;
  };
  keys = async (): Promise<string[]> => [...this.all.keys()];
  delete = async (name: string): Promise<boolean> => this.all.delete(name);
  match = async (request: Request): Promise<Response | undefined> => {
    for (const held of this.all.values()) {
      const found = this.#answer(held, request);
      if (found) return found;
    }
    return undefined;
  };
  #answer(held: ReadonlyMap<string, string>, request: Request): Response | undefined {
    const text = held.get(new URL(request.url).pathname);
    return text === undefined ? undefined : new Response(text);
  }
}

const request = (path: string): Request => new Request(`http://here.invalid${path}`);
const noNetwork = (): Promise<Response> => Promise.reject(new TypeError('no network'));

describe('the copy in the caches', () => {
  it('answers without a network, with its own version first', async () => {
    const caches = new Caches(
      new Map([
        ['/', 'page'],
        ['/a.js', 'script']
      ])
    );
    caches.all.set(
      'underchassis-1',
      new Map([
        ['/', 'old page'],
        ['/old.js', 'old script']
      ])
    );
    const copy = new CachedCopy({ caches, fetch: noNetwork }, '2', ['/', '/a.js']);
    await copy.install();
    const answers = ['/', '/a.js', '/old.js'].map(async (path) =>
      (await copy.answer(request(path))).text()
    );
    expect(await Promise.all(answers)).toEqual(['page', 'script', 'old script']);
    await expect(copy.answer(request('/missing.js'))).rejects.toThrow('no network');
  });

  it('keeps nothing where a piece could not be fetched', async () => {
    const caches = new Caches(new Map([['/', 'page']]));
    const copy = new CachedCopy({ caches, fetch: noNetwork }, '2', ['/', '/gone.js']);
    await expect(copy.install()).rejects.toThrow('/gone.js');
    expect(caches.all.get('underchassis-2')?.size).toBe(0);
  });

  it('drops all but the version before, and leaves what is not its own alone', async () => {
    const caches = new Caches(new Map());
    for (const name of ['underchassis-1', 'underchassis-2', 'underchassis-3', 'another'])
      caches.all.set(name, new Map());
    await new CachedCopy({ caches, fetch: noNetwork }, '3', []).dropOld();
    expect([...caches.all.keys()]).toEqual(['underchassis-2', 'underchassis-3', 'another']);
  });
});

const hostWith = (waiting: { postMessage: (word: string) => void } | null) => {
  let change = (): void => undefined;
  const host = {
    controller: {} as ServiceWorker,
    register: async () => ({
      waiting,
      active: {},
      installing: null,
      addEventListener: () => undefined
    }),
    addEventListener: (_: string, run: () => void) => (change = run)
  } as unknown as WorkerHost;
  return { host, change: () => change() };
};

describe('a newer version', () => {
  it('waits for a yes, then until the work is kept', async () => {
    const said: string[] = [];
    const { host, change } = hostWith({ postMessage: (word) => said.push(word) });
    const copy = new OfflineCopy(host, () => said.push('loaded anew'));
    await copy.start('/service-worker.js');
    expect(copy.isUpdateReady).toBe(true);
    copy.settleFirst(async () => void said.push('kept'));
    expect(said).toEqual([]);
    await copy.takeOver();
    change();
    expect(said).toEqual(['kept', 'take over', 'loaded anew']);
  });

  it('taken over by another window does not load this one anew', async () => {
    const said: string[] = [];
    const { host, change } = hostWith(null);
    const copy = new OfflineCopy(host, () => said.push('loaded anew'));
    await copy.start('/service-worker.js');
    expect(copy.isUpdateReady).toBe(false);
    change();
    expect([said, copy.isUpdateReady]).toEqual([[], true]);
    await copy.takeOver();
    expect(said).toEqual(['loaded anew']);
  });

  it('is no concern where the browser has no such thing', async () => {
    const host = {
      controller: null,
      addEventListener: () => undefined,
      register: () => Promise.reject(new Error('private window'))
    };
    const copy = new OfflineCopy(host as unknown as WorkerHost, () => undefined);
    await copy.start('/service-worker.js');
    expect(copy.isUpdateReady).toBe(false);
  });
});
